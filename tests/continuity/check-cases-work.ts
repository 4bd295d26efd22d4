/** Both sides of each check of the work and of what was filmed of it. */
import { addMinutes, minutes } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { cameraA, cameraB, later, R25, shot, tue, withTasks, type CheckCase } from './check-case';
import { block, entry, LOOK, take } from './sample-log';

const wetUntil = (start: ReturnType<typeof at>, recoatUntil: ReturnType<typeof at> | null = null) => ({
  materialId: 'material-primer', touchDry: addMinutes(start, 120), recoatFrom: addMinutes(start, 240), recoatUntil, handle: addMinutes(start, 600), fullCure: addMinutes(start, 6000),
});
const cure = (taskId: string, start: ReturnType<typeof at>, until: ReturnType<typeof at> | null = null) =>
  block(taskId, start, 4, { id: `cure:${taskId}`, kind: 'cure', stages: wetUntil(start, until) });
export const promise = { kind: 'promise', id: 'p1', revision: 1, order: 0, name: 'It will shine', saidInId: null, where: '', dueId: 'episode-1', closure: 'open', reason: '', closedInId: null } as const;
const strip = { doneAt: tue };

/** Checks of the work and of what was filmed. */
export const WORK_CASES: readonly CheckCase[] = [
  [1, 'an irreversible task done without its must-have shot', { document: withTasks({ 'task-strip': strip }) },
    { document: withTasks({ 'task-strip': strip }), entries: [take({}, { taskId: 'task-strip', shotId: 'shot-before', at: at('2026-12-01', '18:00') })] }],
  [1, 'a good take that comes too late', { document: withTasks({ 'task-strip': strip }), entries: [take({}, { taskId: 'task-strip', shotId: 'shot-before', at: at('2026-12-01', '18:31') })] },
    { document: withTasks({ 'task-strip': strip }), entries: [take({}, { taskId: 'task-strip', shotId: 'shot-before', at: tue })] }],
  [2, 'a before-shot of a part that is stripped already', { document: withTasks({ 'task-strip': strip }), entries: [take({}, { taskId: 'task-strip', shotId: 'shot-before', at: at('2026-12-02', '18:00') })] },
    { document: withTasks({ 'task-strip': strip }), entries: [take({}, { taskId: 'task-strip', shotId: 'shot-before', at: at('2026-12-01', '17:00') })] }],
  [3, 'a take of a part that is away', { document: { ...sampleSeries(), outsideJobs: sampleSeries().outsideJobs.map((job) => ({ ...job, droppedOffAt: tue })) }, entries: [take({}, { taskId: 'task-fit', at: at('2026-12-02', '12:00') })] },
    { entries: [take({}, { taskId: 'task-fit', at: at('2026-12-02', '12:00') })] }],
  [4, 'a task whose part is in another state', { blocks: [block('task-clean', later, 2)] }, { blocks: [block('task-strip', later, 2), block('task-clean', at('2026-12-12', '13:00'), 2)] }],
  [4, 'two tasks on one part at once', { blocks: [block('task-strip', later, 2), block('task-clean', at('2026-12-12', '11:00'), 2)] }, { blocks: [block('task-strip', later, 2), block('task-clean', at('2026-12-12', '12:00'), 2)] }],
  [5, 'a task that starts a minute before the coat is ready', { blocks: [cure('task-prime', later), block('task-paint', addMinutes(later, 239), 1)] }, { blocks: [cure('task-prime', later), block('task-paint', addMinutes(later, 240), 1)] }],
  [6, 'a coat after the window', { blocks: [cure('task-prime', later, addMinutes(later, 300)), block('task-paint', addMinutes(later, 301), 1)] }, { blocks: [cure('task-prime', later, addMinutes(later, 300)), block('task-paint', addMinutes(later, 300), 1)] }],
  [7, 'a coat that takes longer than the pot life', { document: { ...sampleSeries(), materials: sampleSeries().materials.map((one) => ({ ...one, potLife: minutes(59) })) } }, { document: { ...sampleSeries(), materials: sampleSeries().materials.map((one) => ({ ...one, potLife: minutes(60) })) } }],
  [8, 'dust beside a wet coat', { document: withTasks({ 'task-fit': { isDusty: true } }), blocks: [block('task-prime', later, 1), cure('task-prime', addMinutes(later, 60)), block('task-fit', addMinutes(later, 179), 1)] },
    { document: withTasks({ 'task-fit': { isDusty: true } }), blocks: [block('task-prime', later, 1), cure('task-prime', addMinutes(later, 60)), block('task-fit', addMinutes(later, 180), 1)] }],
  [8, 'dust that has not settled', { document: withTasks({ 'task-fit': { isDusty: true } }), blocks: [block('task-fit', later, 1), block('task-prime', addMinutes(later, 104), 1), cure('task-prime', addMinutes(later, 164))] },
    { document: withTasks({ 'task-fit': { isDusty: true } }), blocks: [block('task-fit', later, 1), block('task-prime', addMinutes(later, 105), 1), cure('task-prime', addMinutes(later, 165))] }],
  [10, 'somebody in two places', { blocks: [block('task-strip', later, 2, { crewIds: ['person-kim'] }), block('task-fit', addMinutes(later, 119), 1, { crewIds: ['person-kim'] })] }, { blocks: [block('task-strip', later, 2, { crewIds: ['person-kim'] }), block('task-fit', addMinutes(later, 120), 1, { crewIds: ['person-kim'] })] }],
  [11, 'three tasks where two fit', { blocks: ['task-strip', 'task-clean', 'task-fit'].map((id) => block(id, later, 2)) }, { blocks: ['task-strip', 'task-clean'].map((id) => block(id, later, 2)) }],
  [12, 'noise in a quiet session', { document: withTasks({ 'task-strip': { isNoisy: true } }), blocks: [block('task-strip', tue, 1)] }, { document: withTasks({ 'task-strip': { isNoisy: true } }), blocks: [block('task-strip', at('2026-12-05', '10:00'), 1)] }],
  [12, 'speech beside noise', { document: withTasks({ 'task-strip': { isNoisy: true } }), blocks: [block('task-strip', at('2026-12-05', '10:00'), 1), block('task-closing', at('2026-12-05', '10:30'), 1)] },
    { document: withTasks({ 'task-strip': { isNoisy: true } }), blocks: [block('task-strip', at('2026-12-05', '10:00'), 1), block('task-closing', at('2026-12-05', '11:00'), 1)] }],
  [13, 'daylight work in the evening', { document: withTasks({ 'task-strip': { conditions: { minimumTemperature: null, needsDaylight: true } } }), blocks: [block('task-strip', tue, 1)] },
    { document: withTasks({ 'task-strip': { conditions: { minimumTemperature: null, needsDaylight: true } } }), blocks: [block('task-strip', at('2026-12-05', '10:00'), 1)] }],
  [14, 'one person where two are needed', { blocks: [block('task-fit', later, 1, { crewIds: ['person-kim'] })] }, { blocks: [block('task-fit', later, 1, { crewIds: ['person-kim', 'person-robin'] })] }],
  [17, 'an episode that shows paint before primer', { document: withTasks({ 'task-prime': { doneAt: at('2026-12-03', '20:00'), episodeId: 'episode-2' }, 'task-paint': { doneAt: at('2026-12-05', '12:00'), episodeId: 'episode-1' } }) },
    { document: withTasks({ 'task-prime': { doneAt: at('2026-12-03', '20:00'), episodeId: 'episode-1' }, 'task-paint': { doneAt: at('2026-12-05', '12:00'), episodeId: 'episode-2' } }) }],
  [18, 'another coat in the next picture', {
    entries: [take({}, { taskId: 'task-strip', at: tue, look: { ...LOOK, clothes: 'blue coat' } }), take({}, { taskId: 'task-clean', at: later, look: { ...LOOK, clothes: 'brown coat' } })],
  }, { entries: [take({}, { taskId: 'task-strip', at: tue, look: { ...LOOK, clothes: 'blue coat' } }), take({}, { taskId: 'task-clean', at: later, look: { ...LOOK, clothes: 'Blue coat ' } })] }],
  [19, 'a pickup of a part that has moved on', { document: withTasks({ 'task-strip': { ...strip, shots: [shot('main', 'during'), shot('again', 'pickup')] } }), entries: [take({}, { taskId: 'task-strip', shotId: 'main', at: at('2026-12-01', '18:00') }), take({}, { taskId: 'task-strip', shotId: 'again', at: later })] },
    { document: withTasks({ 'task-strip': { ...strip, shots: [shot('main', 'during'), shot('again', 'pickup')] } }), entries: [take({}, { taskId: 'task-strip', shotId: 'main', at: at('2026-12-01', '18:40') }), take({}, { taskId: 'task-strip', shotId: 'again', at: later })] }],
  [20, 'a re-enactment without a label', { entries: [take({ isReenacted: true })] }, { entries: [take({ isReenacted: true, reenactmentLabel: 'Shown again for the camera' })] }],
  [21, 'a promise whose episode is out', { document: sampleSeries({ promises: [promise] }), now: at('2026-12-21', '12:00') }, { document: sampleSeries({ promises: [promise] }), now: at('2026-12-20', '12:00') }],
  [22, 'a departure without its warning', { entries: [entry({ kind: 'departure', departure: { manualValue: '25 Nm', ownValue: '22 Nm', reason: 'soft thread', warning: '', isSpoken: true, isCaptioned: true } })] },
    { entries: [entry({ kind: 'departure', departure: { manualValue: '25 Nm', ownValue: '22 Nm', reason: 'soft thread', warning: 'do not copy', isSpoken: true, isCaptioned: true } })] }],
  [26, 'recording that ends after its due day', { blocks: [block('task-strip', at('2026-12-15', '23:30'), 1)] }, { blocks: [block('task-strip', at('2026-12-15', '23:00'), 1)] }],
  [30, 'a card wiped with one verified copy', { entries: (['copied', 'copy verified', 'reformatted'] as const).map((what) => entry({ kind: 'card', card: { card: 'A1', what } })) }, { entries: (['copy verified', 'copy verified', 'reformatted'] as const).map((what) => entry({ kind: 'card', card: { card: 'A1', what } })) }],
  [31, 'takes that overlap on one camera', { document: sampleSeries({ cameras: [cameraA] }), entries: [take({ cameraId: 'camera-a', format: R25, startFrame: 100, endFrame: 200 }), take({ cameraId: 'camera-a', format: R25, startFrame: 199, endFrame: 300 })] },
    { document: sampleSeries({ cameras: [cameraA] }), entries: [take({ cameraId: 'camera-a', format: R25, startFrame: 100, endFrame: 200 }), take({ cameraId: 'camera-a', format: R25, startFrame: 200, endFrame: 300 })] }],
  [31, 'a take at another rate than its camera', { document: sampleSeries({ cameras: [cameraA] }), entries: [take({ cameraId: 'camera-a', format: { ...R25, rate: { numerator: 30, denominator: 1 } }, startFrame: 1, endFrame: 2 })] }, { document: sampleSeries({ cameras: [cameraA] }), entries: [take({ cameraId: 'camera-a', format: R25, startFrame: 1, endFrame: 2 })] }],
  [31, 'a frame after the last of a day', { entries: [take({ format: R25, startFrame: 1, endFrame: 2_160_001 })] }, { entries: [take({ format: R25, startFrame: 1, endFrame: 2_160_000 })] }],
  [32, 'a camera two seconds ahead', { document: sampleSeries({ cameras: [{ ...cameraA, clockOffset: 2 }] }) }, { document: sampleSeries({ cameras: [{ ...cameraA, clockOffset: 1 }] }) }],
  [34, 'a part seen in a state that no work has made', { entries: [entry({ kind: 'state', observed: [{ partId: 'part-frame', stateId: 'frame-primed', whereabouts: null }] })] }, { entries: [entry({ kind: 'state', observed: [{ partId: 'part-frame', stateId: 'frame-bought', whereabouts: null }] })] }],
  [35, 'done work without a close picture', { document: withTasks({ 'task-strip': { ...strip, shots: [] } }), entries: [take({ size: 'wide' }, { taskId: 'task-strip' })] },
    { document: withTasks({ 'task-strip': { ...strip, shots: [] } }), entries: [take({ size: 'wide' }, { taskId: 'task-strip' }), take({ size: 'close' }, { taskId: 'task-strip' })] }],
  [36, 'filming beside a time-lapse with one camera', { document: sampleSeries({ cameras: [cameraA] }), blocks: [block('task-paint', later, 3, { placeId: 'place-spray' }), block('task-fit', addMinutes(later, 60), 1)] },
    { document: sampleSeries({ cameras: [cameraA, cameraB] }), blocks: [block('task-paint', later, 3, { placeId: 'place-spray' }), block('task-fit', addMinutes(later, 60), 1)] }],
  [37, 'a return that may come after the first use', { blocks: [block('job-wheel', at('2026-12-01', '09:00'), 100, { id: 'away:job-wheel', kind: 'away', subject: { kind: 'outsideJob', id: 'job-wheel' }, partIds: ['part-wheel'] }), block('task-fit', at('2026-12-08', '07:59'), 1, { partIds: ['part-wheel'] })] },
    { blocks: [block('job-wheel', at('2026-12-01', '09:00'), 100, { id: 'away:job-wheel', kind: 'away', subject: { kind: 'outsideJob', id: 'job-wheel' }, partIds: ['part-wheel'] }), block('task-fit', at('2026-12-12', '10:00'), 1, { partIds: ['part-wheel'] })] }],
  [38, 'work that waits for itself', { document: sampleSeries({ links: [...sampleSeries().links, { ...sampleSeries().links[0]!, id: 'link-back', from: { kind: 'task', id: 'task-paint' }, to: { kind: 'task', id: 'task-strip' }, stage: null }] }) }, {}],
  [39, 'a coat stripped off again', { document: withTasks({ 'task-prime': { doneAt: tue } }), entries: [entry({ kind: 'state', at: later, observed: [{ partId: 'part-frame', stateId: 'frame-stripped', whereabouts: null }] })] }, { document: withTasks({ 'task-prime': { doneAt: tue } }) }],
  [40, 'one camera for what happens once', { document: sampleSeries({ cameras: [cameraA] }) }, { document: sampleSeries({ cameras: [cameraA, cameraB] }) }],
];
