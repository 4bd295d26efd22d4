/** States in rising order of their promise, as far as they are asked for. */
export interface Queue {
  /** The state that promises the least cost; undefined when none is left. */
  readonly take: () => number | undefined;
}

/** A binary heap; among equal promises the state met first goes first. */
export function makeQueue(states: readonly number[], promiseOf: (state: number) => number): Queue {
  const heap = Int32Array.from(states);
  const promises = Float64Array.from(states, promiseOf);
  let size = heap.length;

  const isBefore = (a: number, b: number): boolean => promises[a]! < promises[b]! || (promises[a] === promises[b] && heap[a]! < heap[b]!);

  const swap = (a: number, b: number): void => {
    const [state, promise] = [heap[a]!, promises[a]!];
    heap[a] = heap[b]!;
    promises[a] = promises[b]!;
    heap[b] = state;
    promises[b] = promise;
  };

  const sink = (from: number): void => {
    for (let at = from; ;) {
      let least = at;
      for (let child = 2 * at + 1; child <= 2 * at + 2 && child < size; child += 1) if (isBefore(child, least)) least = child;
      if (least === at) return;
      swap(at, least);
      at = least;
    }
  };

  for (let at = Math.floor(size / 2) - 1; at >= 0; at -= 1) sink(at);
  return {
    take: () => {
      if (size === 0) return undefined;
      size -= 1;
      swap(0, size);
      sink(0);
      return heap[size];
    },
  };
}
