import { describe, expect, it } from 'vitest';
import { HAZARD_FACTS, type HazardFact, type HazardRecord } from '@/lib/build';
import { factsOfTask, findCombinations, findHazards, LIBRARY, listHazards } from '@/lib/safety';
import { sampleSeries } from '../build/sample-series';
import { at } from '../build/sample-series';
import { changeTask, sign, taskOf, withHazards } from './sample';

const found = (facts: readonly HazardFact[]): readonly string[] => {
  const document = withHazards('task-fit', facts, { coats: [], equipmentIds: [], isNoisy: false });
  return findHazards(document, taskOf(document, 'task-fit')).found.map(({ hazard }) => hazard.id);
};

describe('the hazards of a task', () => {
  it('follow from what is done and what is in it', () => {
    expect(found(['air-into-bore'])).toEqual(['piston-ejection']);
    expect(found(['spraying'])).toEqual([]);
    expect(found(['spraying', 'solvent'])).toEqual(['respirator', 'solvent-spray', 'spray-ignition']);
    expect(found(['isocyanate', 'spraying'])).toContain('isocyanate');
    expect(found(['isocyanate'])).not.toContain('isocyanate');
  });

  it('are set off, each of them, by its own facts and by none at all are none found', () => {
    expect(found([])).toEqual([]);
    for (const hazard of LIBRARY) {
      for (const group of hazard.trigger) expect(found(group)).toContain(hazard.id);
    }
  });

  it('follow from the coats, tools and noise without anybody stating them', () => {
    const document = sampleSeries();
    const facts = factsOfTask(document, taskOf(document, 'task-prime'));
    expect(facts).toContainEqual({ fact: 'solvent', because: 'Grey primer holds solvent' });
    const noisy = changeTask(document, 'task-fit', { isNoisy: true });
    expect(findHazards(noisy, taskOf(noisy, 'task-fit')).found.map(({ hazard }) => hazard.id)).toContain('noise');
    const grinder = { ...document, equipment: document.equipment.map((one) => ({ ...one, exposure: { noise: 79.9, vibration: 3, source: 'x' } })) };
    const held = changeTask(grinder, 'task-fit', { equipmentIds: ['equipment-gun'], isNoisy: false });
    expect(factsOfTask(held, taskOf(held, 'task-fit')).map(({ fact }) => fact)).toEqual(expect.arrayContaining(['vibrating-tool']));
    expect(factsOfTask(held, taskOf(held, 'task-fit')).map(({ fact }) => fact)).not.toContain('loud-tool');
  });

  it('say to leave it when the facts say so', () => {
    const document = withHazards('task-fit', ['air-into-bore', 'seized']);
    expect(findHazards(document, taskOf(document, 'task-fit')).found.find(({ hazard }) => hazard.id === 'piston-ejection')?.isDeferred).toBe(true);
    const free = withHazards('task-fit', ['air-into-bore']);
    expect(findHazards(free, taskOf(free, 'task-fit')).found.find(({ hazard }) => hazard.id === 'piston-ejection')?.isDeferred).toBe(false);
    const pack = withHazards('task-fit', ['high-voltage-open']);
    expect(findHazards(pack, taskOf(pack, 'task-fit')).found.find(({ hazard }) => hazard.id === 'high-voltage')?.isDeferred).toBe(true);
  });

  it('can be added or taken out by a person, and what was taken out stays on record with its reason', () => {
    const document = withHazards('task-fit', ['air-into-bore']);
    const out = sign(document, { sort: 'hazard-removed', taskId: 'task-fit', hazardId: 'piston-ejection' }, 'the hydraulic pump does it all');
    const list = findHazards(out, taskOf(out, 'task-fit'));
    expect(list.found.map(({ hazard }) => hazard.id)).not.toContain('piston-ejection');
    expect(list.removed[0]?.statement.reason).toBe('the hydraulic pump does it all');
    const back = sign(out, { sort: 'hazard-added', taskId: 'task-fit', hazardId: 'piston-ejection' });
    expect(findHazards(back, taskOf(back, 'task-fit')).found.map(({ hazard }) => hazard.id)).toContain('piston-ejection');
    expect(back.statements).toHaveLength(2);
  });

  it('come from the users own library too, and one of theirs can take the place of one that came with the program', () => {
    const [piston] = LIBRARY;
    if (piston === undefined) throw new Error('The library is empty');
    const { id: _, origin: _origin, ...fields } = piston;
    const own: HazardRecord = { ...fields, kind: 'hazard', id: 'own-1', revision: 1, order: 0, name: 'Pistons, our way', replaces: piston.id };
    const extra: HazardRecord = { ...own, id: 'own-2', name: 'Bees in the arch', replaces: null, trigger: [['indoors']] };
    const hazards = listHazards({ hazards: [own, extra] });
    expect(hazards).toHaveLength(LIBRARY.length + 1);
    expect(hazards[0]).toMatchObject({ id: 'piston-ejection', name: 'Pistons, our way', origin: 'own' });
    expect(hazards.at(-1)?.name).toBe('Bees in the arch');
  });
});

const codes = (document: ReturnType<typeof sampleSeries>, work?: Parameters<typeof findCombinations>[1]): readonly string[] => findCombinations(document, work).map(({ code }) => code);

