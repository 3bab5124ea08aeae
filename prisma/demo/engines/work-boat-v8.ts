import { inches, kilograms, lengthSheet, torqueSheet, type DemoEngine } from './model.ts'

/** A work boat's V8 that runs loaded all day: two plain rods on each pin, banks 1–4 and 5–8, the first leading. */
export const workBoatV8: DemoEngine = {
  engine: {
    name: 'Brackwater V8 marine',
    arrangement: 'v',
    cylinders: 8,
    bankAngle: 90_000,
    numbering: 'by-bank',
    firstBank: 'viewer-right',
    leadingBank: 'viewer-right',
    rotation: 'clockwise',
    pinSharing: 'two-plain-rods',
    cooling: 'water',
    greatestSpeed: 4_200,
    crank: { mass: kilograms('33.5') },
    block: 'iron',
    bore: inches('4.2500'),
    stroke: inches('3.9000'),
    deckHeight: inches('10.2000'),
    mains: {
      count: 5, diameter: inches('2.9500'), width: inches('1.1000'), fillet: inches('0.0900'), housing: inches('3.1500'),
    },
    rodJournals: {
      count: 4, diameter: inches('2.3000'), width: inches('2.0000'), fillet: inches('0.0600'), housing: inches('2.4250'),
    },
  },
  parts: {
    piston: {
      alloy: '4032',
      diameter: inches('4.2461'),
      compressionHeight: inches('1.7850'),
      pinBore: inches('1.0407'),
      pinBoreMouth: inches('1.0900'),
      grooves: [
        { ring: 'top', upperFlank: inches('0.3600'), width: inches('0.0801') },
        { ring: 'second', upperFlank: inches('0.6000'), width: inches('0.0801') },
        { ring: 'oil', upperFlank: inches('0.8400'), width: inches('0.1895') },
      ],
      hasFrontMark: true,
    },
    pin: { fit: 'floating', diameter: inches('1.0400'), length: inches('3.1000') },
    rod: {
      material: 'steel', length: inches('6.4500'), bigEndWidth: inches('0.9930'), smallEndBore: inches('1.0405'),
    },
    retainers: { perSide: 1, thickness: inches('0.0500') },
    rodShell: {
      width: inches('0.8800'), wall: inches('0.0614'), cheekInset: inches('0.0620'), edgeBevel: inches('0.0300'),
    },
    mainShell: {
      width: inches('0.9200'), wall: inches('0.0987'), cheekInset: inches('0.0950'), edgeBevel: inches('0.0400'),
    },
  },
  unit: 'inch',
  sheets: [
    lengthSheet('rod-bolt-stretch', 'inch', '0.0055', '0.0060', '0.0057', 'Rod bolts’ sheet, Brackwater V8 marine'),
    torqueSheet('rod-bolt-torque', 'poundForceFoot', '62', '78', '70', 'Rod bolts’ sheet, Brackwater V8 marine'),
    torqueSheet('main-bolt-torque', 'poundForceFoot', '93', '97', '95', 'Engine maker’s sheet, Brackwater V8 marine'),
  ],
}

/**
 * The same engine with a later crank whose crankpins carry a rolled fillet of 0.110 in: the wide shell runs into it by
 * 0.010 in with the rod against its cheek.
 */
export const workBoatV8RolledFillet: DemoEngine = {
  ...workBoatV8,
  engine: {
    ...workBoatV8.engine,
    name: 'Brackwater V8 marine, rolled-fillet crank',
    rodJournals: { ...workBoatV8.engine.rodJournals, fillet: inches('0.1100') },
  },
  parts: {
    ...workBoatV8.parts,
    rodShell: {
      width: inches('0.8420'), wall: inches('0.0614'), cheekInset: inches('0.0700'), edgeBevel: inches('0.0300'),
    },
  },
}
