import type { ReaderUnit } from '../exact/length-unit.ts'
import { featureOf, type FeatureIndex } from '../features/feature-index.ts'
import type { Direction } from './cut-direction.ts'
import { isDifference } from './feature-value.ts'
import type { RemedyRule, Requirement } from './requirement.ts'
import { sayValue } from './say-value.ts'
import type { Remedy } from './verdict.ts'

/** A remedy's figures before they are put into words. */
export interface RemedyFigures {
  readonly requirement: Requirement
  readonly rule: RemedyRule
  readonly needed: Direction
  /** The value that is aimed at, and how far the present one is from it. */
  readonly aim: number
  readonly change: number
  readonly amount: number | null
  readonly reaches: Remedy['reaches']
  readonly features: FeatureIndex
  readonly unit: ReaderUnit
}

const cutVerbs: Partial<Record<RemedyRule['action'], string>> = {
  hone: 'Hone', grind: 'Grind', file: 'File', face: 'Face', deck: 'Deck', lighten: 'Lighten',
}

const otherOpenings: Record<Exclude<RemedyRule['action'], 'hone' | 'grind' | 'file' | 'face' | 'deck' | 'lighten'>, string> = {
  replace: 'Change the part',
  'thinner-shell': 'Fit thinner shells',
  'thicker-shell': 'Fit thicker shells',
  shim: 'Shim',
  advise: 'Look at this again',
  investigate: 'Find out why',
}

/**
 * The remedy as one machinist would say it to another: “Hone 0.0003 in off …, on diameter, to reach 0.0007
 * in.”
 */
export function remedySentence(figures: RemedyFigures): string {
  const sentence = figures.amount === null
    ? changeSentence(figures)
    : `${cutSentence(figures, figures.amount)}${reachSentence(figures)}`
  return figures.rule.words === '' ? sentence : `${sentence} ${figures.rule.words}`
}

function cutSentence(figures: RemedyFigures, amount: number): string {
  const { requirement, rule, aim, features, unit } = figures
  if (rule.action === 'lighten') return lightenSentence(figures, amount)
  const definition = rule.feature && featureOf(features, rule.feature)
  const isRound = definition?.shape === 'hole' || definition?.shape === 'shaft'
  const isForm = requirement.measurand.kind === 'feature' && isDifference(requirement.measurand.reducer)
  const words = [
    cutVerbs[rule.action] ?? '',
    sayValue(amount, 'length', unit),
    ...(definition === null ? [] : [`off ${uncapitalised(definition.title)}`]),
    ...(isForm ? ['where it has most metal'] : []),
  ]
  const goal = `${isForm ? 'to bring the difference down to' : 'to reach'} ${sayValue(aim, requirement.quantity, unit)}`
  return `${words.join(' ')}${isRound ? ', on diameter,' : ''} ${goal}.`
}

/** “Take 1.4 g off, to bring the weight of piston 3 down to the lightest of its set.” */
function lightenSentence({ requirement, rule, aim, features, unit }: RemedyFigures, amount: number): string {
  const { measurand, quantity } = requirement
  const goal = measurand.kind === 'apart' && rule.feature !== null
    ? `bring the ${uncapitalised(featureOf(features, rule.feature).title)} down to the lightest of its set`
    : `reach ${sayValue(aim, quantity, unit)}`
  return `Take ${sayValue(amount, quantity, unit)} off, to ${goal}.`
}

function reachSentence({ requirement, reaches, needed }: RemedyFigures): string {
  if (reaches === 'neither') {
    const stuck = needed === 'up' ? 'largest' : 'smallest'
    return ` That alone will not do: metal only comes off, and the ${stuck} value cannot be brought back inside the limits.`
  }
  if (reaches === 'target' || requirement.limits.target === null) return ''
  return ' Not every place can reach the target, because metal only comes off; all of it stays inside the limits.'
}

function changeSentence({ requirement, rule, needed, aim, change, features, unit }: RemedyFigures): string {
  const verb = cutVerbs[rule.action]
  const title = rule.feature === null ? null : uncapitalised(featureOf(features, rule.feature).title)
  const [difference, goal] = [change, aim].map((value) => sayValue(value, requirement.quantity, unit))
  const figure = requirement.measurand.kind === 'apart'
    ? `it stands ${difference} ${requirement.measurand.from === 'greatest' ? 'under the greatest' : 'over the least'} of its set.`
    : `${difference} ${needed === 'up' ? 'more' : 'less'} is wanted to reach ${goal}.`
  if (verb !== undefined) {
    const where = title === null ? '' : ` ${title}`
    return `${verb}${where}: ${figure} Metal only comes off, so a cut alone cannot give it.`
  }
  const opening = otherOpenings[rule.action as keyof typeof otherOpenings]
  return `${opening}${title === null ? '' : ` (${title})`}: ${figure}`
}

/** A title inside a sentence: “Small end of rod 1” loses its capital, “OD of pin 1” keeps it. */
function uncapitalised(title: string): string {
  const [first = '', second = ''] = title
  return second === second.toUpperCase() && second !== ' ' ? title : first.toLowerCase() + title.slice(1)
}
