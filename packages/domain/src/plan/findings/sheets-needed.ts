import type { FitDefinition } from '../../fits/fit-definition.ts'
import type { PlanFinding, SheetLimit } from '../plan-types.ts'

/** A fit whose lines no rule of the trade covers, with the reasons. */
export interface SheetWanted {
  readonly fit: FitDefinition
  readonly reasons: readonly string[]
}

/**
 * What only makers can say, one finding for each reason, naming all that wait for it. Bolts that have a sheet for torque wait
 * for none about stretch.
 */
export function sheetsNeeded(wanted: readonly SheetWanted[], sheets: readonly SheetLimit[]): readonly PlanFinding[] {
  const settled = new Set(
    wanted.filter(({ fit }) => sheets.some((sheet) => sheet.fit === fit.key)).map(({ fit }) => familyOf(fit)),
  )
  /** Titles of what waits, by its key, for each reason. */
  const waiting = new Map<string, Map<string, string>>()
  for (const { fit, reasons } of wanted) {
    if (settled.has(familyOf(fit))) continue
    for (const reason of reasons) {
      const titles = waiting.get(reason) ?? new Map<string, string>()
      waiting.set(reason, titles.set(familyOf(fit), fit.sheetFamily?.title ?? fit.title))
    }
  }
  return [...waiting].map(([reason, titles]) => findingFor(reason, titles))
}

function familyOf({ sheetFamily, key }: FitDefinition): string {
  return sheetFamily?.key ?? key
}

function findingFor(reason: string, titles: ReadonlyMap<string, string>): PlanFinding {
  const [first = '', ...others] = titles.values()
  const one = others.length === 0
  return {
    key: `sheet-needed/${[...titles.keys()].join('+')}`,
    severity: 'look',
    title: `${[first, ...others.map(inside)].join('; ')}: ${one ? 'maker’s sheet' : 'makers’ sheets'} needed`,
    sentence: `${reason} Without ${one ? 'the sheet this fit gets' : 'the sheets these fits get'} no verdict.`,
    worked: [],
    remedy: 'Enter the maker’s limits for this job.',
  }
}

/** A title inside a sentence begins small. */
function inside(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1)
}
