import type { FeatureReference } from '../features/feature.ts'
import { mainJournal, rodJournal } from '../features/references.ts'
import { FROM_MEMORY, guardParameter, parameter, remedy, TENTH } from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'
import { formLine, forms, formTitles } from './form.ts'
import type { Form } from './form.ts'

/** The two journal families of a crank. */
const families = [
  {
    key: 'main-journal',
    title: 'Main journal',
    reference: mainJournal,
    count: (c: FitContext) => c.engine.mains.count,
  },
  {
    key: 'rod-journal',
    title: 'Rod journal',
    reference: rodJournal,
    count: (c: FitContext) => c.engine.rodJournals.count,
  },
] as const

const REUSE = 'US Army TM 5-3805-262-34: over 0.0005 in taper or out-of-round, grind'

/** Out-of-round and taper of main and rod journals: closer when freshly ground than when used again. */
export const journalForms: readonly FitDefinition[] = families.flatMap((family) =>
  forms.map((form) => journalForm(family.key, family.title, family.reference, family.count, form)),
)

function journalForm(
  key: string,
  title: string,
  reference: (journal: number) => FeatureReference,
  count: (context: FitContext) => number,
  form: Form,
): FitDefinition {
  return {
    key: `${key}-${form}`,
    title: `${title} ${formTitles[form]}`,
    critical: false,
    judgedAt: ['grind-crank', 'polish-crank', 'measure-crank'],
    parameters: [
      parameter('target', 'Better within', 'length', 2 * TENTH, FROM_MEMORY),
      parameter('ground-high', 'Greatest, freshly ground', 'length', 3 * TENTH, FROM_MEMORY),
      parameter('reuse-high', 'Greatest, used again', 'length', 5 * TENTH, REUSE),
      guardParameter('accepted'),
    ],
    lines(context, read) {
      const high = read(context.options.crank === 'grind' ? 'ground-high' : 'reuse-high')
      return Array.from({ length: count(context) }, (_, index) => index + 1).map((journal) =>
        formLine(
          form,
          reference(journal),
          `${title} ${journal}`,
          journal,
          { target: read('target'), high },
          remedy('grind', reference(journal), 'Grind the whole family to the next undersize.'),
        ),
      )
    },
  }
}
