import { bore } from '../features/references.ts'
import { FROM_MEMORY, guardParameter, parameter, remedy, TENTH } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'
import { formLine, forms, formTitles } from './form.ts'

/** Out-of-round and taper of a finished bore with the torque plate on. */
export const boreForms: readonly FitDefinition[] = forms.map((form) => ({
  key: `bore-${form}`,
  title: `Bore ${formTitles[form]}`,
  critical: false,
  judgedAt: ['hone-bores'],
  parameters: [
    parameter('target', 'Better within', 'length', 3 * TENTH, FROM_MEMORY),
    parameter('high', 'Greatest', 'length', 5 * TENTH, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines: ({ cylinders }, read) =>
    cylinders.map(({ cylinder }) =>
      formLine(
        form,
        bore(cylinder),
        `Bore ${cylinder}`,
        cylinder,
        { target: read('target'), high: read('high') },
        remedy(
          'hone',
          bore(cylinder),
          'Hone where the bore is small, as long as the piston’s clearance leaves room.',
        ),
      ),
    ),
}))
