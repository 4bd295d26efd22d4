/** Both sides of each check of the story, of what is published and of who is in it. */
import type { CivilDate, Episode, Segment, SeriesDocument, Sponsorship, Statement } from '@/lib/build';
import type { KnownElsewhere } from '@/lib/continuity';
import { steadyClimate } from '@/lib/climate';
import { coatMaterialOf, createCoatClock } from '@/lib/cure';
import { buildChecklist } from '@/lib/safety';
import { addMinutes } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { later, tue, withTasks, type CheckCase } from './check-case';
import { block, LOOK, take } from './sample-log';

const known = (more: Partial<KnownElsewhere> = {}): KnownElsewhere => ({ coatOf: null, ratioOf: () => null, feasibleOn: new Map(), ...more });
/** Air and surface at 20 °C. */
export const humid = (humidity: number) => known({ coatOf: (_airZone, material) => createCoatClock(steadyClimate(at('2026-12-10', '00:00'), 480, { air: 20, surface: 20, humidity }), coatMaterialOf(material)) });

export const segment = (id: string, order: number, more: Partial<Segment> = {}): Segment => ({
  kind: 'segment', id, revision: 1, order, name: id, episodeId: 'episode-1', role: 'work', length: 3, isResult: false, hook: 0, hang: 0, thread: '', isEvergreen: false, isFlashback: false,
  storyDate: null, ending: 'free', taskIds: [], ...more,
});
const sponsor = (more: Partial<Sponsorship> = {}): Sponsorship => ({
  kind: 'sponsorship', id: 'owed-1', revision: 1, order: 0, name: 'Discs', sponsor: 'Abrasives', what: '', exclusiveIn: '', episodeId: 'episode-1', part: 'anywhere', dueDate: null,
  minimumSeconds: 30, spotStart: 60, spotEnd: 100, disclosureText: 'Paid promotion', spokenAt: 50, shownFrom: 50, shownUntil: 56, needsApproval: false, approvedOn: null, ...more,
});
const withEpisode = (document: SeriesDocument, more: Partial<Episode>): SeriesDocument => ({ ...document, episodes: document.episodes.map((one) => (one.id === 'episode-1' ? { ...one, ...more } : one)) });

/** The second segment of a cut episode shows fuel; its caution stands at a label. Cautions of other hazards stand at the start. */
function cautionAt(timecode: string, more: Partial<Segment> = {}): SeriesDocument {
  const base = withEpisode(withTasks({ 'task-strip': { hazards: { facts: ['under-raised-load'], toolShare: 1, sprayed: null, departure: null } }, 'task-clean': { isNoisy: false } }, {
    segments: [segment('talk', 0), segment('strip', 1, { taskIds: ['task-strip'], ...more })],
  }), { status: 'cut' });
  const statements = buildChecklist(base, 'episode-1', { combinations: [] }).items.filter(({ kind }) => kind === 'caption').map((item, index): Statement => ({
    kind: 'statement', id: `signed-${index}`, revision: 1, order: index, name: 'Signed', personId: 'person-kim', signedBy: 'Kim', at: tue, reason: '',
    about: { sort: 'evidence', episodeId: 'episode-1', itemId: item.id, fingerprint: item.fingerprint, evidence: { kind: 'take', take: 'cut 1', timecode } },
  }));
  return { ...base, statements };
}

const alone = { sessions: sampleSeries().sessions.map((session) => ({ ...session, crewIds: ['person-kim'] })) };
const raised = { hazards: { facts: ['under-raised-load'], toolShare: 1, sprayed: null, departure: null } } as const;
const highVoltage = { hazards: { facts: ['high-voltage-open'], toolShare: 1, sprayed: null, departure: null } } as const;
const deferral: Statement = {
  kind: 'statement', id: 'signed', revision: 1, order: 0, name: 'Signed', personId: 'person-kim', signedBy: 'Kim', at: tue, reason: 'Robin is licensed for it',
  about: { sort: 'evidence', episodeId: 'episode-1', itemId: 'deferral:high-voltage', fingerprint: '', evidence: { kind: 'exception' } },
};
const agreed = (until: CivilDate | null = null) => ({ people: sampleSeries().people.map((person) => ({ ...person, consent: { givenOn: '2026-11-01', until, where: '' } })) });
const usable = (usableUntil: CivilDate) => ({ materials: sampleSeries().materials.map((material) => ({ ...material, usableUntil })) });
const everyRelease = (one: CivilDate | null, two: CivilDate | null) => known({ feasibleOn: new Map([['episode-1', one], ['episode-2', two]]) });
const beforeBlock = (start: typeof later) => block('task-strip', start, 1, { id: 'before:shot-before', kind: 'before-shot', crewIds: ['person-kim'] });
const promised = (promisedFor: CivilDate) => ({ outsideJobs: sampleSeries().outsideJobs.map((job) => ({ ...job, droppedOffAt: at('2026-12-01', '09:00'), promisedFor })) });
const inSession = take({}, { taskId: 'task-strip', at: at('2026-12-03', '19:00') });
const stripThenPrime = { 'task-strip': { doneAt: tue }, 'task-prime': { doneAt: at('2026-12-03', '20:00') }, 'task-paint': { doneAt: at('2026-12-05', '12:00') } };
const told = (...segments: readonly Segment[]) => withTasks(stripThenPrime, { segments });

