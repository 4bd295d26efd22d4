/** Where two sources say different things about a part at the same time. */
import type { SeriesDocument } from '@/lib/build';
import type { Instant } from '@/lib/units';
import type { StateLine, StatePoint } from './state-line';

/** Work is ticked off when it ends, and what it makes may be seen a while before: minutes of grace. */
const TICKED_LATER_MS = 12 * 3_600_000;

export interface Disagreement {
  readonly partId: string;
  readonly at: Instant;
  readonly about: 'state' | 'whereabouts';
  /** What somebody saw. */
  readonly seen: StatePoint;
  /** What work done, or the plan, says. */
  readonly said: StatePoint;
}

function isWork({ source, isPlanned }: StatePoint): boolean {
  return source.kind !== 'log' && !isPlanned;
}

/** States that the records allow at a moment: the one reached, and one that is ticked off within hours. */
function checkState(line: StateLine, seen: StatePoint): readonly Disagreement[] {
  const works = line.points.filter((point) => isWork(point) && point.stateId !== null);
  const said = works.findLast(({ at }) => at <= seen.at);
  const next = works.find(({ at }) => at > seen.at && at - seen.at <= TICKED_LATER_MS);
  // A state that the log has seen after the last work, and that nothing has changed since, stands.
  const seenBefore = line.points.findLast((point) => point.source.kind === 'log' && point.stateId !== null && point.at < seen.at && point.at >= (said?.at ?? seen.at));
  if (said === undefined || said.stateId === seen.stateId || next?.stateId === seen.stateId || seenBefore?.stateId === seen.stateId) return [];
  return [{ partId: line.partId, at: seen.at, about: 'state', seen, said }];
}

function checkWhereabouts(line: StateLine, seen: StatePoint): readonly Disagreement[] {
  const said = line.points.findLast((point) => isWork(point) && point.whereabouts !== null && point.at <= seen.at);
  if (said?.whereabouts == null || seen.whereabouts === null) return [];
  const isAway = said.whereabouts.kind === 'trade';
  if (isAway === (seen.whereabouts.kind === 'trade')) return [];
  return [{ partId: line.partId, at: seen.at, about: 'whereabouts', seen, said }];
}

/** A planned change of state whose time is over, while the part was never seen in it. */
function checkPlan(line: StateLine, now: Instant): readonly Disagreement[] {
  const seen = line.points.findLast((point) => !point.isPlanned && point.stateId !== null);
  if (seen === undefined) return [];
  return line.points.filter((point) => point.isPlanned && point.stateId !== null && point.at <= now && point.stateId !== seen.stateId)
    .map((said) => ({ partId: line.partId, at: said.at, about: 'state' as const, seen, said }));
}

/** All of them, part by part in the order of the series, by time. */
export function findDisagreements(document: SeriesDocument, lines: readonly StateLine[], now: Instant): readonly Disagreement[] {
  const known = new Set(document.parts.map(({ id }) => id));
  return lines.filter(({ partId }) => known.has(partId)).flatMap((line) => {
    const seen = line.points.filter(({ source }) => source.kind === 'log');
    const found = seen.flatMap((point) => [...(point.stateId === null ? [] : checkState(line, point)), ...checkWhereabouts(line, point)]);
    return [...found, ...checkPlan(line, now)].toSorted((a, b) => a.at - b.at);
  });
}
