import type { ProblemCode } from './problem.ts'

/**
 * What a person reads for a code. A code that is missing here is told by the server's own sentence, which knows the
 * figures: only what the page can say better stands here.
 */
const texts: Partial<Record<ProblemCode, string>> = {
  'no-network': 'No answer from the shop’s server. What you typed is still here: check the network and try again.',
  'not-kept': 'Without the network only what was opened here before can be shown, and this was not. It opens when the network is back.',
  'answer-unreadable': 'The server answered something this page cannot read. Reload the page and try again.',
  'body-invalid': 'Some fields need another look. Each says what is wrong.',
  'not-signed-in': 'You are not signed in any more. Sign in again; what you typed is kept.',
  'edit-stale': 'Somebody else changed this since you opened it.',
  'version-missing': 'Reload the page: it is older than what it wants to change.',
  'key-missing': 'Reload the page and try again.',
  'key-reused': 'This was sent before with other content. Look whether it has arrived, then try again.',
  busy: 'The server is busy. Wait a moment and try again.',
  unexpected: 'Something went wrong on the server. Try again; if it stays, tell whoever looks after it.',
}

/** The sentence for a code: ours where it is better, else the server's. */
export function problemText(code: ProblemCode, detail: string): string {
  return texts[code] ?? (detail || 'This was refused.')
}
