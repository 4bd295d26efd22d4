/** Reads what a temperature logger wrote. Good rows are kept, every other one is told with its row and column. */
import { formatMoment, isZone } from '@/lib/calendar';
import { issue, type Issue } from '@/lib/result';
import { findColumns, type Columns } from './columns';
import { findSeparator, splitCsv, type CsvRow } from './csv';
import { checkSeries, type NumberedReading } from './reading-checks';
import { findDateOrder, momentOfReading, readWallTime, type DateOrder } from './reading-time';
import type { Reading } from './measured';
import { fahrenheitReading } from './temperature-units';

export interface ReadingsOptions {
  /** IANA zone the logger's clock was set to; a time with its own offset overrules it. */
  readonly zone: string;
  /** `auto`: as the header or the cells say, else °C. */
  readonly unit?: 'auto' | 'C' | 'F';
  /** `auto`: from the dates themselves. */
  readonly dateOrder?: 'auto' | DateOrder;
}

export interface ReadingsImport {
  /** Sorted, one a moment. */
  readonly readings: readonly Reading[];
  /** Paths are `[row, column]`: the line of the file from 1 and the column's name. */
  readonly issues: readonly Issue[];
  /** Rows with data, good and bad. */
  readonly rows: number;
  readonly unit: 'C' | 'F';
}

const COLDEST = -45;
const HOTTEST = 75;
const NUMBER = /^[-+]?\d*(?:[.,]\d+)?(?:e[-+]?\d+)?$/i;

