import * as benches from './resources/benches.ts'
import * as customers from './resources/customers.ts'
import * as desk from './resources/desk.ts'
import * as devices from './resources/devices.ts'
import * as engines from './resources/engines.ts'
import * as findings from './resources/findings.ts'
import * as gauges from './resources/gauges.ts'
import * as inspections from './resources/inspections.ts'
import * as jobs from './resources/jobs.ts'
import * as lots from './resources/lots.ts'
import * as operations from './resources/operations.ts'
import * as pendingSignOffs from './resources/pending-sign-offs.ts'
import * as people from './resources/people.ts'
import * as photographs from './resources/photographs.ts'
import * as placements from './resources/placements.ts'
import * as plans from './resources/plans.ts'
import * as plausibility from './resources/plausibility.ts'
import * as reOpenings from './resources/re-openings.ts'
import * as readings from './resources/readings.ts'
import * as trialFit from './resources/trial-fit.ts'
import type { RouteDefinition } from './route.ts'

function isRoute(value: unknown): value is RouteDefinition {
  return typeof value === 'object' && value !== null && 'method' in value && 'path' in value && 'who' in value
}

/** Every route of the service by name: registered by the API, tried role by role in a test, listed in openapi.json. */
export const routes: Readonly<Record<string, RouteDefinition>> = Object.fromEntries(
  [
    people, devices, customers, engines, jobs, plans, plausibility, benches, gauges, operations, readings, placements, pendingSignOffs,
    reOpenings, inspections, lots, photographs, trialFit, findings, desk,
  ]
    .flatMap((resource) => Object.entries(resource as Record<string, unknown>))
    .filter((entry): entry is [string, RouteDefinition] => isRoute(entry[1])),
)
