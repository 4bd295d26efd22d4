import { describe, expect, it, test } from 'vitest';
import { deriveOrder, listShotsAhead, shownStates, type Shot, type ShownState, type Task } from '@/lib/build';
import { minutes } from '@/lib/units';
import { at, sampleSeries, sampleTask, withTask } from '../sample-series';
import { codesOf, issuesOf } from './rule-cases';

const shot = (purpose: Shot['purpose'], states: readonly ShownState[], more: Partial<Shot> = {}): Shot => ({
  id: 'shot-a', name: 'Both in one picture', purpose, time: minutes(10), mustHave: true, filmedAt: null, states, ...more,
});
const frame = (stateId: string): ShownState => ({ partId: 'part-frame', stateId: `frame-${stateId}` });
const wheel = (stateId: string): ShownState => ({ partId: 'part-wheel', stateId: `wheel-${stateId}` });
const filmed = (id: string, shots: readonly Shot[], more: Partial<Task> = {}) => withTask(id, { shots, ...more });

describe('a shot of the part that its task works on', () => {
  it.each([
    ['before', 'stripped', []], ['before', 'clean', ['shot-state-contradicts-work']], ['before', 'primed', ['shot-state-contradicts-work']],
    ['after', 'clean', []], ['after', 'stripped', ['shot-state-contradicts-work']],
    ['during', 'stripped', []], ['during', 'clean', []], ['during', 'painted', ['shot-state-contradicts-work']],
  ] as const)('%s the work, in the state %s: %j', (purpose, state, codes) => {
    expect(codesOf(filmed('task-clean', [shot(purpose, [frame(state)])]))).toEqual(codes);
  });

  it('says what the work has, and where', () => {
    const [found] = issuesOf(filmed('task-clean', [shot('before', [frame('clean')])]), 'shot-state-contradicts-work');
    expect(found).toMatchObject({
      severity: 'stop', path: ['shots', 0, 'states', 0, 'stateId'],
      message: 'The shot “Both in one picture” of the task “Clean the frame” shows the part “Frame” “clean”, and the work has it “stripped” before it starts.',
    });
  });

  it('cannot be before the work in a state that only the work brings', () => {
    const [found] = issuesOf(filmed('task-clean', [shot('before', [frame('clean')])], { parts: [{ partId: 'part-frame', from: null, to: 'frame-clean' }] }), 'shot-state-contradicts-work');
    expect(found?.message).toMatch(/and this work only brings it there\.$/);
  });
});

test('a part twice, a state of another part and a part that is gone are refused', () => {
  expect(codesOf(filmed('task-clean', [shot('during', [frame('clean'), frame('stripped')])]))).toEqual(['shot-part-twice']);
  expect(codesOf(filmed('task-clean', [shot('during', [{ partId: 'part-frame', stateId: 'wheel-bare' }])]))).toEqual(['state-of-another-part']);
  expect(codesOf(filmed('task-clean', [shot('during', [{ partId: 'part-tank', stateId: 'tank-dull' }])]))).toEqual(['reference-missing']);
});

describe('a shot of a part that other work is done on', () => {
  it('puts its task between the work that brings the part there and the work that takes it away', () => {
    const order = deriveOrder(filmed('task-closing', [shot('piece to camera', [wheel('fitted')])])).filter(({ because }) => because.kind === 'part-state' && because.partId === 'part-wheel' && because.stateId === 'wheel-fitted');
    expect(order.map(({ from, to }) => [from.id, to.id])).toEqual([['task-fit', 'task-closing']]);
    const before = deriveOrder(filmed('task-prime', [shot('insert', [wheel('bare')])])).filter(({ because }) => because.kind === 'part-state' && because.stateId === 'wheel-bare');
    expect(before.map(({ from, to }) => [from.id, to.id])).toEqual([['task-prime', 'job-wheel']]);
  });

  it('no longer does once it is filmed', () => {
    const order = deriveOrder(filmed('task-closing', [shot('piece to camera', [wheel('fitted')], { filmedAt: at('2026-12-01', '19:00') })]));
    expect(order.some(({ because }) => because.kind === 'part-state' && because.stateId === 'wheel-fitted')).toBe(false);
  });

  it('is refused where the order of the work contradicts it', () => {
    const [found] = issuesOf(filmed('task-strip', [shot('during', [wheel('fitted')])]), 'work-goes-round');
    expect(found?.message).toContain('“Strip the frame” comes after “Fit the wheel” through “Wheel” in “fitted”');
  });

  it('is pointed out when the part has left the state already', () => {
    const document = filmed('task-closing', [shot('insert', [wheel('bare')])]);
    const away = { ...document, outsideJobs: document.outsideJobs.map((job) => ({ ...job, droppedOffAt: at('2026-12-01', '12:00'), collectedAt: at('2026-12-08', '12:00') })) };
    expect(issuesOf(away, 'shot-state-left')).toMatchObject([{ severity: 'warn', message: expect.stringContaining('“Powder coat the wheel” has taken it out of that state already') }]);
  });
});

describe('a shot ahead of work that happens once', () => {
  it('comes before the work that changes what it shows, which its task need not', () => {
    const [ahead] = listShotsAhead(filmed('task-strip', [shot('before', [frame('bought'), wheel('bare')])]));
    expect(ahead).toMatchObject({ shown: wheel('bare'), makers: [], takers: [{ ref: { id: 'job-wheel' } }] });
    expect(codesOf(filmed('task-strip', [shot('before', [wheel('bare')])]))).toEqual([]);
  });

  it('is refused when what it shows comes only after the work, at however many removes', () => {
    const [found] = issuesOf(filmed('task-strip', [shot('before', [wheel('fitted')])]), 'shot-state-never-there');
    expect(found).toMatchObject({ path: ['shots', 0, 'states', 0, 'stateId'], message: expect.stringContaining('it is not in that state before “Strip the frame” starts') });
  });
});

test('viewers see the states that shots name, and of other parts the state the work leaves', () => {
  const task = sampleTask('t', 0, 'Fit', {
    parts: [{ partId: 'part-frame', from: 'frame-painted', to: 'frame-wheeled' }, { partId: 'part-wheel', from: 'wheel-coated', to: 'wheel-fitted' }],
    shots: [shot('before', [wheel('coated')]), shot('during', [wheel('coated')])],
  });
  expect(shownStates(task)).toEqual([wheel('coated'), frame('wheeled')]);
});

test('the sample asks for nothing and has nothing to tell', () => {
  expect(codesOf(sampleSeries())).toEqual([]);
});
