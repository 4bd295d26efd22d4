import { describe, expect, it } from 'vitest';
import { computeBuild } from '@/lib/views/build-plan';
import { layOutLayers, reduceArcs, spreadHeights } from '@/lib/views/build-layers';
import { at, sampleSeries, withTask } from '../build/sample-series';
import { samplePlan } from './sample-plan';

const view = (document = sampleSeries(), isAll = true) => computeBuild({ document, plan: samplePlan(), now: at('2026-12-01', '12:00'), assembly: null, isAll });

describe('threads of states', () => {
  it('date the states that the plan reaches and leave the others open', () => {
    const frame = view().assemblies[0]?.parts[0];
    expect(frame?.beads.map((bead) => [bead.name, bead.status, bead.when])).toEqual([
      ['as bought', 'current', null], ['stripped', 'planned', 'Thu 3 Dec'], ['clean', 'planned', 'Sat 5 Dec'], ['primed', 'planned', 'Sat 5 Dec'],
      ['painted', 'planned', 'Sat 12 Dec'], ['on its wheel', 'planned', 'Tue 15 Dec'],
    ]);
    expect(frame?.beads[3]).toMatchObject({ way: 'drying', wait: 'dries until Mon 7 Dec 06:00' });
  });

  it('move on with what is done, and count it', () => {
    const assembly = view(withTask('task-strip', { doneAt: at('2026-11-28', '12:00') })).assemblies[0];
    expect(assembly?.parts[0]?.beads.slice(0, 3).map((bead) => [bead.status, bead.when])).toEqual([['reached', null], ['current', 'Sat 28 Nov'], ['planned', 'Sat 5 Dec']]);
    expect(assembly).toMatchObject({ reached: 1, total: 7 });
  });

  it('show a state that is made outside as away', () => {
    const wheel = view().assemblies[0]?.parts[1];
    expect(wheel?.beads[1]).toMatchObject({ way: 'away', when: 'Tue 8 Dec', wait: '4 working days at Canal Street Coaters' });
  });

  it('leave a state open that nothing makes', () => {
    const document = sampleSeries({ tasks: sampleSeries().tasks.filter((task) => task.id !== 'task-paint') });
    const bead = view(document).assemblies[0]?.parts[0]?.beads[4];
    expect(bead).toMatchObject({ name: 'painted', status: 'open', by: null, when: null });
  });
});

describe('the graph of work', () => {
  it('puts work in columns after everything it waits for', () => {
    const { nodes, arcs } = view().graph;
    const level = new Map(nodes.map((node) => [node.key, node.level]));
    expect(level.get('task:task-fit')).toBeGreaterThan(level.get('task:task-paint') ?? 9);
    expect(level.get('task:task-fit')).toBeGreaterThan(level.get('outsideJob:job-wheel') ?? 9);
    expect(arcs.find((arc) => arc.key === 'task:task-prime>task:task-paint')).toMatchObject({ label: 'ready to recoat', isWait: true });
    for (const arc of arcs) {
      const [from = '', to = ''] = arc.key.split('>');
      expect(level.get(to)).toBeGreaterThan(level.get(from) ?? 99);
    }
  });

  it('never draws two pieces of work over one another', () => {
    const { nodes } = view().graph;
    for (const a of nodes) {
      for (const b of nodes) if (a !== b && a.level === b.level) expect(Math.abs(a.y - b.y)).toBeGreaterThanOrEqual(62);
    }
  });

  it('says what a piece of work waits for, for those who read the list', () => {
    const fit = view().graph.nodes.find((node) => node.key === 'task:task-fit');
    expect(fit?.after.map((one) => one.title).toSorted()).toEqual(['Paint the frame', 'Powder coat the wheel']);
  });

  it('names a ring and still draws', () => {
    const back = { ...sampleSeries().links[0], id: 'link-back', from: { kind: 'task', id: 'task-paint' }, to: { kind: 'task', id: 'task-prime' } } as const;
    const links = [...sampleSeries().links, { ...sampleSeries().links[1]!, ...back, kind: 'link' as const, name: 'Back' }];
    const { ring, nodes } = view(sampleSeries({ links })).graph;
    expect(ring.toSorted()).toEqual(['Paint the frame', 'Prime the frame']);
    expect(nodes).toHaveLength(7);
  });

  it('is empty without work', () => {
    expect(view(sampleSeries({ tasks: [], outsideJobs: [], links: [] })).graph).toMatchObject({ width: 0, height: 0, nodes: [] });
  });
});

describe('layers', () => {
  it('leave out an arc that others imply, unless it is to be kept', () => {
    const arcs = [{ from: 'a', to: 'b' }, { from: 'b', to: 'c' }, { from: 'a', to: 'c' }];
    expect(reduceArcs(arcs, () => false)).toHaveLength(2);
    expect(reduceArcs(arcs, () => true)).toHaveLength(3);
  });

  it('leave out the arc that closes a ring', () => {
    expect(reduceArcs([{ from: 'a', to: 'b' }, { from: 'b', to: 'a' }, { from: 'c', to: 'c' }], () => true)).toEqual([{ from: 'a', to: 'b' }]);
  });

  it('run a long arc through the columns between', () => {
    const { ways, levelOf } = layOutLayers(['a', 'b', 'c'], [{ from: 'a', to: 'b' }, { from: 'b', to: 'c' }, { from: 'a', to: 'c' }]);
    expect(levelOf.get('c')).toBe(2);
    expect(ways[2]).toHaveLength(3);
  });

  it('spread heights as near to the wished ones as the gaps allow', () => {
    expect(spreadHeights([0, 0, 0], [1, 1, 1])).toEqual([-1, 0, 1]);
    expect(spreadHeights([0, 5, 5.5], [1, 1, 1])).toEqual([0, 4.75, 5.75]);
  });
});
