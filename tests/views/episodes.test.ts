import { expect, test } from 'vitest';
import { instantOf } from '@/lib/calendar';
import { instant } from '@/lib/units';
import { gatherFacts } from '@/lib/continuity';
import { computeEpisode } from '@/lib/views/episode';
import { datedWork } from '@/lib/plan';
import { gatherFootage } from '@/lib/safety';
import { summariseContinuity, summariseSafety } from '@/lib/views/episode-summaries';
import { computeEpisodes } from '@/lib/views/episodes';
import { viewEstimates } from '@/lib/views/estimates';
import { demoSeries, DEMO_ZONE } from '@/seed/demo';
import { at, sampleSeries } from '../build/sample-series';

const MONDAY = '2026-11-30';
const NOW = instant(instantOf(MONDAY, '09:00', DEMO_ZONE));
const demo = { document: demoSeries(MONDAY), plan: null, now: NOW };

test('the shelf has every episode with its runtime, its time and what stands in its way', () => {
  const view = computeEpisodes(demo, 7);
  expect(view.reels).toHaveLength(18);
  expect(view.reels[0]).toMatchObject({ name: 'Under the tarpaulin', stage: 'recorded', runtime: { minutes: 16, isInside: true }, results: 1 });
  expect(view.reels[0]!.open).toEqual(['1 point owed to sponsors stops its release']);
  expect(view.reels[1]!.standing.text).toMatch(/^It needs .+ of the crew's time, .+ at P80; .+ are free/);
  expect(view.loose.map(({ name }) => name)).toEqual(['The floor was never there', 'Three rims, bare metal', 'Three rims in black', 'Why no spanner fits']);
});

test('three proposals are made, each with its reasons, and only for episodes that are not recorded', () => {
  const { proposals, proposalIssues } = computeEpisodes(demo, 7);
  expect(proposalIssues).toEqual([]);
  expect(proposals.map(({ title }) => title)).toEqual(['Best', 'Second', 'Third']);
  for (const { episodes, moves } of proposals) {
    expect(moves).toBeGreaterThan(0);
    expect(episodes[0]!.name).toBe('Down to the frame');
    expect(episodes[0]!.reasons).toMatch(/ min, .+ results?, opens at \d+ %, leaves \d+ % open$/);
  }
});

test('a fortnightly cadence is tried without changing anything', () => {
  const [weekly, fortnightly] = [computeEpisodes(demo, 7).bank, computeEpisodes(demo, 14).bank];
  expect(weekly.choices.map(({ days }) => days)).toEqual([7, 14]);
  expect(fortnightly.weeks.length).toBeGreaterThan(weekly.weeks.length);
  expect(fortnightly.summary).toContain('Every 14 days');
});

test('an episode that is short of time says what would make it fit', () => {
  const busy = { ...demo, document: { ...demo.document, sessions: demo.document.sessions.slice(0, 2) } };
  const view = computeEpisode(busy, 'ep-down-to-frame')!;
  expect(view.standing.verdict).toBe('short');
  expect(view.relief.length).toBeGreaterThan(0);
  expect(view.relief[0]!.changes.length).toBeGreaterThan(0);
  const words = view.relief.flatMap(({ changes }) => changes.map((change) => change.words));
  // Concrete: which session, which shots, which episode.
  expect(words.every((text) => /^(Add a session of .+ with \d+ (person|people), like “.+”, before \w{3} \d+ \w{3}|Leave out of “.+”: .+|Move “.+” to “.+”|Film “.+” with a fixed camera)$/.test(text))).toBe(true);
  expect(view.segments.map(({ name }) => name)[0]).toBe('Forty loose balls');
});

test('an episode with no work and no segments says so in words', () => {
  const view = computeEpisode({ document: sampleSeries({ tasks: [], outsideJobs: [], links: [] }), plan: null, now: at('2026-12-01', '09:00') }, 'episode-1')!;
  expect(view.standing.word).toBe('Nothing left to do');
  expect(view.runtime.minutes).toBe(0);
  expect(view.camera).toEqual(['No segments yet, so nothing to record for the screen.']);
});

test('there is no page of an episode that does not exist', () => {
  expect(computeEpisode(demo, 'gone')).toBeNull();
});

test('the estimates show each finished task, leave out the interrupted, and say what the switch does', () => {
  const view = viewEstimates(demo.document);
  expect(view.points.filter(({ kind }) => kind === 'hands-on')).toHaveLength(5);
  expect(view.handsOn.at(-1)!.what).toBe('anything else');
  expect(view.effect).toMatch(/^Planning by experience would make \d+ open tasks .+ longer together, \d+ %: /);
  expect(viewEstimates(sampleSeries()).points).toEqual([]);
});

test('a series with nothing in it has an empty shelf and no complaints', () => {
  const empty = { ...sampleSeries(), people: [], places: [], equipment: [], parts: [], materials: [], trades: [], outsideJobs: [], tasks: [], links: [], sessions: [], episodes: [] };
  const view = computeEpisodes({ document: empty, plan: null, now: NOW }, 14);
  expect(view).toMatchObject({ reels: [], loose: [], proposals: [], proposalIssues: [], sponsorIssues: [], orderIssues: [] });
  expect(view.bank).toMatchObject({ weeks: [], isAlarm: false });
});

test('an episode says in short what its checklist, its checks and its promises still owe', () => {
  const document = demo.document;
  const episode = document.episodes.find(({ id }) => id === 'ep-cutting-floor')!;
  const safety = summariseSafety(document, { work: datedWork(null), footage: gatherFootage([]) }, episode);
  expect(safety.isOpen).toBe(true);
  expect(safety.words).toMatch(/^\d+ things stand between it and its release\. 0 of \d+ lines signed\.$/);
  expect(safety.hazards.some((words) => /\(I+V? \w+\) in \d+ tasks?$/.test(words))).toBe(true);
  expect(safety.first).toHaveLength(3);
  const promises = [{ kind: 'promise' as const, id: 'p1', revision: 1, order: 0, name: 'The loaf comes back', saidInId: null, where: '', dueId: episode.id, closure: 'open' as const, reason: '', closedInId: null }];
  const continuity = summariseContinuity(gatherFacts({ document: { ...document, promises, cameras: [] }, blocks: [], entries: [], now: NOW }), episode);
  expect(continuity.promises).toEqual([{ id: 'p1', words: 'The loaf comes back', standing: 'due by this episode' }]);
  expect(continuity.warns).toBeGreaterThan(0);
  expect(continuity.first.length).toBeGreaterThan(0);
});

test('an episode too long or too short for its bounds offers segments to move, each ready to be done', () => {
  const offers = (runtime: { target: number; min: number; max: number }) => computeEpisode({ ...demo, document: { ...demo.document, series: { ...demo.document.series, runtime } } }, 'ep-down-to-frame')!.runtimeOffers;
  const [shorter] = offers({ target: 12, min: 11, max: 14 });
  expect(shorter!.words).toMatch(/^Move “.+” to “.+”: 1[1-4](\.5)? min here$/);
  expect(shorter!.arrangement[0]!.episodeId).not.toBe('ep-down-to-frame');
  const [longer] = offers({ target: 20, min: 19, max: 22 });
  expect(longer!.words).toMatch(/^Bring in “.+”: (19|2[0-2])(\.5)? min$/);
  expect(longer!.arrangement[0]!.segmentIds).toHaveLength(6);
  expect(offers(demo.document.series.runtime)).toEqual([]);
});

test('a shot says which parts it shows in which state, and what it risks where it happens once', () => {
  const { shots } = computeEpisode(demo, 'ep-cutting-floor')!;
  expect(shots.find(({ name }) => name === 'Medium: name and loaf, square on')).toMatchObject({ risk: null });
  expect(shots.find(({ name }) => name === 'Medium: name and loaf, square on')!.parts).toMatch(/^.+: .+, .+: .+$/);
  expect(shots.find(({ name }) => name === 'The last letter goes')!.risk).toBe('happens once: lost 5 % of the time with one camera, 0.7 % with two');
});

test('a proposal that would show a part in an earlier state than before says so', () => {
  const { proposals } = computeEpisodes(demo, 7);
  for (const { warnings } of proposals) expect(warnings).toEqual([]);
  const { segments, tasks } = demo.document;
  // Two threads, so that what was told in order may be told side by side.
  const backwards = segments.map((segment) => ({ ...segment, taskIds: segment.episodeId === null ? [tasks[0]!.id] : segment.taskIds }));
  const told = computeEpisodes({ ...demo, document: { ...demo.document, segments: backwards } }, 7).proposals.flatMap(({ warnings }) => warnings);
  expect(told.some((text) => / is .+ in “.+”, but was .+ already in “.+”, which is shown before it\.$/.test(text))).toBe(true);
});
