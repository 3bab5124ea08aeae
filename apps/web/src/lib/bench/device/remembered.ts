/** What this device remembers from one visit to the next: its bench, and the gauge in hand for each quantity there. */

const benchEntry = 'bench'

export function rememberedBench(): string | null {
  return localStorage.getItem(benchEntry)
}

export function rememberBench(benchId: string): void {
  localStorage.setItem(benchEntry, benchId)
}

export function rememberedGauge(benchKind: string, quantity: string): string | null {
  return localStorage.getItem(`gauge/${benchKind}/${quantity}`)
}

export function rememberGauge(benchKind: string, quantity: string, gaugeId: string): void {
  localStorage.setItem(`gauge/${benchKind}/${quantity}`, gaugeId)
}
