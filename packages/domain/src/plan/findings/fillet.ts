import { filletRoom, rodChamferNeeded } from '../../bearings/fillet.ts'
import type { FilletRoom } from '../../bearings/fillet.ts'
import type { EngineSpecification, PartsSpecification } from '../../engine/specification.ts'
import { nanometresOf } from '../../exact/length.ts'
import type { Nanometres } from '../../exact/length.ts'
import { say } from '../../fits/building-blocks.ts'
import type { PlanFinding } from '../plan-types.ts'

/** One bearing family against its fillet. */
interface FilletCase {
  readonly key: string
  readonly title: string
  readonly fillet: Nanometres | null
  readonly shell: PartsSpecification['rodShell']
  readonly travel: Nanometres
  readonly room: FilletRoom
}

/** Rod shells with the rod against its cheek; main shells with the whole end play taken off. */
export function filletCases(
  engine: EngineSpecification,
  parts: PartsSpecification,
  greatestEndPlay: number,
): readonly FilletCase[] {
  const cases = [
    {
      key: 'rod',
      title: 'Rod bearing',
      journals: engine.rodJournals,
      shell: parts.rodShell,
      travel: nanometresOf(0),
    },
    {
      key: 'main',
      title: 'Main bearing',
      journals: engine.mains,
      shell: parts.mainShell,
      travel: nanometresOf(greatestEndPlay),
    },
  ]
  return cases.map(({ key, title, journals: { fillet }, shell, travel }) => ({
    key,
    title,
    fillet,
    shell,
    travel,
    room: filletRoom(fillet, shell, travel),
  }))
}

/** A shell that fouls stops the plan; one that is near or not known is to be looked at. */
export function filletFindings(cases: readonly FilletCase[]): readonly PlanFinding[] {
  return cases.flatMap((each) => {
    const sentences = sentencesFor(each)
    if (sentences === null) return []
    return [
      {
        key: `fillet/${each.key}`,
        severity: each.room.state === 'fouls' ? ('stops' as const) : ('look' as const),
        title: `${each.title} against its fillet: ${sentences.word}`,
        sentence: sentences.sentence,
        worked: workedLines(each),
        remedy: sentences.remedy,
      },
    ]
  })
}

function sentencesFor({ room }: FilletCase): { word: string; sentence: string; remedy: string } | null {
  switch (room.state) {
    case 'clear':
      return null
    case 'look':
      return {
        word: 'near',
        sentence: 'The shell’s edge clears the fillet by less than the shop’s margin.',
        remedy: 'Look at it at trial assembly with the rod hard against the cheek.',
      }
    case 'fouls':
      return {
        word: 'fouls',
        sentence: `The shell’s edge runs into the fillet by ${say(-(room.margin ?? 0))}; side play does not help.`,
        remedy: 'A narrower or bevelled shell, its bevelled edge to the cheek; never a smaller fillet.',
      }
    case 'unknown':
      return {
        word: 'unknown',
        sentence: 'Fillet, shell inset or edge bevel is not measured: unknown is never clear.',
        remedy: 'Measure them on the parts in hand and plan again.',
      }
  }
}

function workedLines({ fillet, shell, travel, room }: FilletCase): readonly string[] {
  if (fillet === null || shell.cheekInset === null || shell.edgeBevel === null || room.margin === null) {
    return []
  }
  const less = travel === 0 ? '' : ` − end play ${say(travel)}`
  const { radial, axial } = rodChamferNeeded(fillet, shell.wall)
  return [
    `Inset ${say(shell.cheekInset)}${less}, bevel ${say(shell.edgeBevel)}, fillet ${say(fillet)}`,
    `Margin: ${say(room.margin)}`,
    `The housing’s own edge needs a chamfer of ${say(radial)} radially, ${say(axial)} axially`,
  ]
}