describe('combinations', () => {
  const evening = { start: at('2026-12-01', '18:30'), end: at('2026-12-01', '20:30') };
  const later = { start: at('2026-12-01', '20:30'), end: at('2026-12-01', '21:30') };

  it('find a burner with solvent in the air: in one task, beside another, or while paint is wet', () => {
    expect(codes(withHazards('task-fit', ['solvent-wiping', 'heater-or-flame']))).toContain('burner-in-vapour');
    const apart = changeTask(withHazards('task-fit', ['heater-or-flame']), 'task-strip', { hazards: { facts: ['solvent-wiping'], toolShare: 1, sprayed: null, departure: null } });
    expect(codes(apart)).toEqual([]);
    const pieces = [{ taskId: 'task-fit', personIds: ['person-robin'], ...evening }, { taskId: 'task-strip', personIds: ['person-kim'], ...evening }];
    expect(codes(apart, { pieces, wet: [] })).toContain('burner-in-vapour');
    expect(codes(apart, { pieces: [pieces[0]!, { ...pieces[1]!, ...later }], wet: [] })).not.toContain('burner-in-vapour');
    expect(codes(withHazards('task-fit', ['heater-or-flame']), { pieces: [pieces[0]!], wet: [{ taskId: 'task-strip', ...evening }] })).toContain('burner-in-vapour');
  });

  it('find grinding near wet paint and near fuel, and dust after wet paint', () => {
    const pieces = [{ taskId: 'task-fit', personIds: ['person-robin', 'person-kim'], ...evening }];
    const wet = [{ taskId: 'task-strip', ...evening }];
    expect(codes(withHazards('task-fit', ['grinding']), { pieces, wet })).toContain('sparks-near-wet-paint');
    expect(codes(withHazards('task-fit', ['grinding']), { pieces, wet: [{ taskId: 'task-strip', ...later }] })).not.toContain('sparks-near-wet-paint');
    expect(codes(withHazards('task-fit', ['grinding', 'petrol']))).toContain('sparks-near-fuel');
    expect(codes(withHazards('task-fit', [], { isDusty: true }), { pieces, wet })).toContain('dust-on-wet-paint');
    expect(codes(withHazards('task-fit', [], { isDusty: false }), { pieces, wet })).not.toContain('dust-on-wet-paint');
  });

  it('find chlorinated cleaner before heat on the same part', () => {
    const cleaned = withHazards('task-strip', ['chlorinated']);
    expect(codes(cleaned)).not.toContain('cleaner-before-heat');
    expect(codes(changeTask(cleaned, 'task-prime', { hazards: { facts: ['arc-welding'], toolShare: 1, sprayed: null, departure: null } }))).toContain('cleaner-before-heat');
    expect(codes(changeTask(cleaned, 'task-prime', { parts: [], hazards: { facts: ['arc-welding'], toolShare: 1, sprayed: null, departure: null } }))).not.toContain('cleaner-before-heat');
  });

  it('find somebody alone with a hazard that needs two', () => {
    const raised = { ...withHazards('task-fit', ['under-raised-load']) };
    const pieces = [{ taskId: 'task-fit', personIds: ['person-robin'], ...evening }];
    expect(codes(raised, { pieces, wet: [] })).not.toContain('alone-with-hazard');
    const alone = { ...raised, sessions: raised.sessions.map((session) => ({ ...session, crewIds: ['person-robin'] })) };
    expect(codes(alone, { pieces, wet: [] })).toContain('alone-with-hazard');
    expect(codes({ ...alone, ...withHazards('task-fit', ['blow-gun']), sessions: alone.sessions }, { pieces, wet: [] })).not.toContain('alone-with-hazard');
  });

  it('find gloves at a turning spindle, stated or laid out, and not where the list says no gloves', () => {
    expect(codes(withHazards('task-fit', ['turning-or-drilling'], { layOut: ['Cutting oil'] }))).not.toContain('gloves-at-spindle');
    expect(codes(withHazards('task-fit', ['turning-or-drilling'], { layOut: ['Nitrile gloves'] }))).toContain('gloves-at-spindle');
    expect(codes(withHazards('task-fit', ['turning-or-drilling'], { layOut: ['No gloves, hair tied'] }))).not.toContain('gloves-at-spindle');
    expect(codes(withHazards('task-fit', ['turning-or-drilling', 'gloves-worn'], { layOut: [] }))).toContain('gloves-at-spindle');
  });
});

describe('the library', () => {
  it('has at least 33 hazards with different ids, and every fact of the form sets off or decides something', () => {
    expect(LIBRARY.length).toBeGreaterThanOrEqual(33);
    expect(new Set(LIBRARY.map(({ id }) => id)).size).toBe(LIBRARY.length);
    const used = new Set(LIBRARY.flatMap(({ trigger, deferral }) => [...trigger.flat(), ...(deferral === null || deferral.when === 'always' ? [] : deferral.when.flat())]));
    // These two decide combinations only.
    expect(HAZARD_FACTS.filter((fact) => !used.has(fact))).toEqual(['alone', 'gloves-worn']);
  });
});
