import { describe, expect, it } from 'vitest';
import { listOf } from '@/lib/build';
import { checkDocument, viewRecordList, viewRecordsIndex } from '@/lib/views';
import { sampleSeries, withTask } from '../build/sample-series';
import { minutes } from '@/lib/units';

describe('The index of records', () => {
  it('counts every kind and names the first needed kind that is empty', () => {
    const full = viewRecordsIndex(sampleSeries(), []);
    expect(full.next).toBeNull();
    for (const { kind, count } of full.kinds) expect(count).toBe(listOf(sampleSeries(), kind).length);
    expect(viewRecordsIndex(sampleSeries({ people: [], sessions: [] }), []).next?.kind).toBe('person');
  });

  it('counts an issue at the kind of the record at fault only', () => {
    const [task] = sampleSeries().tasks;
    const broken = withTask(task?.id ?? '', { effort: { low: minutes(0), likely: minutes(10), high: minutes(20) } });
    const index = viewRecordsIndex(broken, checkDocument(broken));
    expect(index.kinds.find(({ kind }) => kind === 'task')?.stops).toBe(1);
    expect(index.kinds.filter(({ stops }) => stops > 0).map(({ kind }) => kind)).toEqual(['task']);
    const list = viewRecordList(broken, 'task', checkDocument(broken));
    expect(list.rows.filter(({ issues }) => issues.length > 0).map(({ id }) => id)).toEqual([task?.id]);
  });
});

describe('A list of records', () => {
  it('shows sessions in order of time whatever their place in the list', () => {
    const { sessions } = sampleSeries();
    const list = viewRecordList(sampleSeries({ sessions: sessions.toReversed() }), 'session', []);
    expect(list.rows.map(({ id }) => id)).toEqual(sessions.toSorted((a, b) => a.start - b.start).map(({ id }) => id));
  });

  it('puts a unit to every figure of a material and says when there is no source', () => {
    const [material] = sampleSeries().materials;
    if (material === undefined) throw new Error('the sample has materials');
    const list = viewRecordList(sampleSeries({ materials: [{ ...material, source: '' }] }), 'material', []);
    expect(list.rows[0]?.facts.join(' · ')).toMatch(/recoat from .+ cured .+ at \d+ °C · not below -?\d+ °C · no source/);
  });
});
