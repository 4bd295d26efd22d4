/** Go or no-go of the next coating session, each reason with its number. */
import { isDone, deriveOrder, DEFAULT_WORKSHOP, findWork, type SeriesDocument, type Task } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import { climateAt } from '@/lib/climate';
import { cautionsOf, earliestGo, ignitingHours, judgeCoating, potWindow } from '@/lib/cure';
import { taskMinutes } from '@/lib/plan';
import { addMinutes, type Instant } from '@/lib/units';
import { plannedStart, type Waiting } from './waits-holds';
import type { GoView } from './waits-model';
import type { Air } from './workshop-air';

/** Sessions looked through for the earliest go. */
const MOST_SESSIONS = 40;

/** Unfinished coats whose forerunners are done, when nothing is planned. */
function isReady(document: SeriesDocument, task: Task): boolean {
  return deriveOrder(document).filter(({ to }) => to.kind === 'task' && to.id === task.id).every(({ from }) => {
    const work = findWork(document, from);
    return work === undefined || isDone(work);
  });
}

/** The next coat by the accepted plan, else the first that could be laid in the next session of its place. */
function findNext(waiting: Waiting): { readonly task: Task; readonly at: Instant } | null {
  const { document, now } = waiting;
  const open = document.tasks.filter((task) => task.doneAt === null && task.coats.length > 0);
  const planned = open.flatMap((task) => {
    const start = plannedStart(waiting, { kind: 'task', id: task.id });
    return start === null || start < now ? [] : [{ task, at: start }];
  }).toSorted((a, b) => a.at - b.at);
  if (planned[0] !== undefined) return planned[0];
  return open.filter((task) => isReady(document, task)).flatMap((task) => {
    const session = document.sessions.filter(({ end, placeIds }) => end > now && placeIds.includes(task.placeId)).toSorted((a, b) => a.start - b.start)[0];
    return session === undefined ? [] : [{ task, at: session.start > now ? session.start : now }];
  }).toSorted((a, b) => a.at - b.at)[0] ?? null;
}

/** When the dust raised in an air has settled: after the last dusty work done or planned before a moment. */
function settledAt(waiting: Waiting, airZone: string, before: Instant): Instant | null {
  const { document, plan } = waiting;
  const settles = (document.series.workshop ?? DEFAULT_WORKSHOP).dustSettles;
  const ends = document.tasks.filter((task) => task.isDusty && document.places.find(({ id }) => id === task.placeId)?.airZone === airZone).flatMap((task) => {
    const end = task.doneAt ?? plan?.result.blocks.find(({ id }) => id === `task:${task.id}`)?.end ?? null;
    return end === null || end > before ? [] : [end];
  });
  return ends.length === 0 ? null : addMinutes(ends.reduce((last, end) => (end > last ? end : last)), settles);
}

/** null: no coat is to be laid. */
export function judgeNext(waiting: Waiting, air: Air): GoView | null {
  const next = findNext(waiting);
  if (next === null) return null;
  const { document, now } = waiting;
  const { zone } = document.series;
  const { task, at } = next;
  const material = document.materials.find(({ id }) => id === task.coats[0]?.materialId);
  const airZone = document.places.find(({ id }) => id === task.placeId)?.airZone;
  if (material === undefined || airZone === undefined) return null;
  const coat = air.coatOf(airZone, material);
  const options = { length: taskMinutes(document, task), dustSettledAt: settledAt(waiting, airZone, at), zone, ignitingHours: ignitingHours(document, airZone) };
  const verdict = judgeCoating(coat, at, options);
  const sessions = document.sessions.filter(({ end, placeIds }) => end > now && placeIds.includes(task.placeId)).toSorted((a, b) => a.start - b.start)
    .slice(0, MOST_SESSIONS).map(({ start, end }) => ({ start: start > now ? start : now, end }));
  const earliest = earliestGo(coat, sessions, options);
  const warmth = climateAt(coat.climate, at)?.air ?? document.series.workshopTemperature;
  const pot = coat.material.potLife === null ? null : potWindow(coat.material.potLife, warmth);
  return {
    taskId: task.id, title: task.name, material: material.name, at: formatMoment(at, zone), isGo: verdict.isGo,
    checks: verdict.checks.map(({ message, isMet, severity }) => ({ message, isMet, isStop: severity === 'stop' })),
    earliest: earliest === null ? null : formatMoment(earliest.verdict.at, zone),
    potLife: pot === null ? null : `The pot is usable from ${formatLength(pot.usableFrom)} to ${formatLength(pot.usableUntil)} after mixing at ${Math.round(warmth)} °C.`,
    cautions: cautionsOf(coat.material),
  };
}
