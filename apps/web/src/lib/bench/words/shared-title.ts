/** The words that all titles have, up to a comma: “Rod 1 big end”, “Rod 2 big end” share “Rod big end”; one alone keeps its own. */
export function sharedTitle(titles: readonly string[]): string {
  const [first = '', ...others] = titles
  if (others.length === 0) return first
  const words = first.split(' ').filter((word) => others.every((title) => title.split(' ').includes(word)))
  const shared = words.join(' ').split(',')[0] ?? ''
  return shared.charAt(0).toUpperCase() + shared.slice(1)
}
