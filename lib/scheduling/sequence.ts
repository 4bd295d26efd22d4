import type { Order } from './order';

/** Turns a list of activities into the sequence in which they are placed: the members of a block together, other blocks they need first. */
export class Sequence {
  private readonly members: Int32Array;
  private readonly memberFrom: Int32Array;
  private readonly next: Int32Array;
  private readonly isEmitted: Uint8Array;
  private emitted = 0;

  constructor(private readonly order: Order) {
    const { blockCount, blockOf } = order;
    this.members = new Int32Array(blockOf.length);
    this.memberFrom = new Int32Array(blockCount + 1);
    this.next = new Int32Array(blockCount + 1);
    this.isEmitted = new Uint8Array(blockCount);
    for (const block of blockOf) this.memberFrom[block + 1]! += 1;
    for (let b = 0; b < blockCount; b += 1) this.memberFrom[b + 1]! += this.memberFrom[b]!;
  }

  /** Writes the sequence of the list into `into`. */
  arrange(list: Int32Array, into: Int32Array): void {
    const { blockOf, hasBlocks } = this.order;
    if (!hasBlocks) {
      into.set(list);
      return;
    }
    const { members, next } = this;
    next.set(this.memberFrom);
    for (let k = 0; k < list.length; k += 1) {
      const block = blockOf[list[k]!]!;
      members[next[block]!] = list[k]!;
      next[block]! += 1;
    }
    this.isEmitted.fill(0);
    this.emitted = 0;
    for (let k = 0; k < list.length; k += 1) this.emit(blockOf[list[k]!]!, into);
  }

  private emit(block: number, into: Int32Array): void {
    if (this.isEmitted[block] === 1) return;
    this.isEmitted[block] = 1;
    for (const first of this.order.blocksBefore[block]!) this.emit(first, into);
    for (let k = this.memberFrom[block]!; k < this.memberFrom[block + 1]!; k += 1) {
      into[this.emitted] = this.members[k]!;
      this.emitted += 1;
    }
  }
}
