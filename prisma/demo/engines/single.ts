import { inches, kilograms, lengthSheet, torqueSheet, type DemoEngine } from './model.ts'

/** A water-cooled single of an old pump: two mains, one of everything, turning against the clock. */
export const single: DemoEngine = {
  engine: {
    name: 'Windlow single',
    arrangement: 'single',
    cylinders: 1,
    bankAngle: 0,
    numbering: 'front-to-back',
    firstBank: null,
    leadingBank: null,
    rotation: 'counterclockwise',
    pinSharing: 'one-rod',
    cooling: 'water',
    greatestSpeed: 1_800,
    crank: { mass: kilograms('13.6'), balanceFactor: 550 },
    block: 'iron',
    bore: inches('3.2500'),
    stroke: inches('3.5000'),
    deckHeight: inches('8.6000'),
    mains: {
      count: 2, diameter: inches('1.7500'), width: inches('1.2000'), fillet: inches('0.0900'), housing: inches('1.9400'),
    },
    rodJournals: {
      count: 1, diameter: inches('1.6250'), width: inches('1.1100'), fillet: inches('0.0900'), housing: inches('1.7490'),
    },
    valveTrain: { camshaft: 'in-block', intakeValves: 1, exhaustValves: 1 },
    head: { material: 'iron', bolts: 4 },
  },
  parts: {
    piston: {
      alloy: 'cast',
      diameter: inches('3.2480'),
      compressionHeight: inches('1.6300'),
      pinBore: inches('0.8753'),
      pinBoreMouth: inches('0.9000'),
      grooves: [
        { ring: 'top', upperFlank: inches('0.3000'), width: inches('0.0955') },
        { ring: 'second', upperFlank: inches('0.5200'), width: inches('0.0955') },
        { ring: 'oil', upperFlank: inches('0.7600'), width: inches('0.1885') },
      ],
      hasFrontMark: false,
    },
    pin: { fit: 'floating', diameter: inches('0.8750'), length: inches('2.7000') },
    rod: {
      material: 'steel', length: inches('5.2000'), bigEndWidth: inches('1.1000'), smallEndBore: inches('0.8755'),
    },
    retainers: { perSide: 1, thickness: inches('0.0420') },
    rodShell: {
      width: inches('0.9000'), wall: inches('0.0614'), cheekInset: inches('0.1000'), edgeBevel: inches('0.0300'),
    },
    mainShell: {
      width: inches('1.0000'), wall: inches('0.0942'), cheekInset: inches('0.1050'), edgeBevel: inches('0.0400'),
    },
  },
  unit: 'inch',
  sheets: [
    lengthSheet('rod-bolt-stretch', 'inch', '0.0055', '0.0060', '0.0057', 'Rod bolts’ sheet, Windlow single'),
    torqueSheet('rod-bolt-torque', 'poundForceFoot', '27', '43', '35', 'Rod bolts’ sheet, Windlow single'),
    torqueSheet('main-bolt-torque', 'poundForceFoot', '38', '42', '40', 'Engine maker’s sheet, Windlow single'),
  ],
}
