/** What must be ready before a session can do its planned work. */
import { joinWords, type SeriesDocument, type Session, type Task } from '@/lib/build';
import { formatMoment, formatWorkLength } from '@/lib/calendar';
import { stepsSince } from '@/lib/climate';
import { cameraNeed, timeLapse } from '@/lib/episodes';
import { isFilmed, type PlanBlock, type Span } from '@/lib/plan';
import { MINUTES_PER_DAY, MS_PER_MINUTE, minutesBetween } from '@/lib/units';
import { nameOf } from './week-block';
import type { ReadyItem } from './week-model';
import { formatCount } from './week-words';
import type { Air } from './workshop-air';

interface Work {
  readonly block: PlanBlock;
  readonly piece: Span;
}

/** A part that comes back later than this before the work is a risk. */
const CLOSE_RETURN = MINUTES_PER_DAY;
/** Drying that ends earlier than this before the work needs no reminder. */
const RECENT_DRYING = 2 * MINUTES_PER_DAY;

function listReturns(work: readonly Work[], blocks: readonly PlanBlock[], document: SeriesDocument): ReadyItem[] {
  return document.outsideJobs.filter((job) => job.collectedAt === null).flatMap((job) => {
    const back = blocks.find((block) => block.kind === 'collection' && block.subject.id === job.id)
      ?? blocks.find((block) => block.kind === 'away' && block.subject.id === job.id);
    if (!back) return [];
    const needed = job.parts.map((use) => use.partId).filter((partId) =>
      work.some(({ block, piece }) => block.partIds.includes(partId) && back.end <= piece.start));
    const first = work.find(({ block }) => block.partIds.some((id) => needed.includes(id)));
    if (needed.length === 0 || !first) return [];
    const names = joinWords(needed.map((id) => nameOf(id, document.parts, 'part')));
    return [{
      kind: 'part' as const,
      text: `${names} back from ${nameOf(job.tradeId, document.trades, 'trade')} by ${formatMoment(back.end, document.series.zone)}`,
      isAtRisk: job.droppedOffAt === null || minutesBetween(back.end, first.piece.start) < CLOSE_RETURN,
      subject: { kind: 'outsideJob', id: job.id, name: job.name },
    }];
  });
}

function listDrying(work: readonly Work[], blocks: readonly PlanBlock[], document: SeriesDocument): ReadyItem[] {
  return blocks.filter((block) => block.kind === 'cure').flatMap((cure) => {
    const first = work.find(({ block, piece }) => block.subject.id !== cure.subject.id
      && block.partIds.some((id) => cure.partIds.includes(id)) && cure.end <= piece.start);
    if (!first || minutesBetween(cure.end, first.piece.start) > RECENT_DRYING) return [];
    const parts = joinWords(cure.partIds.map((id) => nameOf(id, document.parts, 'part')));
    return [{
      kind: 'drying' as const,
      text: `${parts} dry by ${formatMoment(cure.end, document.series.zone)} (${cure.title})`,
      isAtRisk: minutesBetween(cure.end, first.piece.start) < 120,
      subject: { kind: cure.subject.kind, id: cure.subject.id, name: cure.title },
    }];
  });
}

/** Small things on one line, so that the list stays short enough to be read. */
function listSmall(kind: 'equipment' | 'lay out', names: readonly string[]): ReadyItem[] {
  return names.length === 0 ? [] : [{ kind, text: names.join(', '), isAtRisk: false, subject: null }];
}

function listStores(tasks: readonly Task[], document: SeriesDocument): ReadyItem[] {
  const coats = new Map<string, number>();
  for (const task of tasks) for (const coat of task.coats) coats.set(coat.materialId, (coats.get(coat.materialId) ?? 0) + 1);
  const materials = [...coats].map(([id, count]): ReadyItem => {
    const name = nameOf(id, document.materials, 'material');
    return { kind: 'material', text: `${name}: ${formatCount(count, 'coat')}`, isAtRisk: false, subject: { kind: 'material', id, name } };
  });
  const equipment = [...new Set(tasks.flatMap((task) => task.equipmentIds))].map((id) => nameOf(id, document.equipment, 'piece of equipment'));
  const known = new Set(equipment.map((name) => name.toLowerCase()));
  const layOut = [...new Set(tasks.flatMap((task) => task.layOut))].filter((text) => !known.has(text.toLowerCase()));
  return [...materials, ...listSmall('equipment', equipment), ...listSmall('lay out', layOut)];
}

/** Minutes of a session's work with the camera out. */
export function countFilmedMinutes(work: readonly Work[], document: SeriesDocument): number {
  return work
    .filter(({ block }) => {
      const task = document.tasks.find((one) => one.id === block.subject.id);
      return block.kind === 'before-shot' || (block.kind === 'task' && task !== undefined && isFilmed(task));
    })
    .reduce((sum, { piece }) => sum + (piece.end - piece.start) / MS_PER_MINUTE, 0);
}

