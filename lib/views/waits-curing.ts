/** Coats that are on: their stages on a bar, what they hold up, and what goes wrong. */
import { startWith } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import { endOfClimate } from '@/lib/climate';
import type { CoatFault, LateWork } from '@/lib/cure';
import { lateWorkActivity } from '@/lib/plan';
import { issue, type Issue } from '@/lib/result';
import { minutesBetween, MINUTES_PER_DAY, type Instant } from '@/lib/units';
import { listHeld, type Waiting } from './waits-holds';
import type { CuringCoat, StageMark } from './waits-model';
import type { LaidCoat } from './workshop-air';

/** A window that closes this soon is told of. */
const SOON_DAYS = 4;

const WORDS: Readonly<Record<StageMark['stage'], string>> = {
  flashOff: 'flash-off', touchDry: 'touch dry', recoatFrom: 'recoat window opens', recoatUntil: 'recoat window closes', handle: 'fit to handle', fullCure: 'fully cured',
};

const degrees = (value: number): string => `${(Math.round(value * 10) / 10).toFixed(1)} °C`;

function sayFault(fault: CoatFault, name: string, zone: string): Issue {
  const from = formatMoment(fault.from, zone);
  if (fault.kind === 'paused') {
    return issue('coat-paused', `${name} stands still for ${formatLength(fault.minutes)} from ${from}: the surface is at ${degrees(fault.temperature)}, and it cures only above ${degrees(fault.limit)}.`, 'Heat it, or wait: it goes on in the warmth.', { severity: 'warn' });
  }
  if (fault.kind === 'never forms') {
    return issue('coat-spoilt', `${name} never forms its film: the surface falls to ${degrees(fault.temperature)} on ${from}, under ${degrees(fault.limit)}, before it is touch dry.`, 'Keep it warm until it is touch dry, or strip it and lay it again.');
  }
  const why = { cold: 'the cold', dew: 'dew', humidity: 'damp air' }[fault.why];
  const unit = fault.why === 'cold' ? '°C' : fault.why === 'dew' ? 'K above the dew point' : '% humidity';
  return issue('coat-surface-fault', `${name} gets a fault on its surface from ${why} on ${from}: ${fault.value.toFixed(1)} ${unit}, the limit is ${fault.limit} ${unit}.`, 'Clean it before the next coat, and abrade where it stays dull.', { severity: 'warn' });
}

/** The next coat on top of one, when the window of the first matters. */
interface NextCoat {
  readonly next: ReturnType<typeof listHeld>[number];
  readonly closes: Instant;
}

/** The next coat that waits for a coat, and when the window between the two closes; null where none follows or the window does not close. */
export function findNextCoat(waiting: Waiting, { forecast, task }: LaidCoat): NextCoat | null {
  const { document } = waiting;
  const next = listHeld(waiting, { kind: 'task', id: task.id }).find(({ ref, id }) => ref.kind === 'task' && (document.tasks.find((one) => one.id === id)?.coats.length ?? 0) > 0);
  return next === undefined || forecast.recoatUntil === null ? null : { next, closes: forecast.recoatUntil };
}

const LATE: Readonly<Record<LateWork, string>> = {
  none: 'Put the next coat on all the same.', abrade: 'Abrade before the next coat.', 'clean and tack coat': 'Clean it and lay a tack coat first.', strip: 'Strip it.',
};

const LATE_WORK: Readonly<Record<LateWork, string>> = { none: 'nothing', abrade: 'the abrading', 'clean and tack coat': 'the cleaning and the tack coat', strip: 'the stripping and another coat' };

/** A recoat window that is closed, empty, missed by the plan, or closes soon. */
export function listWindowAlarms(waiting: Waiting, laid: LaidCoat): readonly Issue[] {
  const { now, document } = waiting;
  const { forecast, material, coat } = laid;
  const { zone } = document.series;
  const found = findNextCoat(waiting, laid);
  if (found === null) return [];
  const { next, closes } = found;
  const work = waiting.plan?.result.blocks.find(({ id }) => id === lateWorkActivity(next.id));
  const late = work === undefined ? LATE[coat.material.lateWork] : `The plan has ${LATE_WORK[coat.material.lateWork]} on ${formatMoment(work.start, zone)}.`;
  const subjects = [{ kind: 'task', id: next.id, name: next.name }];
  if (closes <= now) return [issue('window-closed', `The recoat window of ${material.name} closed on ${formatMoment(closes, zone)}, and “${next.name}” is not done.`, late, { subjects, severity: work === undefined ? 'stop' : 'warn' })];
  if (forecast.isWindowEmpty) return [issue('window-empty', `${startWith(material)} has no recoat window in this cold: it closes on ${formatMoment(closes, zone)}, before it opens.`, `Heat it. Otherwise: ${late}`, { subjects })];
  if (work === undefined && next.start !== null && next.start > closes) return [issue('window-missed-by-plan', `“${next.name}” is planned for ${next.planned}, after the recoat window of ${material.name} closes on ${formatMoment(closes, zone)}.`, 'Re-plan, or put a session before that.', { subjects })];
  if (minutesBetween(now, closes) > SOON_DAYS * MINUTES_PER_DAY) return [];
  return [issue('window-closes', `The recoat window of ${material.name} closes on ${formatMoment(closes, zone)}, in ${formatLength(minutesBetween(now, closes))}.`, `Do “${next.name}” before. Later: ${late}`, { severity: 'warn', subjects })];
}

