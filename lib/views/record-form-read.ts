/** From what was typed in a form to the input of a command. Reads texts; whether they make sense the commands decide. */
import { isCivilDate, parseWallTime } from '@/lib/calendar';
import type { RecordKind } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { bareField, keyOf, listIn } from './record-form-draft';
import { parseLength } from './record-form-length';
import type { ChoiceSpec, FieldSpec, LeafSpec, ListSpec } from './record-form-model';
import { listFields } from './record-form-specs';

type Path = readonly (string | number)[];

interface Reading {
  readonly issues: Issue[];
}

const LONGEST_SHOWN = 40;

const asText = (draft: unknown): string => (typeof draft === 'string' ? draft.trim() : '');

const quote = (text: string): string => `“${text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text}”`;

/** What stands in for a value that could not be read; the command is not called then. */
const UNREAD = null;

function refuse(reading: Reading, path: Path, what: { code: string; message: string; fix: string }): typeof UNREAD {
  reading.issues.push(issue(what.code, what.message, what.fix, { path }));
  return UNREAD;
}

function readNumber(field: { label: string; isOptional?: boolean | undefined }, unit: string, draft: unknown, path: Path, reading: Reading): number | null {
  const text = asText(draft);
  if (text === '') {
    if (field.isOptional) return null;
    return refuse(reading, path, { code: 'number-missing', message: `${field.label} is empty.`, fix: `Type a number of ${unit}.` });
  }
  const value = Number(text.replace(',', '.'));
  if (Number.isFinite(value)) return value;
  return refuse(reading, path, { code: 'number-shape', message: `${field.label}: ${quote(text)} is not a number.`, fix: `Type digits only, in ${unit}.` });
}

function readLength(field: { label: string; isOptional?: boolean | undefined }, draft: unknown, path: Path, reading: Reading): number | null {
  const text = asText(draft);
  if (text === '') {
    if (field.isOptional) return null;
    return refuse(reading, path, { code: 'length-missing', message: `${field.label} is empty.`, fix: 'Type a length such as 1 h 30 or 45 min.' });
  }
  const value = parseLength(text);
  if (value !== null) return value;
  return refuse(reading, path, {
    code: 'length-shape', message: `${field.label}: ${quote(text)} is not a length of time.`, fix: 'Type hours and minutes like 1 h 30, 1:30 or 90, or days like 2 d.',
  });
}

/** `1830`, `18.30` and `8:15` are forgiven. */
function tidyTime(text: string): string {
  const match = /^(\d{1,2})[:.h ]?(\d{2})$/i.exec(text);
  return match ? `${(match[1] ?? '').padStart(2, '0')}:${match[2]}` : text;
}

function readTime(label: string, draft: unknown, path: Path, reading: Reading, as: 'start' | 'end' = 'end'): string {
  const time = parseWallTime(tidyTime(asText(draft)), as);
  if (time.ok) return time.value;
  const isEmpty = asText(draft) === '';
  for (const found of time.error) {
    reading.issues.push({ ...found, path, message: isEmpty ? `${label}: the time is empty.` : `${label}: ${found.message}` });
  }
  return '';
}

function readDate(field: { label: string; isOptional?: boolean | undefined }, draft: unknown, path: Path, reading: Reading): string | null {
  const text = asText(draft);
  if (text === '' && field.isOptional) return null;
  if (isCivilDate(text)) return text;
  const message = text === '' ? `${field.label}: the date is empty.` : `${field.label}: ${quote(text)} is not a date.`;
  return refuse(reading, path, { code: 'date-shape', message, fix: 'Choose a day, or type it like 2026-12-01.' });
}

/** A moment nobody has touched stays the instant it was; another goes on as local date and time. */
function readMoment(field: LeafSpec, draft: unknown, path: Path, reading: Reading): string | number | null {
  const untouched = asText(keyOf(draft, 'at'));
  if (untouched !== '') return Number(untouched);
  const dateText = asText(keyOf(draft, 'date'));
  const timeText = asText(keyOf(draft, 'time'));
  if (dateText === '' && timeText === '' && field.isOptional) return null;
  const before = reading.issues.length;
  const date = readDate({ label: field.label }, dateText, path, reading);
  const time = readTime(field.label, timeText, path, reading, 'start');
  return reading.issues.length > before || date === null ? UNREAD : `${date}T${time}`;
}

