import { kilograms, lengthSheet, millimetres, torqueSheet, type DemoEngine } from './model.ts'

/** An inline four drawn in millimetres: a delivery van's, forged pistons, floating pins. */
export const inlineFour: DemoEngine = {
  engine: {
    name: 'Tovell four',
    arrangement: 'inline',
    cylinders: 4,
    bankAngle: 0,
    numbering: 'front-to-back',
    firstBank: null,
    leadingBank: null,
    rotation: 'clockwise',
    pinSharing: 'one-rod',
    cooling: 'water',
    greatestSpeed: 5_500,
    crank: { mass: kilograms('15.2') },
    block: 'iron',
    bore: millimetres('82.000'),
    stroke: millimetres('88.000'),
    deckHeight: millimetres('215.000'),
    mains: {
      count: 5, diameter: millimetres('58.000'), width: millimetres('25.000'), fillet: millimetres('2.000'),
      housing: millimetres('62.000'),
    },
    rodJournals: {
      count: 4, diameter: millimetres('47.000'), width: millimetres('26.000'), fillet: millimetres('1.500'),
      housing: millimetres('50.000'),
    },
  },
  parts: {
    piston: {
      alloy: '4032',
      diameter: millimetres('81.938'),
      compressionHeight: millimetres('30.700'),
      pinBore: millimetres('21.019'),
      pinBoreMouth: millimetres('22.000'),
      grooves: [
        { ring: 'top', upperFlank: millimetres('5.500'), width: millimetres('1.240') },
        { ring: 'second', upperFlank: millimetres('10.000'), width: millimetres('1.540') },
        { ring: 'oil', upperFlank: millimetres('14.500'), width: millimetres('2.530') },
      ],
      hasFrontMark: true,
    },
    pin: { fit: 'floating', diameter: millimetres('21.000'), length: millimetres('56.000') },
    rod: {
      material: 'steel', length: millimetres('140.000'), bigEndWidth: millimetres('25.750'),
      smallEndBore: millimetres('21.013'),
    },
    retainers: { perSide: 1, thickness: millimetres('1.200') },
    rodShell: {
      width: millimetres('21.500'), wall: millimetres('1.480'), cheekInset: millimetres('1.700'),
      edgeBevel: millimetres('0.700'),
    },
    mainShell: {
      width: millimetres('21.000'), wall: millimetres('1.975'), cheekInset: millimetres('2.200'),
      edgeBevel: millimetres('1.000'),
    },
  },
  unit: 'millimetre',
  sheets: [
    lengthSheet('rod-bolt-stretch', 'millimetre', '0.130', '0.150', '0.140', 'Rod bolts’ sheet, Tovell four'),
    torqueSheet('rod-bolt-torque', 'newtonMetre', '46', '60', '52', 'Rod bolts’ sheet, Tovell four'),
    torqueSheet('main-bolt-torque', 'newtonMetre', '66', '70', '68', 'Engine maker’s sheet, Tovell four'),
  ],
}

/** The same four with shells from another box: nobody has measured how far their edges stand back. */
export const unmeasuredShells: DemoEngine['parts'] = {
  ...inlineFour.parts,
  rodShell: { ...inlineFour.parts.rodShell, cheekInset: null, edgeBevel: null },
  mainShell: { ...inlineFour.parts.mainShell, cheekInset: null },
}
