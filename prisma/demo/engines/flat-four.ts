import { inches, kilograms, lengthSheet, torqueSheet, type DemoEngine } from './model.ts'

/** An air-cooled flat four that drives a winch: no general rule knows its piston clearance, its maker's sheet does. */
export const flatFour: DemoEngine = {
  engine: {
    name: 'Larkmoor flat four',
    arrangement: 'flat',
    cylinders: 4,
    bankAngle: 180_000,
    numbering: 'by-bank',
    firstBank: 'viewer-right',
    leadingBank: 'viewer-right',
    rotation: 'clockwise',
    pinSharing: 'one-rod',
    cooling: 'air',
    greatestSpeed: 4_400,
    crank: { mass: kilograms('9.4') },
    block: 'aluminium-with-liners',
    bore: inches('3.7000'),
    stroke: inches('3.2000'),
    deckHeight: inches('8.2000'),
    mains: {
      count: 4, diameter: inches('2.1650'), width: inches('0.9500'), fillet: inches('0.0800'), housing: inches('2.3450'),
    },
    rodJournals: {
      count: 4, diameter: inches('2.0000'), width: inches('0.9100'), fillet: inches('0.0600'), housing: inches('2.1240'),
    },
  },
  parts: {
    piston: {
      alloy: 'cast',
      diameter: inches('3.6972'),
      compressionHeight: inches('1.1700'),
      pinBore: inches('0.8663'),
      pinBoreMouth: inches('0.9000'),
      grooves: [
        { ring: 'top', upperFlank: inches('0.1900'), width: inches('0.0605') },
        { ring: 'second', upperFlank: inches('0.3300'), width: inches('0.0605') },
        { ring: 'oil', upperFlank: inches('0.4700'), width: inches('0.1585') },
      ],
      hasFrontMark: true,
    },
    pin: { fit: 'floating', diameter: inches('0.8660'), length: inches('2.8000') },
    rod: {
      material: 'steel', length: inches('5.4000'), bigEndWidth: inches('0.9000'), smallEndBore: inches('0.8665'),
    },
    retainers: { perSide: 1, thickness: inches('0.0420') },
    rodShell: {
      width: inches('0.7600'), wall: inches('0.0611'), cheekInset: inches('0.0680'), edgeBevel: inches('0.0250'),
    },
    mainShell: {
      width: inches('0.7900'), wall: inches('0.0891'), cheekInset: inches('0.0850'), edgeBevel: inches('0.0400'),
    },
  },
  unit: 'inch',
  sheets: [
    lengthSheet('rod-bolt-stretch', 'inch', '0.0055', '0.0060', '0.0057', 'Rod bolts’ sheet, Larkmoor flat four'),
    torqueSheet('rod-bolt-torque', 'poundForceFoot', '32', '48', '40', 'Rod bolts’ sheet, Larkmoor flat four'),
    torqueSheet('main-bolt-torque', 'poundForceFoot', '43', '47', '45', 'Engine maker’s sheet, Larkmoor flat four'),
  ],
}

/** The sheet that came later: the maker's own piston clearance. */
export const pistonSheet = lengthSheet(
  'piston-in-bore', 'inch', '0.0021', '0.0035', '0.0028', 'Piston maker’s sheet for air-cooled cylinders, invented',
)
