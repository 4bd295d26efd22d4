/** What can be wrong with readings as a whole: order, repeats, spikes and gaps. */
import { formatLength } from '@/lib/calendar';
import { issue, type Issue } from '@/lib/result';
import { MS_PER_MINUTE, type Instant } from '@/lib/units';
import { LONGEST_JOINED_GAP_HOURS, type Reading } from './measured';

export interface NumberedReading extends Reading {
  /** Row of the file, from 1. */
  readonly line: number;
}

/** Kelvins a single reading may stand above or below both the one before and the one after it. Common practice, no source. */
const SPIKE = 8;
const NEAR_MS = LONGEST_JOINED_GAP_HOURS * 60 * MS_PER_MINUTE;

type Told = (at: Instant) => string;

function sortRows(rows: readonly NumberedReading[], told: Told, column: string, issues: Issue[]): NumberedReading[] {
  const backwards = rows.filter((row, index) => index > 0 && row.at < rows[index - 1]!.at);
  const first = backwards[0];
  if (first !== undefined) {
    const message = `Row ${first.line} (${told(first.at)}) is earlier than the row before it; ${backwards.length} such rows in all.`;
    issues.push(issue('readings-unsorted', message, 'The rows were sorted by time; check the clock of the logger.', { severity: 'warn', path: [first.line, column] }));
  }
  return rows.toSorted((a, b) => a.at - b.at || a.line - b.line);
}

function dropRepeats(rows: readonly NumberedReading[], told: Told, column: string, issues: Issue[]): NumberedReading[] {
  const kept: NumberedReading[] = [];
  for (const row of rows) {
    const last = kept.at(-1);
    if (last === undefined || last.at !== row.at) {
      kept.push(row);
      continue;
    }
    const isSame = last.temperature === row.temperature && last.humidity === row.humidity;
    const message = isSame
      ? `Row ${row.line} repeats row ${last.line} (${told(row.at)}).`
      : `Row ${row.line} has other values than row ${last.line} for ${told(row.at)}.`;
    const fix = isSame ? 'It was read once; nothing to do.' : `Row ${last.line} was kept; remove the wrong one.`;
    issues.push(issue('reading-twice', message, fix, { severity: 'warn', path: [row.line, column] }));
  }
  return kept;
}

function middleOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

function dropSpikes(rows: readonly NumberedReading[], told: Told, issues: Issue[]): NumberedReading[] {
  return rows.filter((row, index) => {
    const [before, after] = [rows[index - 1], rows[index + 1]];
    if (before === undefined || after === undefined || row.at - before.at > NEAR_MS || after.at - row.at > NEAR_MS) return true;
    const [rise, fall] = [row.temperature - before.temperature, row.temperature - after.temperature];
    if (Math.abs(rise) <= SPIKE || Math.abs(fall) <= SPIKE || rise * fall < 0) return true;
    const near = `${before.temperature.toFixed(1)} and ${after.temperature.toFixed(1)} °C`;
    const message = `Row ${row.line} (${told(row.at)}) jumps to ${row.temperature.toFixed(1)} °C between readings of ${near}.`;
    issues.push(issue('reading-spike', message, 'The row was left out; the logger may have been touched or in the sun.', { severity: 'warn', path: [row.line, 'temperature'] }));
    return false;
  });
}

function tellGaps(rows: readonly NumberedReading[], told: Told, column: string, issues: Issue[]): void {
  const steps = rows.slice(1).map((row, index) => row.at - rows[index]!.at);
  if (steps.length === 0) return;
  const longest = Math.max(3 * middleOf(steps), 60 * MS_PER_MINUTE);
  steps.forEach((step, index) => {
    if (step <= longest) return;
    const [from, to] = [rows[index]!, rows[index + 1]!];
    const message = `No readings for ${formatLength(step / MS_PER_MINUTE)} between row ${from.line} (${told(from.at)}) and row ${to.line} (${told(to.at)}).`;
    const fix = step > NEAR_MS ? 'The model fills the gap; add the missing rows if you have them.' : 'A straight line fills the gap; nothing to do.';
    issues.push(issue('readings-gap', message, fix, { severity: 'warn', path: [to.line, column] }));
  });
}

/** Sorted readings, one a moment, spikes left out; whatever was wrong is told, nothing is lost silently. */
export function checkSeries(rows: readonly NumberedReading[], told: Told, column: string): { readings: Reading[]; issues: Issue[] } {
  const issues: Issue[] = [];
  const once = dropRepeats(sortRows(rows, told, column, issues), told, column, issues);
  const kept = dropSpikes(once, told, issues);
  tellGaps(kept, told, column, issues);
  return { readings: kept.map(({ at, temperature, humidity }) => ({ at, temperature, humidity })), issues };
}
