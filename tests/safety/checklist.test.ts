import { describe, expect, it } from 'vitest';
import { buildChecklist, checkRelease, judgeGate, LIBRARY, signStatement } from '@/lib/safety';
import type { CutChecks, Sponsorship } from '@/lib/build';
import { at } from '../build/sample-series';
import { changeTask, CHECKED, itemOf, sign, signAll, taskOf, withHazards } from './sample';

const EPISODE = 'episode-1';
const severe = withHazards('task-strip', ['tyre-inflating']);
const flashLine = (document: typeof severe) => buildChecklist(document, EPISODE).items.find(({ id }) => id === 'flash');
const openCodes = (document: typeof severe): readonly string[] => [...new Set(judgeGate(document, buildChecklist(document, EPISODE)).open.map(({ code }) => code))];
const evidence = (document: typeof severe, itemId: string, kind: 'take' | 'exception' | 'withdrawn' = 'take') => ({
  sort: 'evidence', episodeId: EPISODE, itemId, fingerprint: itemOf(document, itemId).fingerprint,
  evidence: kind === 'take' ? { kind, take: 'cam A 12', timecode: '00:12:04:11' } : { kind },
} as const);
const status = (document: typeof severe, to: 'cleared' | 'released') => ({ ...document, episodes: document.episodes.map((one) => (one.id === EPISODE ? { ...one, status: to } : one)) });

