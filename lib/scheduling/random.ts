/** A small seeded generator (32-bit integers only): the same seed gives the same numbers on any machine. */
export class Random {
  private state: number;

  constructor(seed: number) {
    // Spread neighbouring seeds apart; zero would be a fixed point of the shifts below.
    this.state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x6a09e667) | 0;
    if (this.state === 0) this.state = 1;
    for (let i = 0; i < 4; i += 1) this.next();
  }

  /** A whole number from 0 to 2^32 - 1 (xorshift, Marsaglia 2003). */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x >>> 0;
  }

  /** A whole number from 0 to `limit` - 1; `limit` >= 1. */
  below(limit: number): number {
    return this.next() % limit;
  }
}
