/** What the code on a tag says: a job's page, or that of one of its parts. */
export interface TagText {
  readonly jobNumber: number
  /** The part's mark; null on the job's own tag. */
  readonly mark: string | null
  /** Where the tag was printed, such as `shop.example`; null when the code has only the path. */
  readonly host: string | null
}

/** Path that the code on a tag leads to, behind the sign-in: `/jobs/1001`, `/jobs/1001/parts/R3`. */
export function tagPath(jobNumber: number, mark: string | null = null): string {
  return mark === null ? `/jobs/${jobNumber}` : `/jobs/${jobNumber}/parts/${encodeURIComponent(mark)}`
}

const form = /^(?:https?:\/\/([^/\s]+))?\/jobs\/(\d{1,9})(?:\/parts\/([^/\s?#]+))?\/?$/i

/**
 * Reads what a scanner typed or a camera saw. No gauge types anything of this form, so that a tag is told from a value
 * by its first letters, wherever the cursor is.
 * @returns null for whatever is no tag of this program
 */
export function readTagText(text: string): TagText | null {
  const found = form.exec(text.trim())
  if (found === null) return null
  const [, host, jobNumber, mark] = found
  try {
    return { jobNumber: Number(jobNumber), mark: mark === undefined ? null : decodeURIComponent(mark), host: host ?? null }
  } catch {
    return null
  }
}
