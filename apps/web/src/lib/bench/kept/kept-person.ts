import { whoAmI } from '@tenths/contract'
import type { AnswerOf, CallSettings } from '../../api/call.ts'
import { callKept } from './call-kept.ts'
import { clearKept, keepAnswer, keptAnswer } from './kept-answers.ts'

/**
 * Who is signed in, or who was when the server was last reached. What the one before opened is not the next one's to see.
 * @throws ProblemError as `callKept` does
 */
export async function whoIsHere(settings: CallSettings): Promise<AnswerOf<typeof whoAmI>> {
  const before = await keptAnswer(whoAmI.path) as AnswerOf<typeof whoAmI> | undefined
  const person = await callKept(whoAmI, {}, settings)
  if (before !== undefined && before.id !== person.id) {
    await clearKept()
    await keepAnswer(whoAmI.path, person)
  }
  return person
}
