import { array, assert, integer, property, tuple } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instant } from '@/lib/units';
import { buildAxis, clipSpan, joinSpans, positionOf } from '@/lib/views/week-axis';
import { assignLanes } from '@/lib/views/week-lanes';

const MINUTE = 60_000;
const DAY = 1440 * MINUTE;
const days = Array.from({ length: 7 }, (_, day) => ({ start: instant(day * DAY), end: instant((day + 1) * DAY) }));
const spans = array(
  tuple(integer({ min: 0, max: 7 * 1440 - 2 }), integer({ min: 1, max: 600 })).map(([from, length]) => ({
    start: instant(from * MINUTE), end: instant(Math.min(7 * 1440, from + length) * MINUTE),
  })),
  { maxLength: 12 },
);

describe('the axis of a week', () => {
  it('covers all days without a hole and never runs backwards', () => {
    assert(property(spans, integer({ min: 0, max: 7 * 1440 }), integer({ min: 0, max: 7 * 1440 }), (busy, a, b) => {
      const axis = buildAxis(days, busy);
      expect(axis.segments[0]?.start).toBe(0);
      expect(axis.segments.at(-1)?.end).toBe(7 * DAY);
      axis.segments.forEach((segment, index) => expect(segment.end).toBe(axis.segments[index + 1]?.start ?? 7 * DAY));
      const [early, late] = [Math.min(a, b), Math.max(a, b)];
      expect(positionOf(axis, instant(early * MINUTE))).toBeLessThanOrEqual(positionOf(axis, instant(late * MINUTE)) + 1e-12);
    }));
  });

  it('draws every busy minute to scale', () => {
    assert(property(spans, (busy) => {
      const axis = buildAxis(days, busy);
      for (const span of busy) {
        for (const piece of days.flatMap((day) => clipSpan(span, day) ?? [])) {
          const width = (positionOf(axis, piece.end) - positionOf(axis, piece.start)) * axis.width;
          expect(width).toBeCloseTo((piece.end - piece.start) / MINUTE, 6);
        }
      }
    }));
  });

  it('joins spans into sorted ones that lie apart', () => {
    assert(property(spans, (busy) => {
      const joined = joinSpans(busy, 0);
      joined.slice(1).forEach((span, index) => expect(span.start).toBeGreaterThan(joined[index]?.end ?? 0));
    }));
  });
});

describe('lanes', () => {
  it('hold no two spans that overlap, and are as few as overlap at once', () => {
    assert(property(spans, (list) => {
      const { laid, lanes } = assignLanes(list);
      for (const a of laid) for (const b of laid) if (a !== b && a.lane === b.lane) expect(a.end <= b.start || b.end <= a.start).toBe(true);
      const most = Math.max(0, ...list.map((span) => list.filter((other) => other.start <= span.start && span.start < other.end).length));
      expect(lanes).toBe(most);
    }));
  });
});
