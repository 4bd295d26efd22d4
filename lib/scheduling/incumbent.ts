import type { Decider } from './decider';
import type { Model } from './model';
import { TERMS } from './objective';
import { compareTerms, rate } from './score';

/** The best schedule so far, copied out of the working arrays. */
export class Incumbent {
  readonly terms = new Float64Array(TERMS).fill(Infinity);
  readonly status: Uint8Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly crew: Int32Array;
  readonly cause: Uint8Array;
  readonly causeAt: Int32Array;
  isSet = false;
  /** Changes whenever a better schedule is kept. */
  improvements = 0;
  private readonly latest = new Float64Array(TERMS);

  constructor(private readonly model: Model) {
    this.status = new Uint8Array(model.count);
    this.start = new Int32Array(model.count);
    this.end = new Int32Array(model.count);
    this.crew = new Int32Array(model.crew.from[model.count]!);
    this.cause = new Uint8Array(model.count);
    this.causeAt = new Int32Array(model.count);
  }

  /** Rates what was built and keeps it when it is the best; returns its terms, valid until the next call. */
  offer(built: Decider): Float64Array {
    rate(this.model, built.placer, this.latest);
    if (!this.isSet || compareTerms(this.latest, this.terms) < 0) {
      this.isSet = true;
      this.improvements += 1;
      this.terms.set(this.latest);
      this.status.set(built.placer.status);
      this.start.set(built.placer.start);
      this.end.set(built.placer.end);
      this.crew.set(built.placer.crew);
      this.cause.set(built.cause);
      this.causeAt.set(built.causeAt);
    }
    return this.latest;
  }
}
