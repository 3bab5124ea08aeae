/** How the engine will be used: it decides the clearances (common practice, no source). */
export const duties = [
  'street',
  'towing',
  'mild-boost',
  'hard-boost',
  'nitrous',
  'sustained',
  'restoration',
] as const
export type Duty = (typeof duties)[number]

export const dutyTitles: Record<Duty, string> = {
  street: 'Naturally aspirated, street',
  towing: 'Towing or heavy load',
  'mild-boost': 'Mild boost',
  'hard-boost': 'Hard boost',
  nitrous: 'Nitrous',
  sustained: 'Sustained high load (marine, endurance)',
  restoration: 'Stock restoration',
}

/** Whether the intake is forced: the pin, the piston and the rings run hotter. */
export function isBoosted(duty: Duty): boolean {
  return duty === 'mild-boost' || duty === 'hard-boost'
}

/** Whether piston clearance counts the duty as sustained high load. */
export function isSustained(duty: Duty): boolean {
  return duty === 'sustained'
}

/** Whether valves, seats and gaskets run hotter than on the street: boost, nitrous or sustained load. Common practice, no source. */
export function isHot(duty: Duty): boolean {
  return isBoosted(duty) || isSustained(duty) || duty === 'nitrous'
}
