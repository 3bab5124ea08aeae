import { inches, kilograms, lengthSheet, torqueSheet, type DemoEngine } from './model.ts'

/** A street V8 with cast pistons and pressed pins, bored to its second oversize. */
export const streetV8: DemoEngine = {
  engine: {
    name: 'Fennick V8',
    arrangement: 'v',
    cylinders: 8,
    bankAngle: 90_000,
    numbering: 'alternating',
    firstBank: 'viewer-right',
    leadingBank: 'viewer-right',
    rotation: 'clockwise',
    pinSharing: 'two-plain-rods',
    cooling: 'water',
    greatestSpeed: 5_600,
    crank: { mass: kilograms('24.8') },
    block: 'iron',
    bore: inches('3.9370'),
    stroke: inches('3.4600'),
    deckHeight: inches('9.1500'),
    mains: {
      count: 5, diameter: inches('2.5000'), width: inches('0.9800'), fillet: inches('0.0800'), housing: inches('2.6920'),
    },
    rodJournals: {
      count: 4, diameter: inches('2.1500'), width: inches('1.9040'), fillet: inches('0.0600'), housing: inches('2.2760'),
    },
  },
  parts: {
    piston: {
      alloy: 'cast',
      diameter: inches('3.9345'),
      compressionHeight: inches('1.4600'),
      pinBore: inches('0.9105'),
      pinBoreMouth: inches('0.9500'),
      grooves: [
        { ring: 'top', upperFlank: inches('0.2800'), width: inches('0.0645') },
        { ring: 'second', upperFlank: inches('0.4700'), width: inches('0.0645') },
        { ring: 'oil', upperFlank: inches('0.6400'), width: inches('0.1885') },
      ],
      hasFrontMark: true,
    },
    pin: { fit: 'pressed', diameter: inches('0.9100'), length: inches('2.9500') },
    rod: {
      material: 'steel', length: inches('5.9500'), bigEndWidth: inches('0.9450'), smallEndBore: inches('0.9085'),
    },
    retainers: null,
    rodShell: {
      width: inches('0.8300'), wall: inches('0.0621'), cheekInset: inches('0.0620'), edgeBevel: inches('0.0250'),
    },
    mainShell: {
      width: inches('0.8200'), wall: inches('0.0949'), cheekInset: inches('0.0850'), edgeBevel: inches('0.0400'),
    },
  },
  unit: 'inch',
  sheets: [
    lengthSheet('rod-bolt-stretch', 'inch', '0.0055', '0.0060', '0.0057', 'Rod bolts’ sheet, Fennick V8'),
    torqueSheet('rod-bolt-torque', 'poundForceFoot', '44', '60', '52', 'Rod bolts’ sheet, Fennick V8'),
    torqueSheet('main-bolt-torque', 'poundForceFoot', '78', '82', '80', 'Engine maker’s sheet, Fennick V8'),
  ],
}

/**
 * The street V8 with rods 0.300 in longer: the pin moves up into the oil groove, and forged pistons with floating pins
 * come with it. A job orders these parts instead of the library's.
 */
export const longRodParts: DemoEngine['parts'] = {
  ...streetV8.parts,
  piston: {
    ...streetV8.parts.piston,
    alloy: '4032',
    diameter: inches('3.9340'),
    compressionHeight: inches('1.1600'),
    pinBore: inches('0.9278'),
    pinBoreMouth: inches('0.9600'),
  },
  pin: { fit: 'floating', diameter: inches('0.9270'), length: inches('2.5000') },
  rod: { ...streetV8.parts.rod, length: inches('6.2500'), smallEndBore: inches('0.9275') },
  retainers: { perSide: 2, thickness: inches('0.0420'), outerFlanks: inches('2.6710') },
}
