/** Characters beyond ISO 8859-1 that the standard PDF fonts have (Windows code page 1252). */
const alsoPrintable = new Set('€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ')

/** What stands for characters that the fonts lack: a true minus is printed as a dash of its width. */
const substitutes: Readonly<Record<string, string>> = {
  '−': '–', μ: 'µ', '≥': '>=', '≤': '<=', '→': '->', '√': 'root ', Ł: 'L', ł: 'l', Đ: 'D', đ: 'd', ı: 'i',
  '″': '"', '′': '\'',
}

/**
 * Text as the standard fonts can print it. A letter with a mark that they lack is printed without it; what
 * has no Latin letter at all is printed as a question mark, so that a gap is seen.
 */
export function printable(text: string): string {
  return [...text.normalize('NFC')].map(printableCharacter).join('')
}

function printableCharacter(character: string): string {
  const code = character.codePointAt(0) ?? 0
  if (character === '\n' || (code >= 0x20 && code <= 0x7e) || (code >= 0xa0 && code <= 0xff)) return character
  if (alsoPrintable.has(character)) return character
  const substitute = substitutes[character]
  if (substitute !== undefined) return substitute
  const plain = character.normalize('NFKD').replace(/\p{M}/gu, '')
  return /^[\x20-\x7e]+$/.test(plain) ? plain : '?'
}
