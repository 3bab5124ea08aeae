import { NANOMETRES_PER_INCH } from '../exact/length.ts'
import type { FeatureReference } from '../features/feature.ts'
import { crankEndPlay, finalCrankEndPlay } from '../features/references.ts'
import {
  FROM_MEMORY,
  guardParameter,
  limitsOf,
  parameter,
  reading,
  remedy,
  say,
  THOUSANDTH,
} from './building-blocks.ts'
import type {
  ComputedRule,
  FitContext,
  FitDefinition,
  ParameterReader,
  SheetNeeded,
} from './fit-definition.ts'

/** When the crank is pushed to and fro: it is measured at trial assembly and again when it stays in. */
const occasions: readonly { key: string; title: string; reference: FeatureReference; judgedAt: string }[] =
  [
    {
      key: 'crank-end-play',
      title: 'Crankshaft end play, trial',
      reference: crankEndPlay,
      judgedAt: 'trial-assembly',
    },
    {
      key: 'crank-end-play-final',
      title: 'Crankshaft end play, final',
      reference: finalCrankEndPlay,
      judgedAt: 'install-crank',
    },
  ]

/** End play of the crankshaft at its thrust bearing. */
export const crankEndPlays: readonly FitDefinition[] = occasions.map(
  ({ key, title, reference, judgedAt }) => ({
    key,
    title,
    critical: true,
    judgedAt: [judgedAt],
    parameters: [
      parameter('low', 'Least', 'length', 3 * THOUSANDTH, FROM_MEMORY),
      parameter('high', 'Greatest', 'length', 10 * THOUSANDTH, FROM_MEMORY),
      parameter('usual-low', 'Usual, from', 'length', 4 * THOUSANDTH, FROM_MEMORY),
      parameter('usual-high', 'Usual, to', 'length', 8 * THOUSANDTH, FROM_MEMORY),
      parameter('target', 'Target', 'length', 6 * THOUSANDTH, FROM_MEMORY),
      parameter(
        'largest-main',
        'Largest main journal for this rule',
        'length',
        3 * NANOMETRES_PER_INCH,
        FROM_MEMORY,
      ),
      guardParameter('accepted'),
    ],
    lines: (context, read) => [
      {
        position: null,
        title,
        quantity: 'length',
        measurand: reading(reference, 'each'),
        rule: ruleFor(context, read),
        remedy: {
          low: remedy(
            'face',
            null,
            'Dress the thrust faces flat on a plate, a little at a time; never the crank’s own face.',
          ),
          high: remedy(
            'replace',
            null,
            'Fit wider thrust faces, or have the crank’s thrust face built up and ground.',
          ),
        },
      },
    ],
  }),
)

function ruleFor({ engine }: FitContext, read: ParameterReader): ComputedRule | SheetNeeded {
  if (engine.mains.diameter > read('largest-main')) {
    return {
      kind: 'sheet-needed',
      reason: `Mains over ${say(read('largest-main'))} are beyond the general rule.`,
    }
  }
  const [low, high] = [read('low'), read('high')]
  return {
    kind: 'computed',
    limits: limitsOf({
      low,
      high,
      target: read('target'),
      adviceLow: read('usual-low'),
      adviceHigh: read('usual-high'),
    }),
    formula: 'the crank pushed fully each way, between fixed limits',
    worked: [`Main journal ${say(engine.mains.diameter)}: low ${say(low)}, high ${say(high)}`],
  }
}
