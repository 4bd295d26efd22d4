import { describe, expect, it } from 'vitest';
import { addHazards, applyMany, changeRecord, createRecord, overrideGate, recordReading, removeRecord, ruleHazard, signItem, undoChange } from '@/lib/commands';
import { buildChecklist, findHazards, judgeGate, LIBRARY, listOverrides, listReviews } from '@/lib/safety';
import type { Result } from '@/lib/result';
import { signAll, taskOf, withHazards } from '../safety/sample';
import { memoryContext } from './memory-store';

const SERIES = 'series-sample';
const EPISODE = 'episode-1';
const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : [...new Set(result.error.map(({ code }) => code))]);
const places = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code, path }) => `${code} at ${path.join('.')}`));
const start = () => memoryContext(withHazards('task-strip', ['tyre-inflating']));
const lines = (context: ReturnType<typeof start>) => buildChecklist(context.document(), EPISODE).items;

function evidenceFor(context: ReturnType<typeof start>, itemId: string, more: Readonly<Record<string, unknown>> = {}) {
  const item = lines(context).find(({ id }) => id === itemId);
  return { episodeId: EPISODE, itemId, fingerprint: item?.fingerprint ?? '', personId: 'person-robin', evidence: { kind: 'take', take: 'A 3', timecode: '00:01:00:00' }, reason: '', ...more };
}

describe('signing a line', () => {
  it('keeps who, when, which take, and what it stood on', async () => {
    const context = start();
    expect(codes(await signItem(context, SERIES, evidenceFor(context, 'disclosure')))).toEqual([]);
    expect(lines(context).find(({ id }) => id === 'disclosure')).toMatchObject({ state: 'evidenced', signed: { signedBy: 'Robin', at: context.now() } });
  });

  it('is refused by nobody, on a line that is gone or has changed, and with nonsense; nothing is saved', async () => {
    const context = start();
    expect(codes(await signItem(context, SERIES, evidenceFor(context, 'disclosure', { personId: '' })))).toEqual(['signed-by-nobody']);
    expect(codes(await signItem(context, SERIES, evidenceFor(context, 'no-such-line')))).toEqual(['item-missing']);
    expect(codes(await signItem(context, SERIES, evidenceFor(context, 'disclosure', { fingerprint: 'old' })))).toEqual(['item-changed']);
    expect(codes(await signItem(context, SERIES, evidenceFor(context, 'disclosure', { evidence: { kind: 'ticked' } })))).toEqual(['input-value']);
    expect(codes(await signItem(context, SERIES, null))).toEqual(['input-value']);
    expect(context.writes()).toBe(0);
  });

  it('stays on record: it is not undone, changed, removed or made by a form', async () => {
    const context = start();
    await signItem(context, SERIES, evidenceFor(context, 'disclosure'));
    const [statement] = context.document().statements;
    if (statement === undefined) throw new Error('It was signed');
    expect(codes(await undoChange(context, SERIES, 1))).toEqual(['statement-kept']);
    expect(codes(await removeRecord(context, SERIES, 'statement', statement.id, 1))).toEqual(['unknown-kind']);
    expect(codes(await changeRecord(context, SERIES, 'statement', statement.id, 1, { reason: 'x' }))).toEqual(['unknown-kind']);
    const { id: _, kind: _kind, revision: _revision, order: _order, ...forged } = statement;
    expect(codes(await createRecord(context, SERIES, 'statement', forged))).toEqual(['unknown-kind']);
    expect(codes(await applyMany(context, SERIES, 'x', [{ kind: 'statement', input: forged }]))).toEqual(['unknown-kind']);
  });
});

describe('ruling on a hazard', () => {
  it('takes one out with a reason and puts it back', async () => {
    const context = start();
    const ruling = { taskId: 'task-strip', hazardId: 'tyre-inflation', ruling: 'hazard-removed', personId: 'person-kim', reason: 'the fitter does it with a cage' };
    expect(codes(await ruleHazard(context, SERIES, { ...ruling, reason: 'no' }))).toEqual(['reason-missing']);
    expect(codes(await ruleHazard(context, SERIES, { ...ruling, hazardId: 'boredom' }))).toEqual(['hazard-missing']);
    expect(codes(await ruleHazard(context, SERIES, ruling))).toEqual([]);
    const list = findHazards(context.document(), taskOf(context.document(), 'task-strip'));
    expect(list.removed.map(({ hazard }) => hazard.id)).toEqual(['tyre-inflation']);
  });
});

const status = (context: ReturnType<typeof start>, to: string) => changeRecord(context, SERIES, 'episode', EPISODE, context.document().episodes[0]?.revision ?? 0, { status: to });

