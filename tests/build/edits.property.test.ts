import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  changeRecord, checkSeries, createRecord, LIST_KINDS, listOf, newStops, removeRecord, reorderRecords, type Edited, type ListKind, type ListRecord, type SeriesDocument,
} from '@/lib/build';
import type { Result } from '@/lib/result';
import { minutes } from '@/lib/units';
import { contents, save, undo, type History } from './history';
import { sampleSeries, sampleTask } from './sample-series';

interface Step {
  readonly what: 'create' | 'rename' | 'change' | 'remove' | 'cascade' | 'reorder';
  readonly kind: ListKind;
  readonly pick: number;
  readonly size: number;
}

const step: fc.Arbitrary<Step> = fc.record({
  what: fc.constantFrom('create', 'rename', 'change', 'remove', 'cascade', 'reorder'),
  kind: fc.constantFrom(...LIST_KINDS), pick: fc.nat(50), size: fc.integer({ min: -5, max: 600 }),
});

function copyOf(record: ListRecord, id: string): ListRecord {
  return { ...record, id, name: `Copy ${id}` };
}

/** What a step does to a document; null where it has nothing to act on. */
function take(document: SeriesDocument, { what, kind, pick, size }: Step): Result<Edited> | null {
  const list: readonly ListRecord[] = listOf<ListKind>(document, kind);
  const record = list[pick % Math.max(1, list.length)];
  const id = `new-${document.changeNumber}`;
  if (record === undefined) return kind === 'task' ? createRecord(document, sampleTask(id, 0, 'New')) : null;
  switch (what) {
    case 'create': return createRecord(document, kind === 'task' ? sampleTask(id, 0, `New ${size}`, { episodeId: null }) : copyOf(record, id));
    case 'rename': return changeRecord<ListKind>(document, kind, record.id, record.revision, { name: `Name ${size}` });
    case 'change': {
      const task = document.tasks[pick % Math.max(1, document.tasks.length)];
      if (task === undefined) return null;
      return changeRecord(document, 'task', task.id, task.revision, { inOneGo: size % 2 === 0, effort: { low: minutes(size), likely: minutes(size), high: minutes(600) } });
    }
    case 'remove': return removeRecord(document, kind, record.id, record.revision);
    case 'cascade': return removeRecord(document, kind, record.id, record.revision, { cascade: true });
    case 'reorder': return reorderRecords(document, kind, list.map((one) => one.id).toSorted((a, b) => (a.length + size) % 7 - (b.length + size) % 5 || (a < b ? 1 : -1)));
  }
}

function run(steps: readonly Step[]): History {
  return steps.reduce<History>((history, one) => {
    const edited = take(history.document, one);
    return (edited && save(history, edited)) ?? history;
  }, { document: sampleSeries(), changes: [] });
}

describe('any sequence of edits', () => {
  it('leads back to the same records when all of it is undone from the last to the first', () => {
    let taken = 0;
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
      const history = run(steps);
      taken += history.changes.length;
      const back = history.changes.toReversed().reduce((now, change) => undo(now, change.number), history);
      expect(contents(back.document)).toEqual(contents(sampleSeries()));
    }), { numRuns: 150 });
    expect(taken).toBeGreaterThan(150);
  });

  it('leads forward again when the undoing is undone', () => {
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 6 }), (steps) => {
      const history = run(steps);
      const back = history.changes.toReversed().reduce((now, change) => undo(now, change.number), history);
      const undone = back.changes.slice(history.changes.length);
      const forward = undone.toReversed().reduce((now, change) => undo(now, change.number), back);
      expect(contents(forward.document)).toEqual(contents(history.document));
    }), { numRuns: 60 });
  });

  it('brings in no stop but those of too few people or sessions', () => {
    const supply = ['task-longer-than-any-session', 'skill-nobody-has', 'skill-held-by-too-few', 'crew-larger-than-people'];
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
      const stops = newStops(sampleSeries(), run(steps).document).map(({ code }) => code);
      expect(stops.filter((code) => !supply.includes(code))).toEqual([]);
    }), { numRuns: 60 });
  });

  it('never gives two different answers for the same document', () => {
    fc.assert(fc.property(fc.array(step, { maxLength: 8 }), (steps) => {
      expect(checkSeries(run(steps).document)).toEqual(checkSeries(run(steps).document));
    }), { numRuns: 20 });
  });
});
