import { ELAPSED, WORKING, type Model } from './model';

/**
 * The order in which activities may be taken one by one. Activities tied by maximum lags or holds form a
 * block and follow one another, so that a closed window can be mended close to where it arose.
 */
export interface Order {
  /** Activities that come first, for each activity. */
  readonly before: readonly Int32Array[];
  readonly after: readonly Int32Array[];
  /** 1 for arcs that set an order. */
  readonly isOrder: Uint8Array;
  /** Arcs to activities that may already be placed: they bound from above. */
  readonly backArcs: readonly Int32Array[];
  readonly blockOf: Int32Array;
  readonly blockCount: number;
  /** Blocks that come first, for each block. */
  readonly blocksBefore: readonly Int32Array[];
  /** True when a block has more than one member. */
  readonly hasBlocks: boolean;
}

/** Least minutes from the start of the first to the start of the second activity of an arc. */
function startOffset(model: Model, arc: number): number {
  const { arcs } = model;
  const kind = arcs.kind[arc]!;
  const length = kind === ELAPSED || kind === WORKING ? arcs.minutes[arc]! : 0;
  const first = arcs.isFromEnd[arc] === 1 ? model.duration[arcs.from[arc]!]! : 0;
  const second = arcs.isToEnd[arc] === 1 ? model.duration[arcs.to[arc]!]! : 0;
  return length + first - second;
}

function canReach(after: readonly number[][], from: number, to: number): boolean {
  const seen = new Set<number>([from]);
  const stack = [from];
  for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
    if (at === to) return true;
    for (const next of after[at]!) {
      if (seen.has(next)) continue;
      seen.add(next);
      stack.push(next);
    }
  }
  return false;
}

/** Marks arcs that set an order: those that point forward in time always, others where they close no circle. */
function chooseOrderArcs(model: Model): { readonly isOrder: Uint8Array; readonly after: number[][]; readonly before: number[][] } {
  const { arcs } = model;
  const isOrder = new Uint8Array(arcs.count);
  const after: number[][] = Array.from({ length: model.count }, () => []);
  const before: number[][] = Array.from({ length: model.count }, () => []);
  const add = (arc: number) => {
    isOrder[arc] = 1;
    const from = arcs.from[arc]!;
    const to = arcs.to[arc]!;
    if (after[from]!.includes(to)) return;
    after[from]!.push(to);
    before[to]!.push(from);
  };
  const later: number[] = [];
  for (let arc = 0; arc < arcs.count; arc += 1) {
    if (arcs.isMax[arc] === 1) continue;
    if (startOffset(model, arc) > 0) add(arc);
    else later.push(arc);
  }
  for (const arc of later.toSorted((a, b) => startOffset(model, b) - startOffset(model, a) || a - b)) {
    if (!canReach(after, arcs.to[arc]!, arcs.from[arc]!)) add(arc);
  }
  return { isOrder, after, before };
}

class Groups {
  private readonly parent: Int32Array;

  constructor(count: number) {
    this.parent = Int32Array.from({ length: count }, (_, i) => i);
  }

  find(i: number): number {
    let at = i;
    while (this.parent[at] !== at) {
      this.parent[at] = this.parent[this.parent[at]!]!;
      at = this.parent[at]!;
    }
    return at;
  }

  join(a: number, b: number): void {
    this.parent[this.find(b)] = this.find(a);
  }
}

/** Strongly connected parts of a graph given as successor lists (Tarjan 1972, without recursion). */
function findComponents(after: readonly (readonly number[])[]): Int32Array {
  const count = after.length;
  const number = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const component = new Int32Array(count).fill(-1);
  const open: number[] = [];
  let visits = 0;
  let components = 0;
  for (let root = 0; root < count; root += 1) {
    if (number[root]! >= 0) continue;
    const path: { readonly node: number; next: number }[] = [{ node: root, next: 0 }];
    while (path.length > 0) {
      const top = path.at(-1)!;
      const { node } = top;
      if (top.next === 0) {
        number[node] = low[node] = visits;
        visits += 1;
        open.push(node);
      }
      const child = after[node]![top.next];
      top.next += 1;
      if (child === undefined) {
        path.pop();
        const parent = path.at(-1);
        if (parent !== undefined) low[parent.node] = Math.min(low[parent.node]!, low[node]!);
        if (low[node] !== number[node]) continue;
        let member: number;
        do {
          member = open.pop()!;
          component[member] = components;
        } while (member !== node);
        components += 1;
      } else if (number[child]! < 0) path.push({ node: child, next: 0 });
      else if (component[child]! < 0) low[node] = Math.min(low[node]!, number[child]!);
    }
  }
  return component;
}

/** Joins what must be placed together, then everything that lies between. Returns a block number for each activity. */
function formBlocks(model: Model, isOrder: Uint8Array, after: readonly number[][]): Int32Array {
  const { arcs, holds } = model;
  const groups = new Groups(model.count);
  const isFree = (activity: number) => model.pin[activity]! < 0;
  for (let arc = 0; arc < arcs.count; arc += 1) {
    const from = arcs.from[arc]!;
    const to = arcs.to[arc]!;
    if (isOrder[arc] === 0 && isFree(from) && isFree(to)) groups.join(from, to);
  }
  for (let hold = 0; hold < holds.count; hold += 1) {
    const from = holds.from[hold]!;
    const to = holds.to[hold]!;
    if (isFree(from) && isFree(to)) groups.join(from, to);
  }
  const contracted: number[][] = after.map(() => []);
  after.forEach((list, from) => {
    const own = groups.find(from);
    for (const to of list) if (groups.find(to) !== own) contracted[own]!.push(groups.find(to));
  });
  const component = findComponents(contracted);
  return Int32Array.from({ length: model.count }, (_, i) => component[groups.find(i)]!);
}

/** Blocks numbered without gaps, in the order of their first activity. */
function renumber(blockOf: Int32Array): { readonly blockOf: Int32Array; readonly blockCount: number } {
  const numbers = new Map<number, number>();
  for (const block of blockOf) if (!numbers.has(block)) numbers.set(block, numbers.size);
  return { blockOf: blockOf.map((block) => numbers.get(block)!), blockCount: numbers.size };
}

/** Works out the order of a model without contradictions. */
export function arrange(model: Model): Order {
  const { isOrder, after, before } = chooseOrderArcs(model);
  const { blockOf, blockCount } = renumber(formBlocks(model, isOrder, after));
  const blocksBefore: Set<number>[] = Array.from({ length: blockCount }, () => new Set());
  after.forEach((list, from) => {
    for (const to of list) if (blockOf[to] !== blockOf[from]) blocksBefore[blockOf[to]!]!.add(blockOf[from]!);
  });
  const isBack = (arc: number) => isOrder[arc] === 0 || model.pin[model.arcs.to[arc]!]! >= 0;
  return {
    isOrder,
    blockOf,
    blockCount,
    before: before.map((list) => Int32Array.from(list)),
    after: after.map((list) => Int32Array.from(list)),
    backArcs: model.arcsOut.map((list) => list.filter(isBack)),
    blocksBefore: blocksBefore.map((set) => Int32Array.from(set)),
    hasBlocks: blockCount < model.count,
  };
}
