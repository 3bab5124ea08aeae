import { hash, verify } from '@node-rs/argon2'

/** argon2id at 19 MiB, two passes, one lane: OWASP's first recommendation for it (Password Storage Cheat Sheet). */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }

/** The verifier of a password, salt and cost included. */
export function hashPassword(password: string): Promise<string> {
  return hash(password.normalize('NFKC'), cost)
}

/** Whether a password is the one behind the verifier; without a verifier it takes as long, and is not. */
export async function isPassword(password: string, verifier: string | undefined): Promise<boolean> {
  const matches = await verify(verifier ?? (await verifierOfNobody()), password.normalize('NFKC'))
  return matches && verifier !== undefined
}

let ofNobody: Promise<string> | undefined

/** Somebody unknown costs as much time as somebody known, so that an answer's time tells no names. */
function verifierOfNobody(): Promise<string> {
  ofNobody ??= hashPassword(crypto.randomUUID())
  return ofNobody
}
