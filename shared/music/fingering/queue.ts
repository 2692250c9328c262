/** A queue that hands out the cheapest first: a binary heap. Equals come in an order that is the same every time. */
export class Queue<T extends { readonly cost: number }> {
  private readonly heap: T[] = [];

  add(item: T): void {
    const { heap } = this;
    let at = heap.push(item) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (heap[parent]!.cost <= item.cost) break;
      heap[at] = heap[parent]!;
      at = parent;
    }
    heap[at] = item;
  }

  /** Removes and returns the cheapest; undefined when there is none. */
  take(): T | undefined {
    const { heap } = this;
    const cheapest = heap[0];
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return cheapest;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && heap[child + 1]!.cost < heap[child]!.cost) child++;
      if (heap[child]!.cost >= last.cost) break;
      heap[at] = heap[child]!;
      at = child;
    }
    heap[at] = last;
    return cheapest;
  }
}
