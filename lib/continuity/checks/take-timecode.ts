import { dateOf, endOfDay, startOfDay } from '@/lib/calendar';
import { sayAt, type Facts } from '../facts';
import type { TakeEntry } from '@/lib/takes';
import { checkFormat, framesPerDay, sayFormat, writeTimecode } from '@/lib/takes';
import { makeCheck } from './check';

/** What is wrong with the timecode of one take, in words. */
function faultsOf(facts: Facts, { take }: TakeEntry): readonly string[] {
  if (take.format === null) return [];
  const { format, startFrame, endFrame } = take;
  if (checkFormat(format).length > 0) return [`there is no timecode at ${sayFormat(format)}`];
  const camera = facts.document.cameras.find(({ id }) => id === take.cameraId);
  const isOther = camera !== undefined && (camera.rate.numerator !== format.rate.numerator || camera.rate.denominator !== format.rate.denominator || camera.isDropFrame !== format.isDropFrame);
  const outside = [startFrame, endFrame].some((frame) => frame !== null && (frame < 0 || frame > framesPerDay(format)));
  return [
    ...(isOther ? [`it counts ${sayFormat(format)} and the camera “${camera.name}” ${sayFormat(camera)}`] : []),
    ...(outside ? ['a frame lies outside the 24 hours of a day'] : []),
    ...(startFrame !== null && endFrame !== null && endFrame <= startFrame ? ['it ends before it starts'] : []),
  ];
}

interface Ranged {
  readonly entry: TakeEntry;
  readonly start: number;
  readonly end: number;
}

/** Takes of one camera and day whose frames overlap. */
function findOverlaps(facts: Facts): readonly (readonly [Ranged, Ranged])[] {
  const groups = new Map<string, Ranged[]>();
  let [day, from, to] = ['', Infinity, -Infinity];
  for (const entry of facts.takes) {
    const { cameraId, startFrame, endFrame } = entry.take;
    if (cameraId === null || startFrame === null || endFrame === null || endFrame <= startFrame) continue;
    // Takes come by time, so that most of them lie on the day of the one before.
    if (entry.at < from || entry.at >= to) {
      day = dateOf(entry.at, facts.document.series.zone);
      [from, to] = [startOfDay(day, facts.document.series.zone), endOfDay(day, facts.document.series.zone)];
    }
    const key = `${cameraId} ${day}`;
    const group = groups.get(key) ?? [];
    group.push({ entry, start: startFrame, end: endFrame });
    groups.set(key, group);
  }
  return [...groups.values()].flatMap((group) => {
    const sorted = group.toSorted((a, b) => a.start - b.start);
    let furthest = sorted[0];
    return sorted.slice(1).flatMap((next) => {
      const before = furthest;
      if (before === undefined || next.end > before.end) furthest = next;
      return before !== undefined && before.end > next.start ? [[before, next] as const] : [];
    });
  });
}

/** 31: a take's timecode exists, fits its camera, runs forward and overlaps no other take of that camera. */
export const takeTimecode = makeCheck(31, 'stop', 'Every take has a timecode that exists, fits its camera and is its own', (facts) => {
  const taskOf = ({ taskId }: TakeEntry) => (taskId === null ? undefined : facts.tasks.get(taskId));
  const single = facts.takes.flatMap((entry) => faultsOf(facts, entry).map((fault) => ({
    key: `${entry.id}/${fault}`, about: [taskOf(entry)], message: `The timecode of take ${entry.take.number} of ${sayAt(facts, entry.at)} is wrong: ${fault}.`, fix: 'Read it from the clip and log the take again in its place.',
  })));
  const double = findOverlaps(facts).map(([before, next]) => {
    const label = next.entry.take.format === null ? '' : `, from ${writeTimecode(next.start, next.entry.take.format)}`;
    return {
      key: `${before.entry.id}+${next.entry.id}`, about: [taskOf(next.entry), taskOf(before.entry)],
      message: `Take ${next.entry.take.number} (${sayAt(facts, next.entry.at)}) and take ${before.entry.take.number} (${sayAt(facts, before.entry.at)}) overlap on one camera${label}.`,
      fix: 'Correct the timecode or the camera of one of them.',
    };
  });
  return [...single, ...double];
});
