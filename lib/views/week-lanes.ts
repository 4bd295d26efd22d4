/** Puts spans that overlap one above the other. */
import type { Instant } from '@/lib/units';

interface Laid {
  readonly start: Instant;
  readonly end: Instant;
}

/** Each span with the first lane that is free when it starts; as many lanes as overlap at once, no more. */
export function assignLanes<T extends Laid>(spans: readonly T[]): { readonly laid: readonly (T & { lane: number })[]; readonly lanes: number } {
  const freeFrom: number[] = [];
  const laid = spans
    .toSorted((a, b) => a.start - b.start || b.end - a.end)
    .map((span) => {
      const free = freeFrom.findIndex((end) => end <= span.start);
      const lane = free === -1 ? freeFrom.length : free;
      freeFrom[lane] = span.end;
      return { ...span, lane };
    });
  return { laid, lanes: freeFrom.length };
}
