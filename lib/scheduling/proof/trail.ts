/**
 * Bounds and their history. A variable x has two bounds: 2x holds its least value, 2x + 1 the negative of its
 * greatest, so that every bound only rises and the literal (b, v) means value[b] >= v. The negation of (b, v) is
 * (b ^ 1, 1 - v).
 */
export const BY_DECISION = 0;
export const BY_CLAUSE = 1;
export const BY_EDGE = 2;
/** The explanation lies in `stored`, from `data` on: its count, then pairs. */
export const BY_STORED = 3;

/** A longer copy with room for at least `size` items. */
export function grow(array: Int32Array, size: number): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(Math.max(size, array.length * 2, 64));
  copy.set(array);
  return copy;
}

export class Trail {
  readonly value: Int32Array;
  /** The newest entry of each bound. */
  readonly last: Int32Array;
  /** Entries: bound, value reached, older entry of the bound, level, and why. */
  bound: Int32Array;
  reached: Int32Array;
  older: Int32Array;
  level: Int32Array;
  kind: Int32Array;
  data: Int32Array;
  size: number;
  depth = 0;
  stored = new Int32Array(1024);
  storedSize = 0;
  /** The failed step: (bound, value) and its reason. */
  failedBound = -1;
  failedValue = 0;
  failedKind = 0;
  failedData = 0;
  private levelSize = new Int32Array(64);
  private levelStored = new Int32Array(64);

  constructor(least: Int32Array, greatest: Int32Array) {
    const bounds = least.length * 2;
    this.value = new Int32Array(bounds);
    this.last = new Int32Array(bounds);
    const room = bounds * 4 + 64;
    this.bound = new Int32Array(room);
    this.reached = new Int32Array(room);
    this.older = new Int32Array(room);
    this.level = new Int32Array(room);
    this.kind = new Int32Array(room);
    this.data = new Int32Array(room);
    for (let b = 0; b < bounds; b++) {
      const v = b & 1 ? -greatest[b >> 1]! : least[b >> 1]!;
      this.value[b] = v;
      this.last[b] = b;
      this.bound[b] = b;
      this.reached[b] = v;
      this.older[b] = -1;
    }
    this.size = bounds;
  }

  /** Raises a bound. False when that empties the variable's range; the failed step is then kept. */
  post(b: number, v: number, kind: number, data: number): boolean {
    const value = this.value;
    if (v <= value[b]!) return true;
    if (v + value[b ^ 1]! > 0) {
      this.failedBound = b;
      this.failedValue = v;
      this.failedKind = kind;
      this.failedData = data;
      return false;
    }
    const e = this.size;
    if (e === this.bound.length) this.makeRoom();
    this.bound[e] = b;
    this.reached[e] = v;
    this.older[e] = this.last[b]!;
    this.level[e] = this.depth;
    this.kind[e] = kind;
    this.data[e] = data;
    this.last[b] = e;
    value[b] = v;
    this.size = e + 1;
    return true;
  }

  /** Keeps `count` pairs for a later explanation; answers where they lie. */
  store(pairs: Int32Array, count: number): number {
    const at = this.storedSize;
    if (at + 1 + 2 * count > this.stored.length) this.stored = grow(this.stored, at + 1 + 2 * count);
    const stored = this.stored;
    stored[at] = count;
    for (let k = 0; k < 2 * count; k++) stored[at + 1 + k] = pairs[k]!;
    this.storedSize = at + 1 + 2 * count;
    return at;
  }

  openLevel(): void {
    const depth = ++this.depth;
    if (depth >= this.levelSize.length) {
      this.levelSize = grow(this.levelSize, depth + 1);
      this.levelStored = grow(this.levelStored, depth + 1);
    }
    this.levelSize[depth] = this.size;
    this.levelStored[depth] = this.storedSize;
  }

  /** Takes back every level above `depth`. */
  backTo(depth: number): void {
    if (depth >= this.depth) return;
    const { value, last, bound, older, reached } = this;
    const keep = this.levelSize[depth + 1]!;
    for (let e = this.size - 1; e >= keep; e--) {
      const b = bound[e]!;
      const before = older[e]!;
      last[b] = before;
      value[b] = reached[before]!;
    }
    this.size = keep;
    this.storedSize = this.levelStored[depth + 1]!;
    this.depth = depth;
  }

  /** The entry that first made (b, v) true; v must hold now. */
  entryOf(b: number, v: number): number {
    const { older, reached } = this;
    let e = this.last[b]!;
    for (;;) {
      const before = older[e]!;
      if (before < 0 || reached[before]! < v) return e;
      e = before;
    }
  }

  /** At level 0: forgets history so that the trail stays short. */
  forgetRoot(): void {
    const bounds = this.value.length;
    for (let b = 0; b < bounds; b++) {
      this.reached[b] = this.value[b]!;
      this.last[b] = b;
    }
    this.size = bounds;
    this.storedSize = 0;
  }

  private makeRoom(): void {
    const size = this.size + 1;
    this.bound = grow(this.bound, size);
    this.reached = grow(this.reached, size);
    this.older = grow(this.older, size);
    this.level = grow(this.level, size);
    this.kind = grow(this.kind, size);
    this.data = grow(this.data, size);
  }
}
