import { onReach } from './reach.ts'

/** Whether the server answers, as the calls of this page have found it. */
class Network {
  isAway = $state(false)

  constructor() {
    onReach((reached) => { this.isAway = !reached })
  }
}

export const network = new Network()
