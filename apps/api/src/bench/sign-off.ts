import type { signOff as signOffRoute } from '@tenths/contract'
import type { Caller, CommandContext, CommandInput } from '../commands/command.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { verifyPin } from '../people/pin.ts'
import { sealSignOff } from './seal-sign-off.ts'

type Route = typeof signOffRoute

/**
 * Checks the PINs, before anything is begun: a wrong one is counted although nothing is signed.
 * @throws ServiceError `same-person-twice`, or as verifyPin
 */
export async function checkSignatures(
  { shop, deviceId, now }: Caller, { body }: CommandInput<Route>,
): Promise<void> {
  const [first, second] = body.signatures
  if (first?.personId === second?.personId) {
    throw new ServiceError(
      'same-person-twice', 'Two different people sign: one checks the other.', 'signatures.1.personId',
    )
  }
  for (const [index, { personId, pin }] of body.signatures.entries()) {
    await verifyPin(shop.pool, {
      personId, pin, device: deviceId, pepper: shop.secrets.pinPepper, now, field: `signatures.${index}.pin`,
    })
  }
}

/** Signs an operation as the bench saw it, and seals what was measured, seen and judged. */
export async function signOff(
  { client, deviceId, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  announce({ kind: 'sign-off', jobId: params.id, operationKey: body.operationKey })
  return sealSignOff(client, {
    id: body.id, jobId: params.id, operationKey: body.operationKey, definitionHash: body.definitionHash,
    signers: body.signatures.map(({ personId }) => personId), deviceId, withoutNetwork: null,
  })
}
