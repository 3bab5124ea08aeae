/** The ILIKE pattern for *contains this text*, whatever signs the text holds. */
export const containing = (text: string): string => `%${escaped(text)}%`

/** The ILIKE pattern for *begins with this text*. */
export const beginningWith = (text: string): string => `${escaped(text)}%`

const escaped = (text: string): string => text.replaceAll(/[\\%_]/g, String.raw`\$&`)