describe('the gate in front of an episode', () => {
  it('holds a form, and lets through what is signed', async () => {
    const context = start();
    expect(codes(await status(context, 'cleared'))).toEqual(['gate-closed']);
    expect(codes(await status(context, 'recorded'))).toEqual([]);
    const signed = memoryContext(signAll(withHazards('task-strip', ['tyre-inflating'])));
    expect(codes(await status(signed, 'cleared'))).toEqual([]);
  });

  it('holds an undo that would bring a cleared episode back, and a new episode that starts cleared', async () => {
    const context = memoryContext(signAll(withHazards('task-strip', ['tyre-inflating'])));
    await status(context, 'cleared');
    await status(context, 'planned');
    await changeRecord(context, SERIES, 'task', 'task-strip', 1, { coverage: 'locked-off' });
    expect(codes(await undoChange(context, SERIES, 2))).toEqual(['gate-closed']);
    expect(codes(await createRecord(context, SERIES, 'episode', { name: 'New', releaseDate: '2027-02-01', isEvergreen: false, status: 'cleared' }))).toEqual(['gate-closed']);
  });

  it('is set aside only by a named person with a reason who saw all blocks, and that is kept', async () => {
    const context = start();
    const seen = judgeGate(context.document(), buildChecklist(context.document(), EPISODE)).open.length;
    const asked = { episodeId: EPISODE, revision: 1, status: 'released', personId: 'person-robin', reason: 'the club watches it, nobody else', seen };
    expect(codes(await overrideGate(context, SERIES, { ...asked, personId: '', reason: '' }))).toEqual(['signed-by-nobody', 'reason-missing']);
    expect(codes(await overrideGate(context, SERIES, { ...asked, seen: seen - 1 }))).toEqual(['gate-changed']);
    expect(codes(await overrideGate(context, SERIES, { ...asked, revision: 7 }))).toEqual(['stale-record']);
    expect(context.document().statements).toEqual([]);
    expect(codes(await overrideGate(context, SERIES, asked))).toEqual([]);
    expect(context.document().episodes[0]?.status).toBe('released');
    expect(listOverrides(context.document(), EPISODE)).toHaveLength(1);
    expect(codes(await undoChange(context, SERIES, 1))).toContain('statement-kept');
    expect(codes(await overrideGate(context, SERIES, { ...asked, revision: 2 }))).toEqual(['gate-open']);
  });
});

describe('hazards of ones own', () => {
  const [piston] = LIBRARY;
  if (piston === undefined) throw new Error('The library is empty');
  const { id, origin: _, ...fields } = piston;
  const own = { ...fields, name: 'Pistons where we live', replaces: id };

  it('are brought in together or not at all, each refusal naming the hazard and the reason', async () => {
    const context = start();
    const refused = await addHazards(context, SERIES, JSON.stringify([own, { ...own, sources: [] }, { ...own, signs: ['M999'] }, { ...own, trigger: [['moonlight']] }]));
    expect(codes(refused)).toEqual(['hazard-without-source', 'sign-unknown', 'input-value']);
    expect(refused.ok ? [] : refused.error.map(({ message }) => message.slice(0, 9))).toEqual(['Hazard 2:', 'Hazard 3:', 'Hazard 4:']);
    expect(context.writes()).toBe(0);
    expect(codes(await addHazards(context, SERIES, JSON.stringify(own)))).toEqual([]);
    expect(context.document().hazards.map(({ name }) => name)).toEqual(['Pistons where we live']);
  });

  it('are refused as text that is no JSON, an empty list, or far too long', async () => {
    const context = start();
    expect(codes(await addHazards(context, SERIES, 'pistons'))).toEqual(['import-not-json']);
    expect(codes(await addHazards(context, SERIES, '[]'))).toEqual(['import-empty']);
    expect(codes(await addHazards(context, SERIES, ' '.repeat(400_001)))).toEqual(['import-too-long']);
  });
});

