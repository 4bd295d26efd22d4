import { expect, test } from 'vitest';
import { checkSponsors, checkUnplaced, type Obligation, type SponsoredEpisode } from '@/lib/episodes';

const EPISODE: SponsoredEpisode = { id: 'e1', name: 'Primer day', releaseDate: '2026-12-20', feasibleOn: '2026-12-18', runtime: 600 };
const MET: Obligation = {
  id: 'o1', name: 'Discs in use', sponsor: 'Abrasives', exclusiveIn: 'abrasives', episodeId: 'e1', dueDate: '2026-12-20', minimumSeconds: 45, part: 'anywhere',
  spot: { start: 120, end: 165 }, disclosure: { text: 'Paid promotion', spokenAt: 120, shown: { start: 120, end: 121 } }, needsApproval: true, approvedOn: '2026-12-17',
};

const codes = (more: Partial<Obligation>, episode: SponsoredEpisode = EPISODE): string[] => checkSponsors(episode, [{ ...MET, ...more }]).map(({ code }) => code);

test('an obligation met at every limit stops nothing', () => {
  expect(codes({})).toEqual([]);
});

test('a disclosure that is missing, late or too short to read stops the release', () => {
  const said = MET.disclosure;
  expect(codes({ disclosure: { ...said, spokenAt: null, shown: null } })).toEqual(['disclosure-not-spoken', 'disclosure-not-shown']);
  expect(codes({ disclosure: { ...said, spokenAt: 121 } })).toEqual(['disclosure-spoken-late']);
  expect(codes({ disclosure: { ...said, shown: { start: 121, end: 130 } } })).toEqual(['disclosure-shown-late']);
  expect(codes({ disclosure: { ...said, shown: { start: 120, end: 120.5 } } })).toEqual(['disclosure-too-short']);
  expect(checkSponsors(EPISODE, [{ ...MET, disclosure: { ...said, spokenAt: null } }]).every(({ severity }) => severity === 'stop')).toBe(true);
});

test('a disclosure longer than a subtitle is pointed out', () => {
  const text = 'a'.repeat(38);
  expect(codes({ disclosure: { ...MET.disclosure, text } })).toEqual(['disclosure-too-long']);
});

test('a spot that is missing, ends before it starts or lasts 44 of 45 s stops the release', () => {
  expect(codes({ spot: null })).toContain('spot-missing');
  expect(codes({ spot: { start: 120, end: 120 } })).toContain('spot-ends-early');
  expect(codes({ spot: { start: 120, end: 164 } })).toEqual(['spot-too-short']);
});

test('a spot outside the third that was agreed is pointed out, once there is a runtime to go by', () => {
  expect(codes({ part: 'first third' })).toEqual([]);
  expect(codes({ part: 'first third', spot: { start: 201, end: 250 } })).toEqual(['spot-elsewhere']);
  expect(codes({ part: 'last third' })).toEqual(['spot-elsewhere']);
  expect(codes({ part: 'last third' }, { ...EPISODE, runtime: 0 })).toEqual([]);
});

test('a disclosure without words stops the release', () => {
  expect(codes({ disclosure: { ...MET.disclosure, text: ' ' } })).toEqual(['disclosure-no-words']);
});

test('approval is asked for only where it is agreed', () => {
  expect(codes({ approvedOn: null })).toEqual(['approval-missing']);
  expect(codes({ approvedOn: null, needsApproval: false })).toEqual([]);
});

test('a release after the agreed day, or one the plan cannot keep, warns', () => {
  expect(codes({ dueDate: '2026-12-19' })).toEqual(['sponsor-date-passed']);
  expect(codes({}, { ...EPISODE, feasibleOn: '2026-12-21' })).toEqual(['sponsor-date-not-feasible']);
  expect(codes({ dueDate: null }, { ...EPISODE, feasibleOn: '2026-12-21' })).toEqual([]);
});

test('two sponsors promised the same trade stop an episode, two obligations of one sponsor do not', () => {
  const rival = { ...MET, id: 'o2', name: 'Belt sander', sponsor: 'Belts' };
  expect(checkSponsors(EPISODE, [MET, rival]).map(({ code }) => code)).toEqual(['competing-sponsors']);
  expect(checkSponsors(EPISODE, [MET, { ...rival, sponsor: ' abrasives ' }])).toEqual([]);
  expect(checkSponsors(EPISODE, [MET, { ...rival, exclusiveIn: 'belts' }])).toEqual([]);
  expect(checkSponsors(EPISODE, [MET, { ...rival, episodeId: 'e2' }])).toEqual([]);
});

test('an obligation in no episode is pointed out', () => {
  expect(checkUnplaced([MET, { ...MET, id: 'o3', episodeId: null }]).map(({ code }) => code)).toEqual(['sponsor-without-episode']);
});
