import { describe, expect, it } from 'vitest';
import { deriveOrder, findCycle, findUsers, referencesOf, type Precedence, type WorkRef } from '@/lib/build';
import { at, sampleSeries, sampleTask, withTask } from './sample-series';

const sample = sampleSeries();
const say = ({ from, to, because }: Precedence): string =>
  `${from.id} > ${to.id} (${because.kind === 'link' ? because.linkId : because.stateId})`;
const ref = (id: string): WorkRef => ({ kind: 'task', id });
const arc = (from: string, to: string): Precedence => ({ from: ref(from), to: ref(to), because: { kind: 'link', linkId: `${from}${to}` } });

describe('deriveOrder', () => {
  it('follows the states of parts and the links, outside jobs included', () => {
    expect(deriveOrder(sample).map(say)).toEqual([
      'task-strip > task-clean (frame-stripped)',
      'task-clean > task-prime (frame-clean)',
      'task-prime > task-paint (frame-primed)',
      'task-paint > task-fit (frame-painted)',
      'task-fit > task-closing (frame-wheeled)',
      'job-wheel > task-fit (wheel-coated)',
      'task-prime > task-paint (link-recoat)',
      'task-paint > task-fit (link-handle)',
    ]);
  });

  it('puts work that only looks at a state between the work that makes it and the work that takes it away', () => {
    const look = sampleTask('task-look', 6, 'Look', { parts: [{ partId: 'part-frame', from: 'frame-clean', to: null }] });
    const arcs = deriveOrder(sampleSeries({ tasks: [look, ...sample.tasks] })).map(say);
    expect(arcs).toContain('task-clean > task-look (frame-clean)');
    expect(arcs).toContain('task-look > task-prime (frame-clean)');
  });

  it('keeps done work and asks nothing of work that takes a part in any state', () => {
    expect(deriveOrder(withTask('task-strip', { doneAt: at('2026-11-28', '12:00') }))).toEqual(deriveOrder(sample));
    const any = sampleTask('task-any', 6, 'Photograph', { parts: [{ partId: 'part-frame', from: null, to: null }] });
    expect(deriveOrder(sampleSeries({ tasks: [...sample.tasks, any] }))).toHaveLength(8);
  });
});

describe('findCycle', () => {
  it('finds none in an order without contradiction', () => {
    expect(findCycle(deriveOrder(sample))).toBeNull();
    expect(findCycle([])).toBeNull();
    expect(findCycle([arc('a', 'b'), arc('a', 'c'), arc('b', 'd'), arc('c', 'd')])).toBeNull();
  });

  it('gives the arcs of a shortest ring in order, each starting where the last ends', () => {
    const ring = findCycle([arc('x', 'a'), arc('a', 'b'), arc('b', 'c'), arc('c', 'a'), arc('c', 'd'), arc('d', 'c'), arc('d', 'e')]);
    expect(ring?.map(say)).toEqual(['c > d (cd)', 'd > c (dc)']);
  });

  it('finds work that waits for itself', () => {
    expect(findCycle([arc('a', 'a')])).toHaveLength(1);
  });

  it('searches an order of 5,000 steps in a moment', () => {
    const chain = Array.from({ length: 5000 }, (_, index) => arc(`t${index}`, `t${index + 1}`));
    expect(findCycle(chain)).toBeNull();
  });
});

describe('findUsers', () => {
  it('tells who points at a record, where and as what', () => {
    expect(findUsers(sample, 'part', 'part-wheel').map(({ record, reference }) => [record.id, reference.path.join('.'), reference.role])).toEqual([
      ['task-fit', 'parts.1.partId', 'part'], ['job-wheel', 'parts.0.partId', 'part'],
    ]);
    expect(findUsers(sample, 'task', 'task-paint').map(({ record, reference }) => [record.id, reference.role])).toEqual([
      ['link-recoat', 'second end'], ['link-handle', 'first end'],
    ]);
    expect(findUsers(sample, 'person', 'person-kim')).toHaveLength(9);
  });

  it('knows every pointer of a task', () => {
    const task = sample.tasks.find(({ id }) => id === 'task-paint');
    if (task === undefined) throw new Error('The sample has this task');
    expect(referencesOf(task).map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'place place-spray', 'episode episode-2', 'part part-frame', 'equipment equipment-gun', 'material material-paint',
    ]);
  });
});
