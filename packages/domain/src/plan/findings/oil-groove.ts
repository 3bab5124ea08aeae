import { say } from '../../fits/building-blocks.ts'
import type { PartsSpecification } from '../../engine/specification.ts'
import type { OilGroove } from '../../rings/oil-groove.ts'
import type { PlanFinding } from '../plan-types.ts'

/** What the oil groove's state asks of the shop. */
export function oilGrooveFindings(
  groove: OilGroove,
  { piston }: PartsSpecification,
): readonly PlanFinding[] {
  const worked = workedLines(groove, piston)
  const finding = (sentence: string, remedy: string): readonly PlanFinding[] => [
    {
      key: 'oil-groove',
      severity: 'look',
      title: `Oil groove at the pin bore: ${words[groove.state]}`,
      sentence,
      worked,
      remedy,
    },
  ]
  switch (groove.state) {
    case 'whole':
      return []
    case 'broken':
      return finding(
        'The pin bore opens the oil groove: without a floor the oil ring would sink in.',
        'A support rail goes in first; the route has a step for it. Order rails of this groove’s width.',
      )
    case 'look':
      return finding('The oil groove is whole, but by little.', 'Look at it at trial assembly and tick it.')
    case 'unknown':
      return finding(
        'Nobody has measured the mouth of the pin bore: whether it opens the oil groove is unknown.',
        'Measure the largest diameter of the mouth, chamfer or counterbore included, and plan again.',
      )
  }
}

const words: Record<OilGroove['state'], string> = {
  whole: 'whole',
  look: 'whole by little',
  broken: 'broken',
  unknown: 'unknown',
}

function workedLines({ margin }: OilGroove, piston: PartsSpecification['piston']): readonly string[] {
  const groove = piston.grooves.find(({ ring }) => ring === 'oil')
  if (groove === undefined || margin === null) return []
  const mouth = piston.pinBoreMouth ?? piston.pinBore
  const lowerFlank = groove.upperFlank + groove.width
  return [
    `Lower flank: ${say(groove.upperFlank)} + ${say(groove.width)} = ${say(lowerFlank)}`,
    `Edge of the pin bore: ${say(piston.compressionHeight)} − half of ${say(mouth)}`,
    `Margin: ${say(margin)}`,
  ]
}
