/** A hazard of the users' own, from its form to the record, with every refusal at its field. */
import { describe, expect, it } from 'vitest';
import { changeRecord, createRecord } from '@/lib/commands';
import type { DraftObject } from '@/lib/views';
import { readRecordForm, viewCopyForm, viewNewRecordForm, viewRecordForm } from '@/lib/views';
import { LIBRARY, listHazards } from '@/lib/safety';
import { unwrap, type Result } from '@/lib/result';
import { sampleSeries } from '../build/sample-series';
import { memoryContext } from './memory-store';

const SERIES = 'series-sample';
const start = () => memoryContext(sampleSeries());
const places = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code, path }) => `${code} at ${path.join('.')}`));

/** What somebody types about a hazard that the library does not know. */
const typed: DraftObject = {
  name: 'Kiln left hot', severity: 'II', trigger: [{ facts: [{ fact: 'heating' }, { fact: 'alone' }] }], needsSecondPerson: true, replaces: '',
  controls: [{ level: 'engineer', text: 'Door interlock works', isShown: true }], equipment: [{ text: 'Gloves against heat', sign: 'M009', standard: 'EN 407', standardStatus: 'memory' }],
  signs: [{ code: 'W017' }], caution: { screen: 'Still hot after an hour.', spoken: 'This looks cold and is not. We wait until the gauge says so.' }, show: 'The gauge',
  deferral: { text: 'the interlock is bypassed', isAlways: false, when: [{ facts: [{ fact: 'defeated-interlock' }] }] },
  sources: [{ text: "Maker's manual of the kiln, page 4", status: 'read', reviewed: '2026-11-01' }],
};

async function save(context: ReturnType<typeof start>, more: DraftObject): Promise<readonly string[]> {
  const read = readRecordForm('hazard', { ...typed, ...more });
  return places(read.ok ? await createRecord(context, SERIES, 'hazard', read.value) : read);
}

describe('a hazard written in its form', () => {
  it('is kept with all of it, and found in the series from then on', async () => {
    const context = start();
    expect(await save(context, {})).toEqual([]);
    expect(listHazards(context.document()).at(-1)).toMatchObject({
      name: 'Kiln left hot', origin: 'own', trigger: [['heating', 'alone']], needsSecondPerson: true, signs: ['W017'],
      deferral: { text: 'the interlock is bypassed', when: [['defeated-interlock']] }, sources: [{ reviewed: '2026-11-01' }],
    });
  });

  it.each<readonly [string, DraftObject, readonly string[]]>([
    ['a sign on the wall that is not kept here', { signs: [{ code: 'W017' }, { code: 'W999' }] }, ['sign-unknown at signs.1']],
    ['an unknown sign of what is worn', { equipment: [{ text: 'Gloves', sign: 'M099', standard: '', standardStatus: 'practice' }] }, ['sign-unknown at equipment.0.sign']],
    ['no source', { sources: [] }, ['hazard-without-source at sources']],
    ['an empty source', { sources: [{ text: ' ', status: 'judgement', reviewed: '' }] }, ['hazard-without-source at sources.0.text']],
    ['a source that was read on no day', { sources: [{ text: 'Manual', status: 'read', reviewed: '' }] }, ['source-not-dated at sources.0.reviewed']],
    ['nothing that sets it off', { trigger: [] }, ['hazard-without-trigger at trigger']],
    ['a way without a fact', { trigger: [{ facts: [{ fact: 'heating' }] }, { facts: [] }] }, ['way-empty at trigger.1']],
    ['a fact that is not chosen', { trigger: [{ facts: [{ fact: '' }] }] }, ['choice-missing at trigger.0.facts.0.fact']],
    ['no control', { controls: [] }, ['hazard-without-control at controls']],
    ['a control that says nothing', { controls: [{ level: 'eliminate', text: 'Leave it', isShown: false }, { level: 'engineer', text: '', isShown: true }] }, ['control-empty at controls.1.text']],
    ['facts for leaving it, in no words', { deferral: { text: '', isAlways: true, when: [] } }, ['deferral-empty at deferral.text']],
    ['a caution too long to read and to say', { caution: { screen: 'x '.repeat(60), spoken: 'word '.repeat(31) } }, ['caption-too-long at caution.screen', 'spoken-too-long at caution.spoken']],
    ['no name, and nothing else right either', { name: '', signs: [{ code: 'respirator' }] }, ['input-name at name', 'input-value at signs.0']],
  ])('is refused at its field with %s, and nothing is saved', async (_what, more, expected) => {
    const context = start();
    expect(await save(context, more)).toEqual(expected);
    expect(context.writes()).toBe(0);
  });

  it('is copied from the library to stand in its place, with the lines that signatures are on', async () => {
    const context = start();
    const form = viewCopyForm(context.document(), 'hazard', 'isocyanate');
    expect(form).toMatchObject({ id: null, name: 'Isocyanate spray', draft: { replaces: 'isocyanate' } });
    const input = unwrap(readRecordForm('hazard', { ...form?.draft, name: 'Isocyanate where we live', sources: [{ text: 'Regional rule 12', status: 'read', reviewed: '2026-10-01' }] }));
    expect(places(await createRecord(context, SERIES, 'hazard', input))).toEqual([]);
    const [library, own] = [LIBRARY.find(({ id }) => id === 'isocyanate'), listHazards(context.document()).find(({ id }) => id === 'isocyanate')];
    expect(own).toEqual({ ...library, name: 'Isocyanate where we live', origin: 'own', replaces: 'isocyanate', sources: [{ text: 'Regional rule 12', status: 'read', reviewed: '2026-10-01' }] });
    expect(viewCopyForm(context.document(), 'hazard', 'boredom')).toBeNull();
  });

  it('says “always” with a tick, and takes it back', async () => {
    const context = start();
    await save(context, { deferral: { text: 'always', isAlways: true, when: [] } });
    const [made] = context.document().hazards;
    expect(made?.deferral).toEqual({ text: 'always', when: 'always' });
    const form = viewRecordForm(context.document(), 'hazard', made?.id ?? '');
    expect(form?.draft['deferral']).toEqual({ text: 'always', isAlways: true, when: [] });
    const input = unwrap(readRecordForm('hazard', { ...form?.draft, deferral: { text: '', isAlways: false, when: [] } }));
    await changeRecord(context, SERIES, 'hazard', made?.id ?? '', 1, input);
    expect(context.document().hazards[0]?.deferral).toBeNull();
  });

  it('starts with a source to be named', () => {
    const { draft } = viewNewRecordForm(sampleSeries(), 'hazard', start().now());
    expect(draft['sources']).toEqual([{ text: '', status: 'read', reviewed: '2026-11-30' }]);
  });
});
