/** A photograph that is not taken just now, with a sentence that says why. */
export class NotTaken extends Error {}