/** A number with or without its unit; null when it is none. */
function readNumber(text: string): number | null {
  const plain = text.replace(/\s*(°?\s*[CF]|%(\s*rh)?|rh)\s*$/i, '').replace('−', '-').trim();
  if (plain === '' || !NUMBER.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

function findUnit(columns: Columns, rows: readonly CsvRow[], wanted: 'auto' | 'C' | 'F'): 'C' | 'F' | null {
  if (wanted !== 'auto') return wanted;
  if (columns.unit !== null) return columns.unit;
  const cell = rows.map(({ cells }) => cells[columns.temperature] ?? '').find((text) => /[CF]\s*$/i.test(text));
  return cell === undefined ? null : /F\s*$/i.test(cell) ? 'F' : 'C';
}

const timeText = (cells: readonly string[], columns: Columns): string =>
  columns.clock === null ? (cells[columns.time] ?? '') : `${cells[columns.time] ?? ''} ${cells[columns.clock] ?? ''}`;

function readHumidity(row: CsvRow, columns: Columns, issues: Issue[]): number | null {
  const text = columns.humidity === null ? '' : (row.cells[columns.humidity] ?? '');
  if (text === '') return null;
  const value = readNumber(text);
  if (value !== null && value >= 0 && value <= 100) return value;
  const path = [row.line, columns.names[columns.humidity!] ?? 'humidity'];
  const message = `Row ${row.line}: the humidity "${text}" is no percentage from 0 to 100.`;
  issues.push(issue('reading-humidity', message, 'The temperature of the row is kept; correct the humidity if you know it.', { severity: 'warn', path }));
  return null;
}

function readTemperature(row: CsvRow, columns: Columns, unit: 'C' | 'F', issues: Issue[]): number | null {
  const text = row.cells[columns.temperature] ?? '';
  const path = [row.line, columns.names[columns.temperature] ?? 'temperature'];
  const raw = readNumber(text);
  if (raw === null) {
    const fix = 'The row is left out; write a number such as 8.5.';
    issues.push(issue('reading-temperature', `Row ${row.line}: the temperature "${text}" is no number.`, fix, { severity: 'warn', path }));
    return null;
  }
  const value = unit === 'F' ? fahrenheitReading(raw) : raw;
  if (value >= COLDEST && value <= HOTTEST) return value;
  const message = `Row ${row.line}: ${raw} °${unit} is outside ${COLDEST} to ${HOTTEST} °C.`;
  issues.push(issue('reading-range', message, 'The row is left out; check the unit of the file.', { severity: 'warn', path }));
  return null;
}

function readRows(rows: readonly CsvRow[], columns: Columns, options: ReadingsOptions, unit: 'C' | 'F', order: DateOrder, issues: Issue[]): NumberedReading[] {
  const found: NumberedReading[] = [];
  let before: Reading['at'] | null = null;
  for (const row of rows) {
    const text = timeText(row.cells, columns);
    const wall = readWallTime(text, order);
    if (wall === null) {
      const path = [row.line, columns.names[columns.time] ?? 'time'];
      issues.push(issue('reading-time', `Row ${row.line}: "${text}" is no date with a time.`, 'The row is left out; write it like 2026-12-01 18:30.', { severity: 'warn', path }));
      continue;
    }
    const at = momentOfReading(wall, options.zone, before);
    before = at;
    const temperature = readTemperature(row, columns, unit, issues);
    const humidity = readHumidity(row, columns, issues);
    if (temperature !== null) found.push({ at, temperature, humidity, line: row.line });
  }
  return found;
}

const nothing = (issues: readonly Issue[], rows: number): ReadingsImport => ({ readings: [], issues, rows, unit: 'C' });

function unitIssue(readings: readonly Reading[], unit: 'C' | 'F' | null, columns: Columns): Issue[] {
  const middle = readings.map((r) => r.temperature).toSorted((a, b) => a - b)[Math.floor(readings.length / 2)];
  if (unit !== null || middle === undefined || middle < 40) return [];
  const message = `The file names no unit, and half of its values are above ${Math.round(middle)}; they were read as °C.`;
  const path = [columns.skip, columns.names[columns.temperature] ?? 'temperature'];
  return [issue('reading-unit', message, 'Choose °F if the logger was set to it.', { severity: 'warn', path })];
}

/**
 * Reads a logger's CSV: time, temperature, humidity. Finds separator, header, unit and the order of day and month by itself.
 * Never fails as a whole for a bad row: see `issues`. With a `stop` issue (`readings-empty`, `readings-columns`,
 * `readings-date-order`, `readings-zone`) there are no readings.
 * @example readReadings('time,temp C\n2026-12-01 18:00,6.5', { zone: 'Europe/London' }).readings.length // 1
 */
export function readReadings(text: string, options: ReadingsOptions): ReadingsImport {
  const all = splitCsv(text, findSeparator(text));
  if (all.length === 0) return nothing([issue('readings-empty', 'The file is empty.', 'Export the readings once more.')], 0);
  if (!isZone(options.zone)) {
    return nothing([issue('readings-zone', `There is no time zone "${options.zone}".`, 'Choose the zone the logger was set to.')], all.length);
  }
  const columns = findColumns(all, (cell) => readWallTime(cell, 'day first') !== null || readWallTime(cell, 'month first') !== null);
  if (columns === null) {
    const fix = 'Name the columns in the first row: time, temperature, humidity.';
    return nothing([issue('readings-columns', 'No column with times and temperatures was found.', fix, { path: [all[0]!.line] })], all.length);
  }
  const rows = all.slice(columns.skip);
  const { order, isNeeded } = findDateOrder(rows.map((row) => timeText(row.cells, columns)));
  const wanted = options.dateOrder ?? 'auto';
  if (wanted === 'auto' && isNeeded && order === null) {
    const path = [rows[0]?.line ?? 1, columns.names[columns.time] ?? 'time'];
    const message = `Dates such as "${timeText(rows[0]?.cells ?? [], columns)}" could have the day or the month first.`;
    return nothing([issue('readings-date-order', message, 'Choose day first or month first.', { path })], rows.length);
  }
  const unit = findUnit(columns, rows, options.unit ?? 'auto');
  const issues: Issue[] = [];
  const found = readRows(rows, columns, options, unit ?? 'C', wanted === 'auto' ? (order ?? 'day first') : wanted, issues);
  const { readings, issues: seriesIssues } = checkSeries(found, (at) => formatMoment(at, options.zone), columns.names[columns.time] ?? 'time');
  return { readings, issues: [...issues, ...seriesIssues, ...unitIssue(readings, unit, columns)], rows: rows.length, unit: unit ?? 'C' };
}
