/** How messages name records, counts and moments. */
import { formatLength, formatMoment, formatWorkLength, isZone } from '@/lib/calendar';
import type { Subject } from '@/lib/result';
import type { Instant } from '@/lib/units';
import type { Part, SeriesDocument, SeriesRecord } from './model';
import { kindLabel } from './records';

const LONGEST_NAME_SHOWN = 60;
const MOST_NAMES = 5;

/** A name between quotation marks, cut when it is very long. */
export function quoteName(name: string): string {
  const plain = name.replace(/\s+/gu, ' ').trim();
  if (plain === '') return '(no name)';
  return `“${plain.length > LONGEST_NAME_SHOWN ? `${plain.slice(0, LONGEST_NAME_SHOWN)}…` : plain}”`;
}

/** @example sayRecord(task) // 'task “Strip the frame”' */
export function sayRecord(record: SeriesRecord): string {
  return `${kindLabel(record.kind)} ${quoteName(record.name)}`;
}

/** The start of a sentence. @example startWith(task) // 'The task “Strip the frame”' */
export function startWith(record: SeriesRecord): string {
  return `The ${sayRecord(record)}`;
}

/** Names up to five, then how many more. @example listNames(['a', 'b']) // '“a” and “b”' */
export function listNames(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMES).map(quoteName);
  const more = names.length - shown.length;
  const all = more > 0 ? [...shown, `${more} more`] : shown;
  return joinWords(all);
}

/** @example joinWords(['a', 'b', 'c']) // 'a, b and c' */
export function joinWords(words: readonly string[], joint: 'and' | 'or' = 'and'): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)!}`;
}

/** @example count(3, 'task') // '3 tasks' */
export function count(amount: number, one: string, many = `${one}s`): string {
  return `${formatNumber(amount)} ${amount === 1 ? one : many}`;
}

/** With commas between thousands, the same on every machine. @example formatNumber(10000) // '10,000' */
export function formatNumber(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  const [whole = '', fraction] = String(Math.abs(Math.round(value * 1000) / 1000)).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/gu, ',');
  return `${value < 0 ? '-' : ''}${grouped}${fraction === undefined ? '' : `.${fraction}`}`;
}

/** A record as the subject of an issue. */
export function subjectOf(record: SeriesRecord): Subject {
  return { kind: record.kind, id: record.id, name: record.name };
}

/** The record at fault first: its `path` is the issue's. */
export function subjectsOf(...records: readonly (SeriesRecord | undefined)[]): readonly Subject[] {
  return records.filter((record) => record !== undefined).map(subjectOf);
}

/** Moments outside these are a slip; they are written as plain numbers rather than as dates. */
const [EARLIEST, LATEST] = [Date.UTC(1900, 0, 3), Date.UTC(2999, 11, 29)];

/** A moment in the zone of the series; in UTC, and saying so, while that zone is unknown. */
export function sayMoment(document: SeriesDocument, at: Instant): string {
  const { zone } = document.series;
  if (!(at >= EARLIEST && at <= LATEST)) return `moment ${formatNumber(at)}`;
  return isZone(zone) ? formatMoment(at, zone) : `${formatMoment(at, 'UTC')} UTC`;
}

/** Elapsed minutes in words, whatever they are: rules speak about numbers that make no sense too. */
export function sayLength(length: number): string {
  return Number.isFinite(length) ? formatLength(length) : `${formatNumber(length)} min`;
}

/** Worked minutes in words, never in days, whatever they are. */
export function sayWork(length: number): string {
  return Number.isFinite(length) ? formatWorkLength(length) : `${formatNumber(length)} min`;
}

/** The name of a part's state, or its id when the part has no such state. */
export function stateName(part: Part | undefined, stateId: string): string {
  return part?.states.find((state) => state.id === stateId)?.name ?? stateId;
}