const LATE_BUTTON: Readonly<Record<Exclude<LateWork, 'none'>, string>> = { abrade: 'Plan the abrading', 'clean and tack coat': 'Plan the cleaning and the tack coat', strip: 'Plan to strip it and lay it again' };

/** What can be planned for a missed window: only where the next coat follows by the state of a part. */
function offerLateWork(waiting: Waiting, laid: LaidCoat, alarms: readonly Issue[]): CuringCoat['late'] {
  const { lateWork } = laid.coat.material;
  const found = findNextCoat(waiting, laid);
  const isPlanned = waiting.plan?.result.blocks.some(({ id }) => found !== null && id === lateWorkActivity(found.next.id)) ?? false;
  const isMissed = alarms.some(({ code }) => code === 'window-closed' || code === 'window-empty' || code === 'window-missed-by-plan');
  const next = waiting.document.tasks.find(({ id }) => id === found?.next.id);
  const follows = next?.parts.some(({ partId, from, to }) => to !== null && laid.task.parts.some((made) => made.partId === partId && made.to !== null && made.to === from)) ?? false;
  return next === undefined || !isMissed || !follows || lateWork === 'none' ? null : { coatTaskId: laid.task.id, nextTaskId: next.id, word: isPlanned ? `Keep ${LATE_WORK[lateWork]} as a task` : LATE_BUTTON[lateWork], isPlanned };
}

function markStages(laid: LaidCoat, end: Instant, now: Instant, zone: string): readonly StageMark[] {
  const { forecast, laidAt } = laid;
  const { flashOff, touchDry, recoatFrom, handle, fullCure } = forecast.reached;
  const marks: readonly (readonly [StageMark['stage'], Instant | null])[] = [
    ['flashOff', flashOff], ['touchDry', touchDry], ['recoatFrom', recoatFrom], ['recoatUntil', forecast.recoatUntil], ['handle', handle], ['fullCure', fullCure],
  ];
  return marks.filter(([stage, at]) => stage !== 'recoatUntil' || at !== null).filter(([stage, at]) => stage !== 'flashOff' || at === null || at > laidAt).map(([stage, at]) => ({
    stage, word: WORDS[stage], moment: at === null ? null : formatMoment(at, zone), isReached: at !== null && at <= now,
    at: at === null ? 1 : Math.min(1, (at - laidAt) / Math.max(1, end - laidAt)),
  }));
}

function showCoat(waiting: Waiting, laid: LaidCoat): CuringCoat {
  const { document, now } = waiting;
  const { zone } = document.series;
  const { forecast, laidAt, material, task, coat } = laid;
  const { touchDry, recoatFrom, handle, fullCure } = forecast.reached;
  const windows = listWindowAlarms(waiting, laid);
  const end = fullCure ?? handle ?? endOfClimate(coat.climate);
  const place = (at: Instant): number => Math.min(1, Math.max(0, (at - laidAt) / Math.max(1, end - laidAt)));
  const parts = [...new Set(task.parts.map(({ partId }) => document.parts.find((part) => part.id === partId)?.name ?? 'a removed part'))].join(', ');
  return {
    key: laid.key, taskId: task.id, title: parts === '' ? task.name : parts, material: material.name, materialId: material.id, laid: formatMoment(laidAt, zone),
    touchable: touchDry === null ? 'not in the time that is known' : formatMoment(touchDry, zone), isTouchable: touchDry !== null && touchDry <= now,
    stages: markStages(laid, end, now, zone), now: place(now),
    window: recoatFrom === null || forecast.isWindowEmpty ? null : { from: place(recoatFrom), to: forecast.recoatUntil === null ? 1 : place(forecast.recoatUntil) },
    holds: listHeld(waiting, { kind: 'task', id: task.id }).map(({ kind, id, name, planned }) => ({ kind, id, name, planned })),
    late: offerLateWork(waiting, laid, windows),
    alarms: [...windows, ...forecast.faults.map((fault) => sayFault(fault, material.name, zone))],
  };
}

/** Coats that are laid and not fully cured, or cured while the next one is still owed after a closed window; the latest last. */
export function listCuring(waiting: Waiting, coats: readonly LaidCoat[]): readonly CuringCoat[] {
  const isOpen = (laid: LaidCoat): boolean =>
    laid.isLaid && (laid.forecast.reached.fullCure === null || laid.forecast.reached.fullCure > waiting.now || listWindowAlarms(waiting, laid).length > 0);
  return coats.filter(isOpen).map((laid) => showCoat(waiting, laid));
}
