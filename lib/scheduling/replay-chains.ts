/** Where nobody ever meets in a replay, whatever the lengths: nobody need look there. */
import { ELAPSED, type Model } from './model';
import type { Order } from './order';
import type { ReplayRows } from './replay-rows';

/** A use of a resource: from the start of one activity to the end of another, or of the same. */
interface Use {
  readonly first: number;
  readonly last: number;
}

/** Whose end comes before the start of whom by the order alone: one row of bits an activity. */
class Precedence {
  private readonly words: number;
  private readonly bits: Int32Array;

  constructor(model: Model, order: Order, list: Int32Array) {
    const { arcs } = model;
    this.words = (model.count + 31) >> 5;
    this.bits = new Int32Array(model.count * this.words);
    const isEndToStart = (arc: number) => arcs.isMax[arc] === 0 && order.isOrder[arc] === 1 && arcs.isFromEnd[arc] === 1 && arcs.isToEnd[arc] === 0
      && (arcs.kind[arc] !== ELAPSED || arcs.minutes[arc]! >= 0);
    for (const activity of list) for (const arc of model.arcsIn[activity]!) if (isEndToStart(arc)) this.follow(arcs.from[arc]!, activity);
  }

  isBefore(first: number, second: number): boolean {
    return ((this.bits[second * this.words + (first >> 5)]! >>> (first & 31)) & 1) === 1;
  }

  private follow(first: number, second: number): void {
    for (let word = 0; word < this.words; word += 1) this.bits[second * this.words + word]! |= this.bits[first * this.words + word]!;
    this.bits[second * this.words + (first >> 5)]! |= 1 << (first & 31);
  }
}

/**
 * Resources that need no look: all their users follow one another by the order alone, or all together they take no more than there is.
 * @param list activities in an order that holds
 * @returns 1 for each such resource
 */
export function findOrderly(model: Model, order: Order, list: Int32Array, rows: ReplayRows): Uint8Array {
  const precedence = new Precedence(model, order, list);
  const position = new Int32Array(model.count);
  list.forEach((activity, k) => {
    position[activity] = k;
  });
  const uses: Use[][] = Array.from({ length: model.resourceCount }, () => []);
  const sum = new Float64Array(model.resourceCount);
  const most = new Float64Array(model.resourceCount);
  for (let i = 0; i < model.count; i += 1) {
    for (let row = rows.from[i]!; row < rows.from[i + 1]!; row += 1) {
      const resource = rows.resource[row]!;
      uses[resource]!.push({ first: i, last: i });
      sum[resource]! += rows.amount[row]!;
      most[resource] = Math.max(most[resource]!, rows.amount[row]!);
    }
  }
  const { holds } = model;
  for (let hold = 0; hold < holds.count; hold += 1) {
    const resource = holds.resource[hold]!;
    uses[resource]!.push({ first: holds.from[hold]!, last: holds.to[hold]! });
    // A hold keeps all of it.
    sum[resource] = Infinity;
  }
  return Uint8Array.from(uses, (own, resource) => {
    if (most[resource]! > model.capacity[resource]!) return 0;
    if (sum[resource]! <= model.capacity[resource]!) return 1;
    const sorted = own.toSorted((a, b) => position[a.first]! - position[b.first]!);
    return Number(sorted.every((use, k) => k === 0 || precedence.isBefore(sorted[k - 1]!.last, use.first)));
  });
}
