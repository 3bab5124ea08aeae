import { sharedTitle } from '../bench/words/shared-title.ts'
import type { Standing, TrialLine } from './trial-fit-page.ts'

/** All lines of one kind of fit that stand alike. */
export interface FitGroup {
  readonly fit: string
  readonly title: string
  readonly lines: readonly TrialLine[]
}

/** Lines of one standing by their fit, in the order in which they came. */
export function groupsOf(lines: readonly TrialLine[], standing: Standing): readonly FitGroup[] {
  const groups = new Map<string, TrialLine[]>()
  for (const line of lines.filter((one) => one.standing === standing)) {
    groups.set(line.requirement.fit, [...(groups.get(line.requirement.fit) ?? []), line])
  }
  return [...groups].map(([fit, ofFit]) => ({ fit, title: sharedTitle(ofFit.map(({ requirement }) => requirement.title)), lines: ofFit }))
}

/** What a line's figure rests on, in words. */
export const basisWords: Record<TrialLine['basis'], string> = {
  measured: 'measured',
  'partly-nominal': 'forecast, partly from the drawing',
  nominal: 'forecast from the drawing',
  unknown: 'cannot be forecast',
}

/** How the forecasts of a group come out: `from the drawing: 6 within, 2 outside`. */
export function forecastWords(lines: readonly TrialLine[]): string {
  const count = (kind: TrialLine['verdict']['kind']) => lines.filter(({ verdict }) => verdict.kind === kind).length
  const [within, outside, unknown] = [count('within'), count('outside') + count('not-proven'), count('not-measured')]
  const parts = [
    ...(within > 0 ? [`${within} would fit`] : []),
    ...(outside > 0 ? [`${outside} would not`] : []),
    ...(unknown > 0 ? [`${unknown} cannot be forecast`] : []),
  ]
  return parts.join(', ')
}
