import { MS_PER_MINUTE, instant, type Instant } from '@/lib/units';

/** Turns moments into the engine's whole minutes and back. Minute 0 is the plan's origin. */
export interface EngineClock {
  readonly origin: Instant;
  /** First whole minute at or after the moment. */
  readonly up: (at: Instant) => number;
  /** Last whole minute at or before the moment. */
  readonly down: (at: Instant) => number;
  readonly moment: (minute: number) => Instant;
}

/** @example engineClock(origin).moment(90) // the moment an hour and a half after the origin */
export function engineClock(origin: Instant): EngineClock {
  return {
    origin,
    up: (at) => Math.ceil((at - origin) / MS_PER_MINUTE),
    down: (at) => Math.floor((at - origin) / MS_PER_MINUTE),
    moment: (minute) => instant(origin + minute * MS_PER_MINUTE),
  };
}
