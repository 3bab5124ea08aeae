/** A calendar day some days later, `YYYY-MM-DD`. Days have no zone: they are counted at midnight UTC. */
export function addDays(day: string, days: number): string {
  const date = new Date(`${day}T00:00:00Z`)
  date.setUTCDate(date.getUTCDate() + days)
  return date.toISOString().slice(0, 10)
}
