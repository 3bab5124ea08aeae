/** Why the program refuses to go on, in one sentence that says what to do. It is printed without a stack. */
export class Refusal extends Error {
  override name = 'Refusal'
}