function readChoice(field: ChoiceSpec, draft: unknown, path: Path, reading: Reading): unknown {
  const text = asText(draft);
  if (text === '') {
    if (field.none !== undefined) return null;
    return refuse(reading, path, { code: 'choice-missing', message: `${field.label}: nothing is chosen.`, fix: 'Choose one.' });
  }
  if (field.codec === 'number') return Number(text);
  if (field.codec === 'ratio') {
    const [numerator, denominator] = text.split('/').map(Number);
    return { numerator, denominator };
  }
  if (field.codec === 'reference') {
    const colon = text.indexOf(':');
    return { kind: text.slice(0, colon), id: text.slice(colon + 1) || null };
  }
  return text;
}

function readLeaf(field: LeafSpec, draft: unknown, path: Path, reading: Reading): unknown {
  switch (field.type) {
    case 'text':
      return field.isNullable && asText(draft) === '' ? null : asText(draft);
    case 'number': {
      const value = readNumber(field, field.unit, draft, path, reading);
      return value === null || field.scale === undefined ? value : value / field.scale;
    }
    case 'length':
      return readLength(field, draft, path, reading);
    case 'choice':
      return readChoice(field, draft, path, reading);
    case 'choices':
      return listIn(draft).map((item) => (field.isNumeric ? Number(asText(item)) : asText(item)));
    case 'check':
      return draft === true;
    case 'date':
      return readDate(field, draft, path, reading);
    case 'time':
      return readTime(field.label, draft, path, reading);
    case 'moment':
      return readMoment(field, draft, path, reading);
    case 'threePoint':
      return Object.fromEntries(
        (['low', 'likely', 'high'] as const).map((point) => {
          const named = { label: `${field.label}, ${{ low: 'smallest', likely: 'likeliest', high: 'largest' }[point]}` };
          const typed = keyOf(draft, point);
          const at = [...path, point];
          return [point, field.of === 'length' ? readLength(named, typed, at, reading) : readNumber(named, field.of.unit, typed, at, reading)];
        }),
      );
    case 'lines':
      return asText(draft).split('\n').map((line) => line.trim()).filter((line) => line !== '');
    case 'partState':
      return asText(draft) || null;
  }
}

function readList(field: ListSpec, draft: unknown, path: Path, reading: Reading): unknown[] {
  return listIn(draft).map((item, index) => {
    const value = readFields(field.fields, item, [...path, index], reading);
    if (field.isBare) return value[bareField(field).name];
    const id = asText(keyOf(item, 'id'));
    return field.hasIds && id !== '' ? { ...value, id } : value;
  });
}

function readFields(fields: readonly FieldSpec[], draft: unknown, path: Path, reading: Reading): Record<string, unknown> {
  return Object.fromEntries(
    fields.map((field) => {
      const typed = keyOf(draft, field.name);
      const at = [...path, field.name];
      if (field.type === 'group') return [field.name, readFields(field.fields, typed, at, reading)];
      if (field.type === 'list') return [field.name, readList(field, typed, at, reading)];
      return [field.name, readLeaf(field, typed, at, reading)];
    }),
  );
}

/**
 * Reads what was typed in the fields of a form: lengths to minutes, moments to local date and time, empty fields to null.
 * Every text that cannot be read is an issue with the path of its field.
 */
export function readForm(fields: readonly FieldSpec[], draft: unknown): Result<Record<string, unknown>> {
  const reading: Reading = { issues: [] };
  const input = readFields(fields, draft, [], reading);
  return reading.issues.length > 0 ? fail(reading.issues) : ok(input);
}

/** {@link readForm} for the form of a kind of record. */
export function readRecordForm(kind: RecordKind, draft: unknown): Result<Record<string, unknown>> {
  return readForm(listFields(kind), draft);
}
