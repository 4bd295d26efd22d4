/** Entries of the log in words. */
import type { SeriesDocument } from '@/lib/build';
import { formatClock } from '@/lib/calendar';
import { sayFormat, writeTimecode, framesPerDay, type LogEntry, type LogKind, type TakeFacts } from '@/lib/continuity';

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

function sayTake(document: SeriesDocument, { take, shotId, taskId }: LogEntry): readonly string[] {
  if (take === null) return [];
  const shot = nameOf(document.tasks.find(({ id }) => id === taskId)?.shots ?? [], shotId);
  const camera = nameOf(document.cameras, take.cameraId);
  return [
    shot === null ? null : `shot: ${shot}`, take.size === null ? null : `${take.size} picture`, camera === null ? null : `camera ${camera}`, take.media === '' ? null : take.media, sayTimecode(take),
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

/** One entry as the pages show it. */
export function describeEntry(document: SeriesDocument, entry: LogEntry, photoIds: readonly string[]): EntryView {
  const title = titleOf(document, entry);
  const task = document.tasks.find(({ id }) => id === entry.taskId);
  const lines = [...sayTake(document, entry), ...sayObserved(document, entry), ...sayRest(entry), ...entry.text.split('\n')];
  return {
    id: entry.id, kind: entry.kind, kindWord: KIND_WORDS[entry.kind], time: formatClock(entry.at, document.series.zone), isoAt: new Date(entry.at).toISOString(), title,
    lines: lines.filter((line) => line !== '' && line !== title), author: entry.author || 'nobody named', device: entry.device, task: task === undefined ? null : { id: task.id, name: task.name },
    photoIds, text: entry.text, verdict: entry.take?.verdict ?? null, replaces: entry.supersedes !== null,
  };
}
