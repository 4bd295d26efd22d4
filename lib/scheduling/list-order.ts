import { FAR } from './calendar-index';
import type { Order } from './order';

/**
 * Sorts activities by whole-number keys that (nearly) follow the order already, such as the starts of a schedule:
 * one native sort, and the heap below only when a key does stand against the order.
 */
export class Sorter {
  private readonly packed: Float64Array;
  private readonly position: Int32Array;
  /** Activities in an order that holds. */
  private readonly base: Int32Array;
  private readonly rank: Int32Array;

  constructor(private readonly order: Order) {
    const count = order.before.length;
    this.packed = new Float64Array(count);
    this.position = new Int32Array(count);
    this.rank = new Int32Array(count);
    this.base = listByKey(order, new Float64Array(count));
    for (let k = 0; k < count; k += 1) this.rank[this.base[k]!] = k;
  }

  /** Writes the sorted activities into `list`. */
  sort(keys: Float64Array, list: Int32Array): void {
    const { base, order, packed, position, rank } = this;
    const count = base.length;
    for (let i = 0; i < count; i += 1) packed[i] = keys[i]! * count + rank[i]!;
    packed.sort();
    for (let k = 0; k < count; k += 1) {
      const value = packed[k]!;
      const activity = base[value - Math.floor(value / count) * count]!;
      list[k] = activity;
      position[activity] = k;
    }
    for (let i = 0; i < count; i += 1) {
      const before = order.before[i]!;
      for (let k = 0; k < before.length; k += 1) {
        if (position[before[k]!]! < position[i]!) continue;
        list.set(listByKey(order, keys));
        return;
      }
    }
  }
}

/** Activities by ascending key, each after those that must come first. */
export function listByKey(order: Order, keys: ArrayLike<number>): Int32Array {
  const count = order.before.length;
  const waiting = Int32Array.from(order.before, (list) => list.length);
  const list = new Int32Array(count);
  const ready: number[] = [];
  for (let i = 0; i < count; i += 1) if (waiting[i] === 0) pushHeap(ready, i, keys);
  for (let k = 0; k < count; k += 1) {
    const next = popHeap(ready, keys);
    list[k] = next;
    for (const later of order.after[next]!) {
      waiting[later]! -= 1;
      if (waiting[later] === 0) pushHeap(ready, later, keys);
    }
  }
  return list;
}

function isLess(a: number, b: number, keys: ArrayLike<number>): boolean {
  const difference = (keys[a] ?? FAR) - (keys[b] ?? FAR);
  return difference < 0 || (difference === 0 && a < b);
}

function pushHeap(heap: number[], item: number, keys: ArrayLike<number>): void {
  let at = heap.length;
  heap.push(item);
  while (at > 0) {
    const parent = (at - 1) >> 1;
    if (!isLess(item, heap[parent]!, keys)) break;
    heap[at] = heap[parent]!;
    at = parent;
  }
  heap[at] = item;
}

function popHeap(heap: number[], keys: ArrayLike<number>): number {
  const top = heap[0];
  const last = heap.pop();
  if (top === undefined || last === undefined) throw new Error('The order of activities goes in a circle.');
  if (heap.length === 0) return top;
  let at = 0;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && isLess(heap[child + 1]!, heap[child]!, keys)) child += 1;
    if (!isLess(heap[child]!, last, keys)) break;
    heap[at] = heap[child]!;
    at = child;
  }
  heap[at] = last;
  return top;
}
