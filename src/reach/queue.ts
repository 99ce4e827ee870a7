/** A heap: the item with the lowest key comes out first; of equal keys the deeper item, then the one that came first. */

interface Entry<T> {
  readonly item: T
  readonly key: number
  readonly depth: number
  readonly number: number
}

export class Queue<T extends { readonly length: number }> {
  private readonly heap: Entry<T>[] = []
  private pushed = 0

  private before(one: Entry<T>, other: Entry<T>): boolean {
    if (one.key !== other.key) return one.key < other.key
    if (one.depth !== other.depth) return one.depth > other.depth
    return one.number < other.number
  }

  private swap(i: number, j: number): void {
    const [one, other] = [this.heap[i] as Entry<T>, this.heap[j] as Entry<T>]
    this.heap[i] = other
    this.heap[j] = one
  }

  push(item: T, key: number): void {
    this.heap.push({ item, key, depth: item.length, number: this.pushed++ })
    let at = this.heap.length - 1
    while (at > 0) {
      const above = (at - 1) >> 1
      if (!this.before(this.heap[at] as Entry<T>, this.heap[above] as Entry<T>)) break
      this.swap(at, above)
      at = above
    }
  }

  pop(): { readonly item: T; readonly key: number } | null {
    const [top] = this.heap
    const last = this.heap.pop()
    if (top === undefined || last === undefined) return null
    if (this.heap.length > 0) {
      this.heap[0] = last
      this.sink()
    }
    return top
  }

  private sink(): void {
    let at = 0
    for (;;) {
      const [left, right] = [2 * at + 1, 2 * at + 2]
      let least = at
      for (const child of [left, right])
        if (child < this.heap.length && this.before(this.heap[child] as Entry<T>, this.heap[least] as Entry<T>))
          least = child
      if (least === at) return
      this.swap(at, least)
      at = least
    }
  }
}
