import { onReach } from './reach.ts'

/** How it stands with the server, as the calls of this page have found it. */
class Network {
  /** It gives no answer. */
  isAway = $state(false)
  /** It does not know any more who is here: the sign-in has run out, or was ended elsewhere. */
  isSignedOut = $state(false)

  constructor() {
    onReach(({ reached, signedIn }) => {
      if (reached !== undefined) this.isAway = !reached
      if (signedIn !== undefined) this.isSignedOut = !signedIn
    })
  }
}

export const network = new Network()
