import { inches, kilograms, lengthSheet, torqueSheet, type DemoEngine } from './model.ts'

/** A turbocharged V6 for hill climbs: forged pistons, floating pins between two flat rings a side, split crankpins. */
export const hillClimbV6: DemoEngine = {
  engine: {
    name: 'Ostrey V6 turbo',
    arrangement: 'v',
    cylinders: 6,
    bankAngle: 60_000,
    numbering: 'alternating',
    firstBank: 'viewer-right',
    leadingBank: 'viewer-right',
    rotation: 'clockwise',
    pinSharing: 'split-pin',
    cooling: 'water',
    greatestSpeed: 7_200,
    crank: { mass: kilograms('15.9'), balanceFactor: 500 },
    block: 'aluminium-with-liners',
    bore: inches('3.6500'),
    stroke: inches('3.2700'),
    deckHeight: inches('8.6000'),
    mains: {
      count: 4, diameter: inches('2.6500'), width: inches('0.9800'), fillet: inches('0.0800'), housing: inches('2.8420'),
    },
    rodJournals: {
      count: 6, diameter: inches('2.1000'), width: inches('0.9600'), fillet: inches('0.0600'), housing: inches('2.2260'),
    },
  },
  parts: {
    piston: {
      alloy: '2618',
      diameter: inches('3.6452'),
      compressionHeight: inches('1.3050'),
      pinBore: inches('0.9069'),
      pinBoreMouth: inches('0.9470'),
      grooves: [
        { ring: 'top', upperFlank: inches('0.2400'), width: inches('0.0482') },
        { ring: 'second', upperFlank: inches('0.4200'), width: inches('0.0482') },
        { ring: 'oil', upperFlank: inches('0.5600'), width: inches('0.1191') },
      ],
      hasFrontMark: true,
    },
    pin: { fit: 'floating', diameter: inches('0.9060'), length: inches('2.5000') },
    rod: {
      material: 'steel', length: inches('5.6500'), bigEndWidth: inches('0.9500'), smallEndBore: inches('0.9067'),
    },
    retainers: { perSide: 2, thickness: inches('0.0420'), outerFlanks: inches('2.6710') },
    rodShell: {
      width: inches('0.8000'), wall: inches('0.0620'), cheekInset: inches('0.0700'), edgeBevel: inches('0.0250'),
    },
    mainShell: {
      width: inches('0.8200'), wall: inches('0.0948'), cheekInset: inches('0.0800'), edgeBevel: inches('0.0400'),
    },
  },
  unit: 'inch',
  sheets: [
    lengthSheet('rod-bolt-stretch', 'inch', '0.0055', '0.0060', '0.0057', 'Rod bolts’ sheet, Ostrey V6 turbo'),
    torqueSheet('rod-bolt-torque', 'poundForceFoot', '54', '70', '62', 'Rod bolts’ sheet, Ostrey V6 turbo'),
    torqueSheet('main-bolt-torque', 'poundForceFoot', '73', '77', '75', 'Engine maker’s sheet, Ostrey V6 turbo'),
  ],
}