describe('the checklist of an episode', () => {
  it('has the controls, what is worn, both cautions and what every episode owes', () => {
    const kinds = buildChecklist(severe, EPISODE).items.map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(['control', 'spoken', 'caption', 'worn', 'disclosure', 'captions', 'consents']));
  });

  it('leaves out tasks that are not filmed', () => {
    const unseen = changeTask(severe, 'task-strip', { coverage: 'none', shots: [] });
    expect(buildChecklist(unseen, EPISODE).hazards.map(({ hazard }) => hazard.id)).not.toContain('tyre-inflation');
  });

  it('asks for a flash check only where welding is shown', () => {
    expect(buildChecklist(severe, EPISODE).items.some(({ kind }) => kind === 'flash')).toBe(false);
    expect(buildChecklist(withHazards('task-strip', ['arc-welding']), EPISODE).items.some(({ kind }) => kind === 'flash')).toBe(true);
  });

  it('lists what is worn once however many hazards ask for it', () => {
    const two = withHazards('task-strip', ['tyre-inflating', 'blow-gun']);
    expect(buildChecklist(two, EPISODE).items.filter(({ text }) => text === 'Eye protection')).toHaveLength(1);
  });

  it('is opened again by a change to the task, to its shots, and by taking a signature back', () => {
    const id = 'spoken:tyre-inflation';
    const signed = sign(severe, evidence(severe, id));
    expect(itemOf(signed, id).state).toBe('evidenced');
    expect(itemOf(changeTask(signed, 'task-strip', { name: 'Another name', pinnedStart: at('2026-12-05', '10:00') }), id).state).toBe('evidenced');
    expect(itemOf(changeTask(signed, 'task-strip', { coverage: 'locked-off' }), id).state).toBe('reopened');
    expect(itemOf(changeTask(signed, 'task-strip', { shots: [] }), id).state).toBe('reopened');
    expect(itemOf(sign(signed, evidence(signed, id, 'withdrawn'), 'the take was another one'), id).state).toBe('open');
    expect(itemOf(changeTask(signed, 'task-strip', { shots: taskOf(signed, 'task-strip').shots.map((shot) => ({ ...shot, filmedAt: at('2026-12-01', '21:00') })) }), id).state).toBe('evidenced');
  });

  it('says what has changed since it was signed', () => {
    const id = 'spoken:tyre-inflation';
    const signed = sign(severe, evidence(severe, id));
    expect(itemOf(signed, id).why).toBeNull();
    expect(itemOf(changeTask(signed, 'task-strip', { equipmentIds: ['equipment-gun'] }), id).why).toBe('the task has changed since');
    expect(itemOf(changeTask(signed, 'task-strip', { shots: [] }), id).why).toBe('the shots or the way it is filmed have changed since');
    const [tyre] = LIBRARY.filter((hazard) => hazard.id === 'tyre-inflation');
    if (tyre === undefined) throw new Error('The library knows tyres');
    const own = { ...tyre, kind: 'hazard', revision: 1, order: 0, id: 'own', replaces: 'tyre-inflation', caution: { ...tyre.caution, spoken: 'Stand aside.' } } as const;
    expect(itemOf({ ...signed, hazards: [own] }, id).why).toBe('what this line asks for has changed since');
    expect(judgeGate(signed, buildChecklist(changeTask(signed, 'task-strip', { shots: [] }), EPISODE)).open.find(({ itemIds }) => itemIds.includes(id))?.message).toContain('It was signed, and the shots or the way it is filmed have changed since.');
  });

  it('counts a reviewed exception, and forgets none of the signatures', () => {
    const signed = sign(severe, evidence(severe, 'disclosure', 'exception'), 'nothing was paid, gifted or lent');
    expect(itemOf(signed, 'disclosure').state).toBe('excepted');
    expect(sign(signed, evidence(signed, 'disclosure')).statements).toHaveLength(2);
  });

  it('takes a consent from the record of the person, and names whose is missing', () => {
    expect(itemOf(severe, 'consent:person-robin')).toMatchObject({ state: 'recorded', recorded: 'Given Sun 1 Nov 2026, blue folder' });
    const withdrawn = { ...severe, people: severe.people.map((person) => (person.id === 'person-kim' ? { ...person, consent: { givenOn: null, until: null, where: '' } } : person)) };
    expect(itemOf(withdrawn, 'consent:person-kim').state).toBe('open');
    const block = judgeGate(withdrawn, buildChecklist(withdrawn, EPISODE)).open.find(({ itemIds }) => itemIds.includes('consent:person-kim'));
    expect(block).toMatchObject({ code: 'consents-open', message: 'A consent is missing: Consent of Kim to be shown' });
    expect(itemOf(sign(withdrawn, evidence(withdrawn, 'consent:person-kim', 'exception'), 'Kim is not to be seen in it'), 'consent:person-kim').state).toBe('excepted');
  });

  it('owes a disclosure for each obligation in the episode, and none can be signed before its record is whole', () => {
    const owed: Sponsorship = {
      kind: 'sponsorship', id: 'owed', revision: 1, order: 0, name: 'Discs', sponsor: 'Abrasives', what: '', exclusiveIn: '', episodeId: EPISODE, part: 'anywhere', dueDate: null,
      minimumSeconds: 10, spotStart: 60, spotEnd: 90, disclosureText: 'Paid promotion', spokenAt: null, shownFrom: 55, shownUntil: 95, needsApproval: false, approvedOn: null,
    };
    const id = 'disclosure:owed';
    const half = { ...severe, sponsorships: [owed] };
    expect(itemOf(half, id).issues.map(({ code }) => code)).toEqual(['disclosure-not-spoken']);
    expect(itemOf(sign(half, evidence(half, id)), id).state).toBe('reopened');
    expect(judgeGate(half, buildChecklist(half, EPISODE)).open.find(({ itemIds }) => itemIds.includes(id))).toMatchObject({ code: 'disclosure-open', fix: 'Say it before the claim and write down when.' });
    const whole = { ...severe, sponsorships: [{ ...owed, spokenAt: 55 }] };
    expect(itemOf(whole, id).text).toBe('“Discs” is paid for by Abrasives: “Paid promotion”, said at 55 s, shown from 55 s to 95 s');
    const signed = sign(whole, evidence(whole, id));
    expect(itemOf(signed, id).state).toBe('evidenced');
    expect(itemOf({ ...signed, sponsorships: [{ ...owed, spokenAt: 58 }] }, id).state).toBe('reopened');
    expect(itemOf({ ...severe, sponsorships: [{ ...owed, episodeId: null }] }, 'disclosure').text).toContain('Nothing of the kind');
  });

  it('asks for captions that somebody has read through, and for flashes that somebody has counted', () => {
    const welding = withHazards('task-strip', ['arc-welding']);
    const withChecks = (checks: CutChecks | undefined) => ({ ...welding, episodes: welding.episodes.map((one) => ({ ...one, checks })) });
    const issuesOf = (checks: CutChecks | undefined, id: string) => itemOf(withChecks(checks), id).issues.map(({ message }) => message);
    expect(issuesOf(undefined, 'captions')).toEqual(['No file of captions is recorded.']);
    expect(issuesOf({ ...CHECKED, captions: { file: 'a.vtt', readOn: null } }, 'captions')).toEqual(['Nobody has read “a.vtt” through.']);
    expect(issuesOf(CHECKED, 'captions')).toEqual([]);
    expect(issuesOf(undefined, 'flash')).toEqual(['Nobody has counted the flashes of the welding shots.']);
    const flashing = (perSecond: number) => issuesOf({ ...CHECKED, flashes: { ...CHECKED.flashes, perSecond } }, 'flash');
    expect(flashing(4)).toEqual(['The welding shots flash 4 times in a second, and 3 is the most.']);
    expect(flashing(3)).toEqual([]);
    const signed = sign(withChecks(CHECKED), evidence(withChecks(CHECKED), 'disclosure'));
    const flash = sign(signed, { ...evidence(signed, 'disclosure'), itemId: 'flash', fingerprint: flashLine(signed)?.fingerprint ?? '' });
    expect(flashLine(flash)?.state).toBe('evidenced');
    expect(flashLine({ ...flash, episodes: withChecks({ ...CHECKED, flashes: { ...CHECKED.flashes, perSecond: 1 } }).episodes })?.why).toBe('what this line asks for has changed since');
  });

  it('cannot be signed off while the statement of a departure lacks a value', () => {
    const departure = { manualValue: '2.2 bar', ownValue: '', reason: 'wider rim', warning: 'not on the road' };
    const document = withHazards('task-strip', [], {}, { departure });
    const id = 'departure:task-strip';
    expect(itemOf(sign(document, evidence(document, id)), id).state).toBe('reopened');
    const whole = withHazards('task-strip', [], {}, { departure: { ...departure, ownValue: '2.5 bar' } });
    expect(itemOf(sign(whole, evidence(whole, id)), id).state).toBe('evidenced');
  });
});

