/** A seeded stream of whole numbers (xorshift on 32 bits): the same on every machine. */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x85ebca6b) | 0;
    if (this.state === 0) this.state = 0x2545f491;
    for (let k = 0; k < 4; k++) this.bits();
  }

  /** 31 random bits. */
  bits(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x | 0;
    return x >>> 1;
  }

  /** A whole number in [0, limit), limit up to 2^21. */
  below(limit: number): number {
    return Math.floor((this.bits() * limit) / 0x80000000);
  }
}
