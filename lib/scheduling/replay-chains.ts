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

/** Where no look is needed, from the uses of one resource. */
interface Uses {
  readonly list: Use[];
  /** Most that one use asks for. */
  most: number;
  /** Most that may be asked at once: of those who share a person, only the one who asks for most. */
  readonly byPerson: Map<number, number>;
  alone: number;
}

/**
 * Resources that need no look: all their users follow one another by the order alone; all who can be at work at once take no more than
 * there is; or each of them has one and the same other resource of one unit at least as long (the gun of the booth).
 * @param list activities in an order that holds
 * @param mayBlock 1 for resources that may be taken from outside, which always need a look
 * @returns 1 for each such resource
 */
export function findOrderly(model: Model, order: Order, list: Int32Array, rows: ReplayRows, mayBlock: Uint8Array): Uint8Array {
  const precedence = new Precedence(model, order, list);
  const position = new Int32Array(model.count);
  list.forEach((activity, k) => {
    position[activity] = k;
  });
  const isOrderly = Uint8Array.from(listUses(model, rows, mayBlock), ({ alone, byPerson, list: own, most }, resource) => {
    const capacity = model.capacity[resource]!;
    if (mayBlock[resource] === 1 || most > capacity) return 0;
    if ([...byPerson.values()].reduce((sum, amount) => sum + amount, alone) <= capacity) return 1;
    const sorted = own.toSorted((a, b) => position[a.first]! - position[b.first]!);
    return Number(sorted.every((use, k) => k === 0 || precedence.isBefore(sorted[k - 1]!.last, use.first)));
  });
  return withCovered(model, rows, isOrderly, mayBlock);
}

function listUses(model: Model, rows: ReplayRows, mayBlock: Uint8Array): readonly Uses[] {
  const uses = Array.from({ length: model.resourceCount }, (): Uses => ({ list: [], most: 0, byPerson: new Map(), alone: 0 }));
  for (let i = 0; i < model.count; i += 1) {
    for (let row = rows.from[i]!; row < rows.from[i + 1]!; row += 1) {
      const amount = rows.amount[row]!;
      const own = uses[rows.resource[row]!]!;
      own.list.push({ first: i, last: i });
      own.most = Math.max(own.most, amount);
      const person = [...coversOf(model, rows, i, row)].find((other) => mayBlock[other] === 1);
      if (person === undefined) own.alone += amount;
      else own.byPerson.set(person, Math.max(own.byPerson.get(person) ?? 0, amount));
    }
  }
  const { holds } = model;
  for (let hold = 0; hold < holds.count; hold += 1) {
    const own = uses[holds.resource[hold]!]!;
    own.list.push({ first: holds.from[hold]!, last: holds.to[hold]! });
    // A hold keeps all of it.
    own.alone = Infinity;
  }
  return uses;
}

/** Adds the resources whose users all need the same other resource of one unit: that one is looked at. */
function withCovered(model: Model, rows: ReplayRows, isOrderly: Uint8Array, mayBlock: Uint8Array): Uint8Array {
  const all = isOrderly.slice();
  // One that is covered itself covers nobody: somebody has to be looked at.
  const isCovered = (resource: number): boolean => all[resource] === 1 && isOrderly[resource] === 0;
  const covers: (Set<number> | undefined)[] = [];
  for (let i = 0; i < model.count; i += 1) {
    for (let row = rows.from[i]!; row < rows.from[i + 1]!; row += 1) {
      const resource = rows.resource[row]!;
      const own = coversOf(model, rows, i, row);
      covers[resource] = new Set([...(covers[resource] ?? own)].filter((other) => own.has(other)));
    }
  }
  // A hold goes on while nobody works.
  const held = new Set(model.holds.resource);
  covers.forEach((own, resource) => {
    if (mayBlock[resource] === 0 && !held.has(resource) && own !== undefined && [...own].some((other) => !isCovered(other))) all[resource] = 1;
  });
  return all;
}

/** Other resources of one unit that the activity has whenever it has the one of the row; none when it alone asks for more than there is. */
function coversOf(model: Model, rows: ReplayRows, activity: number, row: number): Set<number> {
  const found = new Set<number>();
  if (rows.amount[row]! > model.capacity[rows.resource[row]!]!) return found;
  for (let other = rows.from[activity]!; other < rows.from[activity + 1]!; other += 1) {
    const isAsLong = rows.isThrough[other] === 1 || rows.isThrough[row] === 0 || model.isSplit[activity] === 0;
    if (other !== row && isAsLong && rows.amount[other] === 1 && model.capacity[rows.resource[other]!] === 1) found.add(rows.resource[other]!);
  }
  return found;
}
