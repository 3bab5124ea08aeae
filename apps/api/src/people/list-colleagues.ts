import type { Colleague, Role } from '@tenths/contract'
import type { z } from 'zod'
import type { PrismaClient } from '../database/prisma.ts'

/** Active people by name, for choosing who signs. */
export async function listColleagues(prisma: PrismaClient): Promise<z.infer<typeof Colleague>[]> {
  const people = await prisma.person.findMany({
    where: { active: true },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, pinHash: true, roles: { select: { role: true }, orderBy: { role: 'asc' } } },
  })
  return people.map(({ pinHash, roles, ...person }) => ({
    ...person, hasPin: pinHash !== null, roles: roles.map(({ role }) => role as Role),
  }))
}
