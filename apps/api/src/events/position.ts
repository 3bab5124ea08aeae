/** A place in the order of commits: everything up to it was seen. */
export interface Position {
  /** Drawn anew when a backup is restored, so that a place in another past is not taken for one in this. */
  readonly generation: string
  /** Transaction id, as text because it has 64 bits. */
  readonly xid: string
  readonly id: number
}

/** The position as the id of a server-sent event: `generation.xid.id`. */
export function writePosition({ generation, xid, id }: Position): string {
  return `${generation}.${xid}.${id}`
}

/** The position that a browser names; null for what never was one. */
export function readPosition(text: string): Position | null {
  const [, generation, xid, id] = /^([0-9a-f-]{36})\.(\d{1,19})\.(\d{1,15})$/.exec(text) ?? []
  return generation === undefined || xid === undefined || id === undefined ? null : { generation, xid, id: Number(id) }
}
