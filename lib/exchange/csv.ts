/** Tables as text after RFC 4180: CRLF, quotes doubled, as many fields in every row. */
import { fail, issue, ok, type Result } from '@/lib/result';

/** A spreadsheet takes these at the start of a cell for a formula; an apostrophe in front keeps them text (common practice). */
const FORMULA = /^[=+\-@\t\r]/u;
const NEUTRALISED = /^'(?=[=+\-@\t\r])/u;

function writeCell(text: string): string {
  const plain = FORMULA.test(text) && !/^-?\d+(\.\d+)?$/u.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** @throws Error when a row has another number of fields than the first. */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  const width = rows[0]?.length ?? 0;
  if (rows.some((row) => row.length !== width)) throw new Error('Every row of a table has the same number of fields.');
  return rows.map((row) => `${row.map(writeCell).join(',')}\r\n`).join('');
}

/** Splits text into rows of cells; quotes may hold commas and line ends. */
function splitRows(text: string): Result<readonly (readonly string[])[]> {
  const rows: string[][] = [];
  let [row, cell, isQuoted]: [string[], string, boolean] = [[], '', false];
  for (let index = 0; index < text.length; index += 1) {
    const sign = text[index] ?? '';
    if (isQuoted) {
      if (sign !== '"') cell += sign;
      else if (text[index + 1] === '"') cell += text[(index += 1)] ?? '';
      else isQuoted = false;
    } else if (sign === '"' && cell === '') isQuoted = true;
    else if (sign === ',') [row, cell] = [[...row, cell], ''];
    else if (sign === '\n' || sign === '\r') {
      if (sign === '\r' && text[index + 1] === '\n') index += 1;
      rows.push([...row, cell]);
      [row, cell] = [[], ''];
    } else cell += sign;
  }
  if (isQuoted) return fail([issue('csv-open-quote', 'A quotation mark is opened in the table and never closed.', 'Close it, or save the table again.')]);
  if (cell !== '' || row.length > 0) rows.push([...row, cell]);
  return ok(rows);
}

/**
 * Rows of a table, each with as many cells as the first; the apostrophe that keeps a formula text is taken off. Empty lines are passed over.
 * Fails with `csv-open-quote`, or with `csv-row-length` for every row that is too short or too long.
 */
export function readCsv(text: string): Result<readonly (readonly string[])[]> {
  const split = splitRows(text.replace(/^\uFEFF/u, ''));
  if (!split.ok) return split;
  const rows = split.value.map((cells, index) => ({ cells, line: index + 1 })).filter(({ cells }) => cells.length > 1 || cells[0] !== '');
  const width = rows[0]?.cells.length ?? 0;
  const wrong = rows.filter(({ cells }) => cells.length !== width).map(({ cells, line }) =>
    issue('csv-row-length', `Row ${line} has ${cells.length} fields, and the first has ${width}.`, 'Add or remove commas in it.', { path: [line] }));
  return wrong.length > 0 ? fail(wrong) : ok(rows.map(({ cells }) => cells.map((cell) => cell.replace(NEUTRALISED, ''))));
}