describe('bad input is refused with its reason, and nothing is lost or saved', () => {
  it('a negative level of noise or vibration, of air changes, volume, solvent and amount', async () => {
    const context = start();
    const tool = { name: 'Grinder', count: 1 };
    expect(places(await createRecord(context, SERIES, 'equipment', { ...tool, exposure: { noise: -1, vibration: -0.5, source: 'x' } }))).toEqual(['input-value at exposure.noise', 'input-value at exposure.vibration']);
    expect(places(await createRecord(context, SERIES, 'place', { name: 'Booth', capacity: 1, airZone: 'booth', air: { volume: -5, airChanges: -6, source: '' } }))).toEqual(['input-value at air.volume', 'input-value at air.airChanges']);
    const [material] = context.document().materials;
    if (material === undefined) throw new Error('The sample has materials');
    const vapour = { density: -1, molarMass: -1, solventShare: -0.1, limit: -1, source: '' };
    expect(places(await changeRecord(context, SERIES, 'material', material.id, 1, { vapour }))).toEqual(['density', 'molarMass', 'solventShare', 'limit'].map((key) => `input-value at vapour.${key}`));
    expect(places(await changeRecord(context, SERIES, 'task', 'task-strip', 1, { hazards: { facts: [], toolShare: 1, sprayed: -10, departure: null } }))).toEqual(['input-value at hazards.sprayed']);
    expect(context.writes()).toBe(0);
  });

  it('an exposure without a duration: a loud tool or paint sprayed for none of the time', async () => {
    const context = start();
    const [tool] = context.document().equipment;
    await changeRecord(context, SERIES, 'equipment', tool?.id ?? '', 1, { exposure: { noise: 96, vibration: null, source: 'handbook' } });
    const hazards = { facts: [], toolShare: 0, sprayed: null, departure: null };
    expect(places(await changeRecord(context, SERIES, 'task', 'task-strip', 1, { equipmentIds: [tool?.id], hazards }))).toEqual(['exposure-without-duration at hazards.toolShare']);
    expect(places(await changeRecord(context, SERIES, 'task', 'task-strip', 1, { equipmentIds: [], hazards: { ...hazards, sprayed: 200 } }))).toEqual(['exposure-without-duration at hazards.toolShare']);
    expect(context.writes()).toBe(1);
    expect(places(await changeRecord(context, SERIES, 'task', 'task-strip', 1, { equipmentIds: [tool?.id], hazards: { ...hazards, toolShare: 0.1 } }))).toEqual([]);
  });

  it('an unknown fact of a task, and a sign-off by somebody who is not in the series', async () => {
    const context = start();
    expect(places(await changeRecord(context, SERIES, 'task', 'task-strip', 1, { hazards: { facts: ['moonlight'], toolShare: 1, sprayed: null, departure: null } }))).toEqual(['input-value at hazards.facts.0']);
    expect(codes(await signItem(context, SERIES, evidenceFor(context, 'disclosure', { personId: 'a-stranger' })))).toEqual(['signed-by-nobody']);
    expect(codes(await ruleHazard(context, SERIES, { taskId: 'task-strip', hazardId: 'noise', ruling: 'hazard-added', personId: '', reason: '' }))).toEqual(['signed-by-nobody']);
    expect(context.writes()).toBe(0);
  });

  it('a consent on a day that is none, and flashes that are no count', async () => {
    const context = start();
    expect(places(await changeRecord(context, SERIES, 'person', 'person-kim', 1, { consent: { givenOn: '2026-13-01', where: '' } }))).toEqual(['input-value at consent.givenOn']);
    const checks = { captions: { file: '', readOn: null }, flashes: { perSecond: -1, remedy: '', countedOn: null } };
    expect(places(await changeRecord(context, SERIES, 'episode', EPISODE, 1, { checks }))).toEqual(['input-value at checks.flashes.perSecond']);
    expect(context.writes()).toBe(0);
  });
});

const firstUnread = (context: ReturnType<typeof start>) => listReviews(context.document(), '2026-11-30').find(({ standing }) => standing === 'never read')?.text ?? '';
const standingOf = (context: ReturnType<typeof start>, text: string) => listReviews(context.document(), '2026-11-30').find((review) => review.text === text)?.standing;

describe('reading a source again', () => {
  it('is kept with who and when, told in the history, undone, and makes no plan old', async () => {
    const context = start();
    const text = firstUnread(context);
    const input = { text, on: '2026-11-29', personId: 'person-kim', revision: 1 };
    const saved = await recordReading(context, SERIES, input);
    expect(saved.ok ? saved.value.change.label : '').toBe(`Kim read again: ${text}`.slice(0, 190));
    expect(context.document().series.sourceReadings).toEqual([{ text, on: '2026-11-29', by: 'Kim' }]);
    expect(standingOf(context, text)).toBe('read');
    expect([context.document().changeNumber, context.document().planChange]).toEqual([1, 0]);
    expect(codes(await undoChange(context, SERIES, 1))).toEqual([]);
    expect(standingOf(context, text)).toBe('never read');
  });

  it('is refused by nobody, of nothing, ahead of time, and over a change that was not seen; nothing is saved', async () => {
    const context = start();
    const input = { text: firstUnread(context), on: '2026-11-29', personId: 'person-kim', revision: 1 };
    expect(codes(await recordReading(context, SERIES, { ...input, personId: '' }))).toEqual(['signed-by-nobody']);
    expect(codes(await recordReading(context, SERIES, { ...input, text: 'no such book', on: '2099-01-01' }))).toEqual(['source-unknown', 'reading-date']);
    expect(codes(await recordReading(context, SERIES, { ...input, revision: 7 }))).toEqual(['stale-record']);
    expect(codes(await recordReading(context, SERIES, { text: 3 }))).toEqual(['input-value']);
    expect(context.writes()).toBe(0);
  });
});
