/** Which columns of a logger's file mean what. */
import type { CsvRow } from './csv';

export interface Columns {
  /** Index of the column with the time, or the date when `clock` is set. */
  readonly time: number;
  /** A second column with the time of day alone; null: `time` holds both. */
  readonly clock: number | null;
  readonly temperature: number;
  readonly humidity: number | null;
  /** As the header says it; null: it does not. */
  readonly unit: 'C' | 'F' | null;
  /** Name of a column for messages. */
  readonly names: readonly string[];
  /** Rows before the data. */
  readonly skip: number;
}

const MOST_PREAMBLE = 25;
const TIME_WORDS = /time|date|timestamp|zeit|datum/i;
const DATE_ALONE = /^\W*(date|datum)\W*$/i;
const CLOCK_ALONE = /^\W*(time|zeit|uhrzeit)\W*$/i;
const TEMPERATURE_WORDS = /temp|°\s*[cf]\b|^\W*[cf]\W*$|celsius|fahrenheit/i;
const HUMIDITY_WORDS = /humid|\brh\b|feucht|%/i;
const DEW_WORDS = /dew|wet|feels/i;

function unitOf(header: string): 'C' | 'F' | null {
  if (/°\s*f|\(\s*f\s*\)|_f$|fahrenheit|deg\s*f|^\W*f\W*$/i.test(header)) return 'F';
  if (/°\s*c|\(\s*c\s*\)|_c$|celsius|deg\s*c|^\W*c\W*$/i.test(header)) return 'C';
  return null;
}

function columnsOfHeader(row: CsvRow, skip: number): Columns | null {
  const find = (test: (cell: string) => boolean): number => row.cells.findIndex(test);
  const clock = find((cell) => CLOCK_ALONE.test(cell));
  const day = find((cell) => DATE_ALONE.test(cell));
  const isSplit = clock >= 0 && day >= 0;
  const time = isSplit ? day : find((cell) => TIME_WORDS.test(cell));
  const temperature = find((cell) => TEMPERATURE_WORDS.test(cell) && !DEW_WORDS.test(cell) && !TIME_WORDS.test(cell.replace(/temp\w*/i, '')));
  if (time < 0 || temperature < 0) return null;
  const humidity = find((cell) => HUMIDITY_WORDS.test(cell) && !DEW_WORDS.test(cell));
  const names = row.cells.map((cell, index) => (cell === '' ? `column ${index + 1}` : cell));
  return {
    time, clock: isSplit ? clock : null, temperature, humidity: humidity < 0 || humidity === temperature ? null : humidity,
    unit: unitOf(row.cells[temperature] ?? ''), names, skip,
  };
}

/** Columns by position when there is no header: time, temperature, humidity. */
function columnsByPlace(rows: readonly CsvRow[], isTime: (text: string) => boolean): Columns | null {
  const skip = rows.findIndex(({ cells }) => isTime(cells[0] ?? ''));
  const row = rows[skip];
  if (row === undefined || row.cells.length < 2) return null;
  const names = row.cells.map((_, index) => `column ${index + 1}`);
  return { time: 0, clock: null, temperature: 1, humidity: row.cells.length > 2 ? 2 : null, unit: null, names, skip };
}

/** Finds a header within the first rows, lines about the device before it left out; else takes the columns by place. */
export function findColumns(rows: readonly CsvRow[], isTime: (text: string) => boolean): Columns | null {
  for (let index = 0; index < Math.min(rows.length, MOST_PREAMBLE); index += 1) {
    const columns = columnsOfHeader(rows[index]!, index + 1);
    if (columns !== null) return columns;
  }
  return columnsByPlace(rows, isTime);
}
