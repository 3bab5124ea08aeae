/** How the pages look on this browser: as the device says, or always light or dark. */
export const looksChoices = ['device', 'light', 'dark'] as const
export type Looks = (typeof looksChoices)[number]

class LooksSwitch {
  current = $state<Looks>(remembered())

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

function remembered(): Looks {
  const kept = typeof localStorage === 'undefined' ? null : localStorage.getItem('looks')
  return kept === 'light' || kept === 'dark' ? kept : 'device'
}
