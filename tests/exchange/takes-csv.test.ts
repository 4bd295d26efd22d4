import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTakesCsv, writeTakesCsv, type TakeRow } from '@/lib/exchange';
import { readCsv, writeCsv } from '@/lib/exchange/csv';
import { at } from '../build/sample-series';
import { TAKE } from '../continuity/sample-log';

const DF = { rate: { numerator: 30_000, denominator: 1001 }, isDropFrame: true };
const row: TakeRow = {
  id: 'e1', at: at('2026-12-01', '18:30'), author: 'Robin', taskId: 't1', taskName: 'Strip, twice', shotId: 's1', shotName: 'Sparks', cameraName: 'A', text: '=SUM(A1) said "stop"\nand went',
  take: { ...TAKE, cameraId: 'c1', format: DF, startFrame: 1800, endFrame: 17_982, number: 3, size: 'close', verdict: 'no good', media: 'A1/0003', isReenacted: true, reenactmentLabel: 'Shown again', isFailedAttempt: true },
};

describe('tables after RFC 4180', () => {
  test('any cells come back as they went out', () => {
    // A cell of its own that starts with an apostrophe before a formula sign reads the same as a neutralised one.
    const cell = fc.string().filter((text) => !/^'[=+\-@\t\r]/u.test(text));
    fc.assert(fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1 }), (rows) => {
      expect(readCsv(writeCsv(rows))).toEqual({ ok: true, value: rows });
    }), { numRuns: 200 });
  });

  test('rows end with CR LF, quotes are doubled, formulas are kept text', () => {
    expect(writeCsv([['a,b', '"c"', '=1+1', '-5']])).toBe('"a,b","""c""",\'=1+1,-5\r\n');
  });

  test('a row that is too short and a quote that stays open are named', () => {
    expect(readCsv('a,b\r\nc\r\n')).toMatchObject({ ok: false, error: [{ code: 'csv-row-length' }] });
    expect(readCsv('a,"b\r\n')).toMatchObject({ ok: false, error: [{ code: 'csv-open-quote' }] });
  });
});

describe('takes as a table', () => {
  test('come back as they went out', () => {
    const plain: TakeRow = { ...row, id: 'e2', taskId: null, taskName: '', shotId: null, shotName: '', cameraName: '', text: '', take: TAKE };
    expect(readTakesCsv(writeTakesCsv([row, plain]))).toEqual({ ok: true, value: [row, plain] });
  });

  test('may come with few columns in any order', () => {
    expect(readTakesCsv('Media,At\nA1/7,2026-12-01T18:30:00Z\n')).toMatchObject({ ok: true, value: [{ id: '', take: { media: 'A1/7', number: 1, verdict: 'unsure', format: null } }] });
  });

  test('every fault of every row is named with its row', () => {
    const text = 'at,rate,start,take,verdict,size\nnever,25,00:00:00:00,1,good,wide\n2026-12-01T18:30:00Z,29.97 DF,00:01:00;00,0,great,huge\n2026-12-01T18:30:00Z,25 DF,,1,good,\n';
    const read = readTakesCsv(text);
    expect(read.ok ? [] : read.error.map(({ path }) => path.join(' '))).toEqual(['2 at', '3 start', '3 take', '3 verdict', '3 size', '4 rate']);
    expect(readTakesCsv('a\nb\n')).toMatchObject({ ok: false, error: [{ code: 'take-head' }] });
  });
});