function listCamera(session: Session, work: readonly Work[], document: SeriesDocument): ReadyItem[] {
  const filmed = countFilmedMinutes(work, document);
  if (filmed === 0) return [];
  const { camera } = document.series;
  const need = cameraNeed(camera, filmed);
  const batteries = camera.batteries === 0 ? 'on mains' : `${need.batteries} of ${formatCount(camera.batteries, 'battery', 'batteries')}`;
  const kit = `${Math.ceil(need.gigabytes)} of ${Math.floor(need.space)} GB, ${batteries}`;
  return [{
    kind: 'camera',
    text: `Batteries charged and cards empty: ${formatWorkLength(filmed)} to be filmed. If ${camera.cameras === 1 ? 'the camera rolls' : `${camera.cameras} cameras roll`} throughout: ${kit}.${need.issues.map(({ fix }) => ` ${fix}`).join('')}`,
    isAtRisk: !session.isRecording || need.issues.length > 0,
    subject: { kind: 'session', id: session.id, name: session.name },
  }, ...listTimeLapses(work, document)];
}

/** Length of a time-lapse on screen, seconds. */
const CLIP = 10;

/** How often a camera that watches a whole task takes a frame. */
function listTimeLapses(work: readonly Work[], document: SeriesDocument): ReadyItem[] {
  const { numerator, denominator } = document.series.frameRate;
  return work.flatMap(({ block, piece }) => {
    const task = document.tasks.find((one) => one.id === block.subject.id);
    const isWatched = task !== undefined && (task.coverage === 'time-lapse' || task.shots.some((shot) => shot.purpose === 'time-lapse'));
    const lapse = isWatched && block.kind === 'task' ? timeLapse((piece.end - piece.start) / MS_PER_MINUTE, CLIP, numerator / denominator) : null;
    if (task === undefined || lapse === null || !lapse.ok) return [];
    const { interval, clip } = lapse.value;
    return [{
      kind: 'camera' as const,
      text: `Time-lapse of ${task.name}: a frame every ${interval} s makes a clip of ${Math.round(clip * 10) / 10} s; the camera stays where it is until the end`,
      isAtRisk: false,
      subject: { kind: 'task', id: task.id, name: task.name },
    }];
  });
}

interface Around {
  readonly blocks: readonly PlanBlock[];
  readonly document: SeriesDocument;
  readonly air: Air;
}

/** Coldest and warmest surface while a session lasts, in the airs of its tasks; null where the climate is not known by the hour. */
function surfacesIn(session: Session, tasks: readonly Task[], { document, air }: Around): { readonly low: number; readonly high: number } | null {
  if (air.hourly === null) return null;
  const zones = new Set(tasks.flatMap((task) => document.places.find(({ id }) => id === task.placeId)?.airZone ?? []));
  const held = [...zones].flatMap((zone) => {
    const climate = air.climateOf(zone);
    return [...climate.surface.subarray(Math.max(0, Math.floor(stepsSince(climate, session.start))), Math.ceil(stepsSince(climate, session.end)))];
  });
  return held.length === 0 ? null : { low: Math.min(...held), high: Math.max(...held) };
}

const whole = (value: number): number => Math.round(value);

function listHeating(session: Session, tasks: readonly Task[], around: Around): ReadyItem[] {
  const { document } = around;
  const floorOf = (materialId: string) => document.materials.find((one) => one.id === materialId)?.minimumTemperature ?? [];
  const warm = tasks.filter(({ conditions, coats }) => conditions.minimumTemperature !== null || coats.length > 0);
  const needs = warm.flatMap((task) => [task.conditions.minimumTemperature ?? [], ...task.coats.map((coat) => floorOf(coat.materialId))].flat());
  if (needs.length === 0) return [];
  const need = Math.max(...needs);
  const surfaces = surfacesIn(session, warm, around);
  const is = surfaces?.low ?? Math.max(session.heating ?? Number.NEGATIVE_INFINITY, document.series.workshopTemperature);
  const isAtRisk = is < need;
  const heating = session.heating === null ? '' : `, heating set to ${session.heating} °C`;
  const expected = surfaces === null
    ? (isAtRisk ? `: only ${is} °C is expected` : heating.replace(', ', ': '))
    : `: surfaces ${isAtRisk ? 'are only at' : 'at'} ${whole(surfaces.low)} to ${whole(surfaces.high)} °C by the weather${heating}`;
  return [{ kind: 'heating', text: `Workshop at ${need} °C or more${expected}`, isAtRisk, subject: { kind: 'session', id: session.id, name: session.name } }];
}

/** Everything a session's planned work needs to find in place, what may fail first. */
export function listReadyItems(session: Session, work: readonly Work[], around: Around): ReadyItem[] {
  const { blocks, document } = around;
  const ids = new Set(work.filter(({ block }) => block.kind === 'task').map(({ block }) => block.subject.id));
  const tasks = document.tasks.filter((task) => ids.has(task.id) && task.doneAt === null);
  return [
    ...listReturns(work, blocks, document),
    ...listDrying(work, blocks, document),
    ...listHeating(session, tasks, around),
    ...listCamera(session, work, document),
    ...listStores(tasks, document),
  ];
}
