import { routes, type RouteDefinition } from '@tenths/contract'

const names = new Map(Object.entries(routes).map(([name, route]) => [route, name]))

/** The contract's name of a route in lower case with hyphens, such as `take-readings`. */
export function routeName(route: RouteDefinition): string {
  const name = names.get(route)
  if (name === undefined) throw new Error(`${route.method} ${route.path} is not in the contract.`)
  return name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
}
