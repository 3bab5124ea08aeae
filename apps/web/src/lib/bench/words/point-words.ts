const axisTitles: Readonly<Record<string, string>> = {
  thrust: 'Thrust axis',
  pin: 'Pin axis',
  '60-left': '60° left',
  '60-right': '60° right',
  'over-pin': 'Over the pin',
}

/** A key of the plan as a person says it: `rear-inner` is “Rear inner”. */
export function stationTitle(station: string): string {
  const words = station.replaceAll('-', ' ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** The axis of a point as a person says it. */
export function axisTitle(axis: string): string {
  return axisTitles[axis] ?? stationTitle(axis)
}

/** Where a gauge is put, in one breath: “middle, thrust axis”. */
export function pointTitle(point: { readonly station: string; readonly axis: string }): string {
  return `${stationTitle(point.station).toLowerCase()}, ${axisTitle(point.axis).toLowerCase()}`
}