export const STORY_CASES: readonly CheckCase[] = [
  [2, 'a planned before-shot of a part that has moved on', { blocks: [block('task-strip', later, 1), beforeBlock(addMinutes(later, 60))] }, { blocks: [beforeBlock(later), block('task-strip', addMinutes(later, 60), 1)] }],
  [7, 'a coat after the last day of its batch', { document: sampleSeries(usable('2026-12-11')), blocks: [block('task-prime', later, 1)] }, { document: sampleSeries(usable('2026-12-12')), blocks: [block('task-prime', later, 1)] }],
  [9, 'air too near its dew point', { blocks: [block('task-prime', later, 1, { placeId: 'place-spray' })], known: humid(84) }, { blocks: [block('task-prime', later, 1, { placeId: 'place-spray' })], known: humid(82) }],
  [14, 'a hazard met with nobody else in the building', { document: withTasks({ 'task-strip': raised }, alone), blocks: [block('task-strip', at('2026-12-12', '11:00'), 1, { crewIds: ['person-kim'] })] },
    { document: withTasks({ 'task-strip': raised }), blocks: [block('task-strip', at('2026-12-12', '11:00'), 1, { crewIds: ['person-kim'] })] }],
  [14, 'a hazard for somebody licensed that nobody has signed for', { document: withTasks({ 'task-strip': highVoltage }), blocks: [block('task-strip', later, 1, { crewIds: ['person-kim'] })] },
    { document: withTasks({ 'task-strip': highVoltage }, { statements: [deferral] }), blocks: [block('task-strip', later, 1, { crewIds: ['person-kim'] })] }],
  [15, 'a cut episode without its cautions', { document: { ...cautionAt('00:00:01:00'), statements: [] } }, { document: withEpisode(cautionAt('00:00:01:00'), { status: 'recorded' }) }],
  [15, 'a caution a second after the hazard is shown in the cut', { document: cautionAt('00:03:31:00', { cutStart: 210 }) }, { document: cautionAt('00:03:30:00', { cutStart: 210 }) }],
  [15, 'a caution after the end of the segment by its length', { document: cautionAt('00:06:31:00') }, { document: cautionAt('00:06:30:00') }],
  [16, 'a disclosure of nine words in under three seconds', { document: sampleSeries({ sponsorships: [sponsor({ disclosureText: 'one two three four five six seven eight nine', shownFrom: 50, shownUntil: 52.9 })] }) },
    { document: sampleSeries({ sponsorships: [sponsor({ disclosureText: 'one two three four five six seven eight nine', shownFrom: 50, shownUntil: 53 })] }) }],
  [17, 'segments that show paint before primer', { document: told(segment('paint', 0, { taskIds: ['task-paint'] }), segment('prime', 1, { taskIds: ['task-prime'] })) },
    { document: told(segment('paint', 0, { taskIds: ['task-paint'] }), segment('prime', 1, { taskIds: ['task-prime'], isFlashback: true })) }],
  [17, 'takes filmed later shown before those filmed earlier', {
    document: told(segment('paint', 0, { taskIds: ['task-paint'] }), segment('strip', 1, { taskIds: ['task-strip'] })),
    entries: [take({}, { taskId: 'task-strip', at: at('2026-12-01', '18:00') }), take({}, { taskId: 'task-paint', at: at('2026-12-05', '11:00') })],
  }, {
    // Filmed before the work was done, both show the frame as it was bought.
    document: told(segment('paint', 0, { taskIds: ['task-paint'] }), segment('strip', 1, { taskIds: ['task-strip'] })),
    entries: [take({}, { taskId: 'task-strip', at: at('2026-12-01', '18:00') }), take({}, { taskId: 'task-paint', at: at('2026-12-01', '18:10') })],
  }],
  [18, 'another coat between two segments of one day', {
    document: sampleSeries({ segments: [segment('one', 0, { taskIds: ['task-strip'] }), segment('two', 1, { taskIds: ['task-clean'] })] }),
    entries: [take({}, { taskId: 'task-strip', at: tue, look: { ...LOOK, light: 'two panels' } }), take({}, { taskId: 'task-clean', at: later, look: { ...LOOK, light: 'daylight' } })],
  }, {
    document: sampleSeries({ segments: [segment('one', 0, { taskIds: ['task-strip'], storyDate: '2026-12-01' }), segment('two', 1, { taskIds: ['task-clean'], storyDate: '2026-12-02' })] }),
    entries: [take({}, { taskId: 'task-strip', at: tue, look: { ...LOOK, light: 'two panels' } }), take({}, { taskId: 'task-clean', at: later, look: { ...LOOK, light: 'daylight' } })],
  }],
  [23, 'a claim that starts before it is said to be paid for', { document: sampleSeries({ sponsorships: [sponsor({ spokenAt: 61 })] }) }, { document: sampleSeries({ sponsorships: [sponsor({ spokenAt: 60 })] }) }],
  [23, 'a cut episode whose sponsor is not disclosed', { document: withEpisode(sampleSeries({ sponsorships: [sponsor({ spotStart: null, spotEnd: null, spokenAt: null })] }), { status: 'cut' }) },
    { document: sampleSeries({ sponsorships: [sponsor({ spotStart: null, spotEnd: null, spokenAt: null })] }) }],
  [24, 'two sponsors of one trade in one episode', { document: sampleSeries({ sponsorships: [sponsor({ exclusiveIn: 'abrasives' }), sponsor({ id: 'owed-2', order: 1, sponsor: 'Others', exclusiveIn: 'Abrasives ' })] }) },
    { document: sampleSeries({ sponsorships: [sponsor({ exclusiveIn: 'abrasives' }), sponsor({ id: 'owed-2', order: 1, sponsor: 'Others', exclusiveIn: 'Abrasives', episodeId: 'episode-2' })] }) }],
  [25, 'a sponsor’s day before the release', { document: sampleSeries({ sponsorships: [sponsor({ dueDate: '2026-12-19' })] }) }, { document: sampleSeries({ sponsorships: [sponsor({ dueDate: '2026-12-20' })] }) }],
  [25, 'a sponsor’s day that the plan cannot meet', { document: sampleSeries({ sponsorships: [sponsor({ dueDate: '2026-12-20' })] }), known: everyRelease('2026-12-21', null) }, { document: sampleSeries({ sponsorships: [sponsor({ dueDate: '2026-12-20' })] }), known: everyRelease('2026-12-20', null) }],
  [27, 'a batch that ran out yesterday with work left for it', { document: sampleSeries(usable('2026-12-09')) }, { document: sampleSeries(usable('2026-12-10')) }],
  [27, 'a consent that ends before the release', { document: sampleSeries(agreed('2026-12-19')), entries: [inSession] }, { document: sampleSeries(agreed('2026-12-20')), entries: [inSession] }],
  [28, 'a week that ends with too few episodes in hand', { known: everyRelease('2026-12-18', '2026-12-28') }, { document: { ...sampleSeries(), series: { ...sampleSeries().series, bankMinimum: 0 } }, known: everyRelease('2026-12-18', '2026-12-28') }],
  // 64 + 64 GB to 90 % at 100 Mb/s, 45 GB an hour: 153.6 minutes.
  [29, 'more to be filmed than the cards hold', { document: withTasks({ 'task-strip': { coverage: 'locked-off' } }), blocks: [block('task-strip', later, 2.57)] }, { document: withTasks({ 'task-strip': { coverage: 'locked-off' } }), blocks: [block('task-strip', later, 2.56)] }],
  [33, 'somebody in a recording session who has not agreed', { entries: [inSession] }, { document: sampleSeries(agreed()), entries: [inSession] }],
  [33, 'somebody on filmed work who has not agreed', { blocks: [block('task-fit', later, 1, { crewIds: ['person-kim'] })] }, { blocks: [block('task-clean', later, 1, { crewIds: ['person-kim'] })] }],
  [35, 'filmed work that has no take at all, done while the log was kept', { document: withTasks({ 'task-strip': { doneAt: tue, shots: [] } }), entries: [take({}, { taskId: 'task-clean', at: tue })] },
    { document: withTasks({ 'task-strip': { doneAt: tue, shots: [] } }), entries: [take({}, { taskId: 'task-clean', at: addMinutes(tue, 1) })] }],
  [35, 'a result in the story that no picture shows', {
    document: withTasks({ 'task-strip': { doneAt: tue, shots: [] } }, { segments: [segment('bare', 0, { isResult: true, taskIds: ['task-strip'] })] }),
    entries: ['wide', 'close'].map((size) => take({ size: size === 'wide' ? 'wide' : 'close' }, { taskId: 'task-strip', at: addMinutes(tue, -1) })),
  }, {
    document: withTasks({ 'task-strip': { doneAt: tue, shots: [] } }, { segments: [segment('bare', 0, { isResult: true, taskIds: ['task-strip'] })] }),
    entries: ['wide', 'close'].map((size) => take({ size: size === 'wide' ? 'wide' : 'close' }, { taskId: 'task-strip', at: tue })),
  }],
  [37, 'work before the day that the trade has promised', { document: sampleSeries(promised('2026-12-09')), blocks: [block('task-fit', at('2026-12-09', '07:59'), 1, { partIds: ['part-wheel'] })] },
    { document: sampleSeries(promised('2026-12-09')), blocks: [block('task-fit', at('2026-12-09', '08:00'), 1, { partIds: ['part-wheel'] })] }],
];
