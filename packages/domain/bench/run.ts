import { exactFigures } from './exact-problems.ts'
import { isMet, print } from './figure.ts'
import { futuresFigures } from './futures.ts'
import { judgingFigures } from './judging.ts'

// One JSON line a figure; the exit code says whether all are met. It is bundled first, as the service is: what runs TypeScript
// directly names every closure as it is made, which slows judging threefold and no library.
const figures = [...judgingFigures(), ...exactFigures(), ...(await futuresFigures())]
for (const figure of figures) print(figure)
process.exitCode = figures.every(isMet) ? 0 : 1
