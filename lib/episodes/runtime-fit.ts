/** Which segments to take out or bring in, so that an episode keeps to its runtime. */

export interface FittingSegment {
  readonly id: string;
  /** Minutes on screen. */
  readonly length: number;
}

export interface RuntimeBounds {
  readonly min: number;
  readonly target: number;
  readonly max: number;
}

/** Segments whose going or coming brings the runtime inside its bounds, and the runtime that this gives. */
export interface RuntimeFit {
  readonly kind: 'take out' | 'bring in';
  readonly segmentIds: readonly string[];
  readonly minutes: number;
}

const MOST_TOGETHER = 2;
const MOST_ANSWERS = 3;
const ROUNDING = 1e-9;

function listSets(segments: readonly FittingSegment[]): readonly (readonly FittingSegment[])[] {
  const pairs = segments.flatMap((one, index) => segments.slice(index + 1).map((other) => [one, other]));
  return [...segments.map((one) => [one]), ...pairs].filter((set) => set.length <= MOST_TOGETHER);
}

/**
 * Up to three answers to a runtime outside its bounds: the fewest segments first, then those that come closest to the wish. `own` are
 * the segments in the episode, `others` those that could come in. Empty when the runtime fits, or no one or two segments mend it.
 */
export function fitRuntime(minutes: number, { min, target, max }: RuntimeBounds, own: readonly FittingSegment[], others: readonly FittingSegment[]): readonly RuntimeFit[] {
  const isOver = minutes > max + ROUNDING;
  if (!isOver && minutes >= min - ROUNDING) return [];
  const sets = isOver ? listSets(own).filter((set) => set.length < own.length) : listSets(others);
  return sets.map((set): RuntimeFit => ({
    kind: isOver ? 'take out' : 'bring in', segmentIds: set.map(({ id }) => id),
    minutes: set.reduce((sum, { length }) => sum + (isOver ? -length : length), minutes),
  })).filter((fit) => fit.minutes >= min - ROUNDING && fit.minutes <= max + ROUNDING)
    .toSorted((a, b) => a.segmentIds.length - b.segmentIds.length || Math.abs(a.minutes - target) - Math.abs(b.minutes - target))
    .slice(0, MOST_ANSWERS);
}