const take = (name: string, timecode: string) => ({ about: { ...evidence(severe, 'disclosure'), evidence: { kind: 'take', take: name, timecode } as const } });

describe('a signature', () => {
  const draft = { id: 's', name: 'x', about: evidence(severe, 'disclosure'), personId: 'person-robin', at: at('2026-12-01', '20:00'), reason: '' };
  const codes = (change: Partial<Parameters<typeof signStatement>[1]>): readonly string[] => {
    const result = signStatement(severe, { ...draft, ...change });
    return result.ok ? [] : result.error.map(({ code }) => code);
  };

  it('needs a person of the series', () => {
    expect(codes({})).toEqual([]);
    expect(codes({ personId: '' })).toEqual(['signed-by-nobody']);
    expect(codes({ personId: 'a-stranger' })).toEqual(['signed-by-nobody']);
  });

  it('needs a take with a timecode of the series, or a reason that can be read', () => {
    expect(codes(take('', '00:00:00:00'))).toEqual(['take-missing']);
    expect(codes(take('A1', '00:00:00:25'))).toEqual(['timecode-out-of-range']);
    expect(codes(take('A1', '00:00:00:24'))).toEqual([]);
    expect(codes(take('A1', '00:00:60:00'))).toEqual(['timecode-out-of-range']);
    expect(codes(take('A1', 'twelve'))).toEqual(['timecode-unreadable']);
    expect(codes(take('A1', '00:01:00;02'))).toEqual(['drop-frame-impossible']);
    expect(codes({ about: evidence(severe, 'disclosure', 'exception'), reason: '  no      ' })).toEqual(['reason-missing']);
    expect(codes({ about: evidence(severe, 'disclosure', 'exception'), reason: 'twelve chars' })).toEqual([]);
  });
});

