// Said where something was done, while the device keeps nothing more: the notice at the top says why.

/** Said at a cell. */
export const cannotKeepValues = 'This device cannot keep more values at the moment: see the notice at the top.'
/** Said of anything else. */
export const cannotKeep = 'This device cannot keep that at the moment: see the notice at the top.'
