/** Text with separated values, as loggers write it: RFC 4180 quotes, with comma, semicolon or tab between. */

export type Separator = ',' | ';' | '\t';

export interface CsvRow {
  /** Line in the file, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

const SEPARATORS: readonly Separator[] = ['\t', ';', ','];

/** The separator that splits most lines the same way: tab, then semicolon, then comma, since a comma may be a decimal one. */
export function findSeparator(text: string): Separator {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '').slice(0, 50);
  const usable = SEPARATORS.find((separator) => lines.filter((line) => line.includes(separator)).length > lines.length / 2);
  return usable ?? ',';
}

/** Every row that is not blank, cells trimmed. A quoted cell may hold separators, doubled quotes and line ends. */
export function splitCsv(text: string, separator: Separator): CsvRow[] {
  const source = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const rows: CsvRow[] = [];
  let cells: string[] = [];
  let cell = '';
  let [isQuoted, line, rowLine] = [false, 1, 1];
  const endCell = (): void => {
    cells.push(cell.trim());
    cell = '';
  };
  const endRow = (): void => {
    endCell();
    if (cells.some((value) => value !== '')) rows.push({ line: rowLine, cells });
    cells = [];
    rowLine = line;
  };
  for (let at = 0; at < source.length; at += 1) {
    const character = source[at]!;
    const isLineEnd = character === '\n' || (character === '\r' && source[at + 1] !== '\n');
    if (isLineEnd) line += 1;
    if (isQuoted) {
      if (character !== '"') cell += character;
      else if (source[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else isQuoted = false;
    } else if (character === '"' && cell.trim() === '') {
      cell = '';
      isQuoted = true;
    } else if (character === separator) endCell();
    else if (isLineEnd) endRow();
    else if (character !== '\r') cell += character;
  }
  endRow();
  return rows;
}
