/**
 * The time axis of the week strip: minutes where something happens are drawn to scale, the quiet stretches
 * between them are narrow bands of a fixed width. Positions are shares of the whole strip, 0 to 1.
 */
import type { Span } from '@/lib/plan';
import { MS_PER_MINUTE, type Instant } from '@/lib/units';

/** Width of a quiet band beside scaled time, in units of one scaled minute. */
const BAND_UNITS = 14;
/** Width of a day on which nothing happens. */
const QUIET_DAY_UNITS = 104;
/** A shorter pause between two scaled stretches stays to scale: a band would save nothing. */
const SHORTEST_BAND = 30;

export interface AxisSegment {
  readonly start: Instant;
  readonly end: Instant;
  /** Position in units from the left edge. */
  readonly from: number;
  readonly to: number;
  readonly isScaled: boolean;
}

export interface Axis {
  /** Touching, in order, covering every day given. */
  readonly segments: readonly AxisSegment[];
  /** Whole width in units. */
  readonly width: number;
}

/** Spans joined where they overlap or lie closer than the shortest band, in order. */
export function joinSpans(spans: readonly Span[], gapMinutes = SHORTEST_BAND): Span[] {
  const joined: Span[] = [];
  for (const span of spans.toSorted((a, b) => a.start - b.start)) {
    const last = joined.at(-1);
    if (last && span.start - last.end <= gapMinutes * MS_PER_MINUTE) {
      joined[joined.length - 1] = { start: last.start, end: span.end > last.end ? span.end : last.end };
    } else {
      joined.push({ start: span.start, end: span.end });
    }
  }
  return joined;
}

/** The part of a span inside another, or null where they do not meet. */
export function clipSpan(span: Span, within: Span): Span | null {
  const start = span.start > within.start ? span.start : within.start;
  const end = span.end < within.end ? span.end : within.end;
  return start < end ? { start, end } : null;
}

/** The axis of consecutive days, given as spans from midnight to midnight (23 or 25 hours at a clock change). */
export function buildAxis(days: readonly Span[], busy: readonly Span[]): Axis {
  const segments: AxisSegment[] = [];
  let x = 0;
  const push = (start: Instant, end: Instant, units: number, isScaled: boolean) => {
    segments.push({ start, end, from: x, to: x + units, isScaled });
    x += units;
  };
  for (const day of days) {
    const scaled = joinSpans(busy.flatMap((span) => clipSpan(span, day) ?? []));
    let at = day.start;
    for (const span of scaled) {
      if (span.start > at) push(at, span.start, BAND_UNITS, false);
      push(span.start, span.end, (span.end - span.start) / MS_PER_MINUTE, true);
      at = span.end;
    }
    if (at < day.end) push(at, day.end, scaled.length === 0 ? QUIET_DAY_UNITS : BAND_UNITS, false);
  }
  return { segments, width: x };
}

/** Where a moment stands on the axis, 0 to 1; moments outside it stand at the nearer edge. */
export function positionOf(axis: Axis, at: Instant): number {
  const segment = axis.segments.find((one) => at < one.end) ?? axis.segments.at(-1);
  if (!segment || axis.width === 0) return 0;
  const share = Math.min(1, Math.max(0, (at - segment.start) / (segment.end - segment.start)));
  return (segment.from + share * (segment.to - segment.from)) / axis.width;
}
