/** Entries of the log in words. */
import type { Camera, SeriesDocument } from '@/lib/build';
import { formatClock } from '@/lib/calendar';
import { framesPerDay, isTake, recordedSpan, sayClock, sayFormat, writeTimecode, type LogEntry, type LogKind, type TakeEntry, type TakeFacts } from '@/lib/continuity';
import type { Instant } from '@/lib/units';

export interface EntryView {
  readonly id: string;
  readonly kind: LogKind;
  /** `Take`, `State of a part`. */
  readonly kindWord: string;
  /** `18:42`. */
  readonly time: string;
  readonly isoAt: string;
  /** `Take 3 of Sparks: good`. */
  readonly title: string;
  readonly lines: readonly string[];
  readonly author: string;
  readonly device: string;
  readonly task: { readonly id: string; readonly name: string } | null;
  readonly photoIds: readonly string[];
  /** The words as typed, for a correction. */
  readonly text: string;
  readonly verdict: TakeFacts['verdict'] | null;
  /** Corrected before: how many earlier versions are kept. */
  readonly replaces: boolean;
}

const KIND_WORDS: Readonly<Record<LogKind, string>> = {
  take: 'Take', state: 'State of a part', look: 'Look', note: 'Note', fault: 'Fault', voice: 'Spoken line', departure: 'Departure from the manual', card: 'Card', waiver: 'Let pass',
};

const LOOK_WORDS = { clothes: 'clothes', equipment: 'protective equipment', light: 'light', whiteBalance: 'white balance', lens: 'lens', tools: 'tools' } as const;

function nameOf(records: readonly { readonly id: string; readonly name: string }[], id: string | null): string | null {
  return records.find((record) => record.id === id)?.name ?? null;
}

/** `01:00:00;00 – 01:00:10;02 at 29.97 drop-frame`, or nothing. */
function sayTimecode({ format, startFrame, endFrame }: TakeFacts): string | null {
  if (format === null || (startFrame === null && endFrame === null)) return null;
  const label = (frame: number | null) => (frame === null || frame < 0 || frame > framesPerDay(format) ? '?' : writeTimecode(frame % framesPerDay(format), format));
  return `${label(startFrame)} – ${label(endFrame)} at ${sayFormat(format)}`;
}

/** `18:42:06`. Offsets of zones are whole minutes. */
const formatSeconds = (at: Instant, zone: string): string => `${formatClock(at, zone)}:${String(Math.floor(at / 1000) % 60).padStart(2, '0')}`;

/** When it was recorded by the workshop's clock, where its timecode says so. */
function sayRecorded({ cameras, series }: SeriesDocument, entry: TakeEntry): string | null {
  const camera = cameras.find(({ id }) => id === entry.take.cameraId);
  const span = camera === undefined ? null : recordedSpan(entry, camera, series.zone);
  if (camera === undefined || span === null) return null;
  const clock = camera.clockOffset === 0 ? '' : `, its clock ${sayClock(camera.clockOffset)} put right`;
  return `recorded ${[span.start, span.end].flatMap((at) => (at === null ? [] : [formatSeconds(at, series.zone)])).join(' – ')}${clock}`;
}

function sayTake(document: SeriesDocument, entry: LogEntry): readonly string[] {
  if (!isTake(entry)) return [];
  const { take, shotId, taskId } = entry;
  const shot = nameOf(document.tasks.find(({ id }) => id === taskId)?.shots ?? [], shotId);
  const camera = nameOf(document.cameras, take.cameraId);
  return [
    shot === null ? null : `shot: ${shot}`, take.size === null ? null : `${take.size} picture`, camera === null ? null : `camera ${camera}`, take.media === '' ? null : take.media, sayTimecode(take), sayRecorded(document, entry),
    take.isReenacted ? (take.reenactmentLabel === '' ? 're-enacted, no label yet' : `re-enacted, labelled “${take.reenactmentLabel}”`) : null, take.isFailedAttempt ? 'a failed attempt that may be shown' : null,
  ].filter((line) => line !== null);
}

function sayObserved(document: SeriesDocument, { observed }: LogEntry): readonly string[] {
  return observed.map(({ partId, stateId, whereabouts }) => {
    const part = document.parts.find(({ id }) => id === partId);
    const where = whereabouts === null ? null : whereabouts.kind === 'trade' ? `away at ${nameOf(document.trades, whereabouts.id) ?? 'a trade'}` : (nameOf(document.places, whereabouts.id) ?? 'in store');
    return `${part?.name ?? 'A removed part'}: ${[stateId === null ? null : (nameOf(part?.states ?? [], stateId) ?? 'a removed state'), where].filter((word) => word !== null).join(', ')}`;
  });
}

/** Larger differences of a device's clock are told. */
const DEVICE_CLOCK_MS = 120_000;

function sayDeviceClock({ at, deviceAt }: LogEntry): readonly string[] {
  const off = deviceAt - at;
  return Math.abs(off) <= DEVICE_CLOCK_MS ? [] : [`the clock of the device was ${sayClock(off / 1000)}; the time is put right`];
}

function sayRest({ look, departure, card, waiver }: LogEntry): readonly string[] {
  const looks = look === null ? [] : (Object.keys(LOOK_WORDS) as (keyof typeof LOOK_WORDS)[]).flatMap((key) => (look[key] === '' ? [] : [`${LOOK_WORDS[key]}: ${look[key]}`]));
  return [
    ...looks,
    ...(departure === null ? [] : [`manual: ${departure.manualValue || 'not stated'}; own: ${departure.ownValue || 'not stated'}`, `reason: ${departure.reason || 'not stated'}`, `warning: ${departure.warning || 'not stated'}${departure.isSpoken ? ', spoken' : ''}${departure.isCaptioned ? ', captioned' : ''}`]),
    ...(card === null ? [] : [`card ${card.card}: ${card.what}`]), ...(waiver === null ? [] : [`check ${waiver.check}`]),
  ];
}

function titleOf(document: SeriesDocument, entry: LogEntry): string {
  const { take, text, kind } = entry;
  if (take !== null) return `Take ${take.number}: ${take.verdict}`;
  const [observed] = sayObserved(document, entry);
  if (kind === 'state' && observed !== undefined) return observed;
  return text === '' ? KIND_WORDS[kind] : (text.split('\n')[0] ?? '');
}

/** How the clock of a camera stands. */
export function sayCameraClock({ clockOffset }: Camera): string {
  return clockOffset === 0 ? 'its clock is taken to be right' : `its clock is ${sayClock(clockOffset)}, and its times are put right by that`;
}

/** One entry as the pages show it. */
export function describeEntry(document: SeriesDocument, entry: LogEntry, photoIds: readonly string[]): EntryView {
  const title = titleOf(document, entry);
  const task = document.tasks.find(({ id }) => id === entry.taskId);
  const lines = [...sayTake(document, entry), ...sayObserved(document, entry), ...sayRest(entry), ...sayDeviceClock(entry), ...entry.text.split('\n')];
  return {
    id: entry.id, kind: entry.kind, kindWord: KIND_WORDS[entry.kind], time: formatClock(entry.at, document.series.zone), isoAt: new Date(entry.at).toISOString(), title,
    lines: lines.filter((line) => line !== '' && line !== title), author: entry.author || 'nobody named', device: entry.device, task: task === undefined ? null : { id: task.id, name: task.name },
    photoIds, text: entry.text, verdict: entry.take?.verdict ?? null, replaces: entry.supersedes !== null,
  };
}
