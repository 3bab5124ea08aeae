/** Whatever can be touched and is smaller than `least` CSS pixels either way; a link within a sentence is as tall as its line. */
export function smallTargets(least: number): string[]

/** Whatever reaches over the right edge and cannot be brought into sight by a scroller of its own. */
export function cutOff(): string[]

/**
 * What is wrong with how the focus shows itself where it stands now, and whether it has been there before; null when it
 * stands on nothing. A box that is covered, or out of sight, shows nothing.
 */
export function describeFocus(): { readonly isBack: boolean; readonly trouble: string[] } | null

/** Whatever can be worked and `describeFocus` has not seen with the focus; forgets what it has seen. */
export function unreached(): string[]
