// The one-time code stands behind the #, which no server sees.
export const ssr = false
