/** How the pages look on this browser: as the device says, or always light or dark. */
export const looksChoices = ['device', 'light', 'dark'] as const
export type Looks = (typeof looksChoices)[number]

class LooksSwitch {
  current = $state<Looks>('device')

  /** Puts on what this browser chose before. */
  remember(): void {
    const kept = localStorage.getItem('looks')
    if (kept === 'light' || kept === 'dark') this.choose(kept)
  }

  choose(looks: Looks): void {
    this.current = looks
    if (looks === 'device') {
      localStorage.removeItem('looks')
      delete document.documentElement.dataset.looks
      return
    }
    localStorage.setItem('looks', looks)
    document.documentElement.dataset.looks = looks
  }
}

export const looks = new LooksSwitch()
