/** Counts how often the shop's data may have changed: whatever is shown asks again when it moves. */
class Changes {
  seen = $state(0)

  announce(): void {
    this.seen += 1
  }
}

export const changes = new Changes()