describe('the gate', () => {
  it('names a severe hazard with no control above what is worn, and an exception does not help', () => {
    expect(openCodes(severe)).toContain('no-control-above-equipment');
    const excepted = buildChecklist(severe, EPISODE).items.filter(({ kind }) => kind === 'control').reduce((next, { id }) => sign(next, evidence(next, id, 'exception'), 'the fitter did that part'), severe);
    expect(openCodes(excepted)).toContain('no-control-above-equipment');
    const [control] = buildChecklist(severe, EPISODE).items.filter(({ kind }) => kind === 'control');
    if (control === undefined) throw new Error('There is a control');
    expect(openCodes(sign(severe, evidence(severe, control.id)))).not.toContain('no-control-above-equipment');
    expect(openCodes(withHazards('task-strip', ['blow-gun']))).not.toContain('no-control-above-equipment');
  });

  it('names controls that are not seen, cautions, disclosure, captions, consents and deferrals', () => {
    expect(openCodes(withHazards('task-strip', ['tyre-inflating', 'split-rim']))).toEqual(expect.arrayContaining([
      'control-not-shown', 'caution-not-spoken', 'caution-not-on-screen', 'equipment-not-shown', 'disclosure-open', 'captions-open', 'consents-open', 'deferral-open',
    ]));
  });

  it('opens when every needed line is signed, and closes again with the next change', () => {
    const signed = signAll(severe);
    expect(openCodes(signed)).toEqual([]);
    expect(checkRelease(signed, status(signed, 'cleared')).ok).toBe(true);
    const changed = changeTask(signed, 'task-strip', { equipmentIds: ['equipment-gun'] });
    expect(checkRelease(changed, status(changed, 'released')).ok).toBe(false);
  });

  it('stays closed while work of the episode is not done, whatever is signed, and names it', () => {
    const undone = changeTask(signAll(severe), 'task-strip', { doneAt: null });
    expect(openCodes(undone)).toEqual(['work-open']);
    const refused = checkRelease(undone, status(undone, 'released'));
    expect(refused.ok ? '' : refused.error[0]!.message).toContain('1 task of this episode is not done: “Strip the frame”');
  });

  it('refuses cleared and released with one issue a block, and leaves other changes alone', () => {
    const refused = checkRelease(severe, status(severe, 'cleared'));
    expect(refused.ok).toBe(false);
    if (!refused.ok) {
      expect(refused.error).toHaveLength(judgeGate(severe, buildChecklist(severe, EPISODE)).open.length);
      for (const { code, fix } of refused.error) expect([code, fix.length > 0]).toEqual(['gate-closed', true]);
    }
    const already = status(severe, 'cleared');
    expect(checkRelease(already, changeTask(already, 'task-strip', { name: 'x' })).ok).toBe(true);
  });

  it('lets through what a named person has set aside, keeps that for ever, and only for these blocks', () => {
    const blocks = judgeGate(severe, buildChecklist(severe, EPISODE)).open.map(({ id }) => id);
    const overridden = sign(severe, { sort: 'override', episodeId: EPISODE, status: 'cleared', blocks }, 'shown at a closed screening only');
    expect(checkRelease(overridden, status(overridden, 'cleared')).ok).toBe(true);
    const changed = changeTask(overridden, 'task-strip', { hazards: { ...taskOf(overridden, 'task-strip').hazards, facts: ['tyre-inflating', 'split-rim'] } });
    expect(checkRelease(changed, status(changed, 'cleared')).ok).toBe(false);
    expect(judgeGate(changed, buildChecklist(changed, EPISODE)).overrides).toHaveLength(1);
  });
});
