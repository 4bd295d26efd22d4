/** What a search does on its way, as numbers that differ when it takes another way. */
import { Constructor } from '@/lib/scheduling/construct';
import type { Decider } from '@/lib/scheduling/decider';
import { Incumbent } from '@/lib/scheduling/incumbent';
import { Placer } from '@/lib/scheduling/placer';

/** Hash of numbers and texts in their order (FNV-1a, 32 bits). */
export class Digest {
  private state = 0x811c9dc5;

  add(...values: readonly (number | string)[]): this {
    for (const value of values) {
      // Numbers and the texts of them are told apart.
      const text = typeof value === 'number' ? `${value} ` : `"${value}`;
      for (let k = 0; k < text.length; k += 1) this.state = Math.imul(this.state ^ text.charCodeAt(k), 0x01000193);
    }
    return this;
  }

  /** A whole number less than 2^31 in size. */
  addNumbers(values: ArrayLike<number>): this {
    for (let k = 0; k < values.length; k += 1) this.state = Math.imul(this.state ^ values[k]!, 0x01000193) ^ (this.state >>> 15);
    return this;
  }

  get text(): string {
    return (this.state >>> 0).toString(36);
  }
}

export const digestOf = (value: unknown): string => new Digest().add(JSON.stringify(value)).text;

export interface Trace {
  /** All schedules that were offered as the best, each with its dates, people, causes and what is left of the tries. */
  readonly schedules: string;
  /** Schedules built to the end, and those given up on the way. */
  readonly built: number;
  readonly cut: number;
  /** Each placing and taking out in its order. */
  readonly steps: string;
  /** Questions where an activity fits. */
  readonly looks: number;
}

/** Runs some search and writes down its way. Not to be nested. */
export function traceSearch<T>(run: () => T): { readonly result: T; readonly trace: Trace } {
  const schedules = new Digest();
  const steps = new Digest();
  const count = { built: 0, cut: 0, looks: 0 };
  const { offer } = Incumbent.prototype;
  const { rebuild } = Constructor.prototype;
  const { findStart, fits, place, remove, restore } = Placer.prototype;
  const noteSchedule = ({ cause, causeAt, placer, tries }: Decider) => {
    schedules.addNumbers(placer.status).addNumbers(placer.crew).addNumbers(cause).addNumbers([tries]);
    placer.status.forEach((status, i) => schedules.addNumbers(status === 1 ? [placer.start[i]!, placer.end[i]!] : [causeAt[i]!]));
  };
  Object.assign(Incumbent.prototype, {
    offer(this: Incumbent, built: Decider) {
      noteSchedule(built);
      return offer.call(this, built);
    },
  });
  Object.assign(Constructor.prototype, {
    rebuild(this: Constructor, ...args: Parameters<typeof rebuild>) {
      const isWhole = rebuild.apply(this, args);
      count[isWhole ? 'built' : 'cut'] += 1;
      return isWhole;
    },
  });
  Object.assign(Placer.prototype, {
    findStart(this: Placer, ...args: Parameters<typeof findStart>) {
      count.looks += 1;
      return findStart.apply(this, args);
    },
    fits(this: Placer, ...args: Parameters<typeof fits>) {
      count.looks += 1;
      return fits.apply(this, args);
    },
    place(this: Placer, ...args: Parameters<typeof place>) {
      steps.addNumbers(args);
      place.apply(this, args);
    },
    remove(this: Placer, activity: number) {
      steps.addNumbers([-1, activity]);
      remove.call(this, activity);
    },
    restore(this: Placer, ...args: Parameters<typeof restore>) {
      steps.addNumbers([-2, args[0], args[1]]);
      restore.apply(this, args);
    },
  });
  try {
    const result = run();
    return { result, trace: { schedules: schedules.text, steps: steps.text, ...count } };
  } finally {
    Object.assign(Incumbent.prototype, { offer });
    Object.assign(Constructor.prototype, { rebuild });
    Object.assign(Placer.prototype, { findStart, fits, place, remove, restore });
  }
}
