import { describe, expect, it } from 'vitest';
import { addReading, briefSession, buildMatrix, LIBRARY, listReviews, type ReadingDraft } from '@/lib/safety';
import { at } from '../build/sample-series';
import { changeTask, withHazards } from './sample';

const evening = (taskId: string, from = '18:30', to = '19:30') => ({ taskId, personIds: ['person-robin'], start: at('2026-12-01', from), end: at('2026-12-01', to) });

describe('the brief of a session', () => {
  const document = changeTask(withHazards('task-fit', ['under-raised-load', 'engine-running']), 'task-clean', { hazards: { facts: ['grinding'], toolShare: 1, sprayed: null, departure: null } });
  const [session] = document.sessions;
  if (session === undefined) throw new Error('There is a session');
  const brief = briefSession(document, session, { pieces: [evening('task-prime'), evening('task-fit'), evening('task-clean', '20:00', '21:00')], wet: [] });

  it('puts dusty work first and coats last', () => {
    expect(brief.tasks.map(({ id }) => id)).toEqual(['task-clean', 'task-fit', 'task-prime']);
  });

  it('has the severest hazards first, what to lay out, what is at hand, ventilation and when to stop', () => {
    expect(brief.hazards[0]?.hazard.severity).toBe('I');
    expect(brief.layOut.length).toBe(new Set(brief.layOut).size);
    expect(brief.atHand.map(({ code }) => code)).toEqual(expect.arrayContaining(['E003', 'F001']));
    expect(brief.ventilation.join()).toContain('nobody has said how much air it moves');
    expect(brief.stopRules.join()).toContain('Anybody may stop the work');
  });

  it('says who must not be alone, and whether a second person is in', () => {
    expect(brief.notAlone).toContainEqual(expect.objectContaining({ isCovered: true }));
    const alone = briefSession(document, { ...session, crewIds: ['person-robin'] }, { pieces: [evening('task-fit')], wet: [] });
    expect(alone.notAlone).toEqual([expect.objectContaining({ isCovered: false })]);
  });

  it('counts what the same people do in another session of the day, and nobody who is not in', () => {
    const drill = { ...document, equipment: document.equipment.map((one) => ({ ...one, exposure: { noise: null, vibration: 5, source: 'handbook' } })) };
    const held = changeTask(drill, 'task-clean', { equipmentIds: ['equipment-gun'] });
    const morning = { taskId: 'task-clean', personIds: ['person-robin', 'person-kim'], start: at('2026-12-01', '09:00'), end: at('2026-12-01', '10:00') };
    const { exposures } = briefSession(held, session, { pieces: [morning, evening('task-clean', '20:00', '21:00')], wet: [] });
    expect(exposures.map(({ personId, vibration }) => [personId, Math.round(vibration.points)])).toEqual([['person-robin', 100]]);
  });

  const ventilationOf = (airChanges: number | null) => briefSession({
    ...changeTask(document, 'task-prime', { hazards: { facts: ['spraying'], toolShare: 1, sprayed: null, departure: null } }),
    materials: document.materials.map((material) => ({ ...material, hasIsocyanate: true })),
    places: document.places.map((place) => ({ ...place, airZone: 'arch', air: { volume: 80, airChanges, source: '' } })),
  }, session, { pieces: [evening('task-prime')], wet: [] }).ventilation.at(-1);

  it('says who stays out where isocyanate is sprayed, and for how long', () => {
    expect(ventilationOf(6)).toBe('Main bay, Spray corner: nobody without air-fed protection during “Prime the frame” and for 47 min after it');
    expect(ventilationOf(null)).toContain('until the next day: nobody has said how long its air takes to clear');
    expect(brief.ventilation.some((line) => line.includes('air-fed'))).toBe(false);
  });

  it('is empty for a session with nothing planned, and then still names extinguisher and first aid', () => {
    const empty = briefSession(document, session, { pieces: [], wet: [] });
    expect([empty.tasks, empty.hazards, empty.equipment]).toEqual([[], [], []]);
    expect(empty.atHand.map(({ code }) => code)).toEqual(['E003', 'F001']);
  });
});

describe('the series at a glance', () => {
  it('shows which episode shows which hazard and how much of it is open', () => {
    const { rows, columns } = buildMatrix(withHazards('task-strip', ['air-into-bore']));
    const row = rows.find(({ hazard }) => hazard.id === 'piston-ejection');
    expect(row?.cells).toEqual([{ episodeId: 'episode-1', needed: 5, open: 5 }]);
    expect(columns.map(({ episode }) => episode.id)).toEqual(['episode-1', 'episode-2']);
    expect(columns.every(({ open }) => open > 0)).toBe(true);
  });

  const document = withHazards('task-strip', []);

  it('lists each source once with all that rely on it, due a year after it was read, what is due first', () => {
    const fresh = listReviews(document, '2026-12-01');
    expect(new Set(fresh.map(({ text }) => text)).size).toBe(fresh.length);
    expect(fresh.filter(({ standing }) => standing === 'read').every(({ dueOn }) => dueOn === '2027-11-25')).toBe(true);
    expect(fresh.filter(({ standing }) => standing === 'never read' || standing === 'no source').every(({ dueOn }) => dueOn === null)).toBe(true);
    const standings = (today: string) => new Set(listReviews(document, today).filter(({ dueOn }) => dueOn !== null).map(({ standing }) => standing));
    expect([...standings('2027-09-25')]).toEqual(['read']);
    expect([...standings('2027-09-26')]).toEqual(['due soon']);
    expect([...standings('2027-11-25')]).toEqual(['due soon']);
    expect([...standings('2027-11-26')]).toEqual(['overdue']);
    expect(listReviews(document, '2027-11-26')[0]?.standing).toBe('overdue');
  });

  it('goes by the oldest reading where hazards rely on different ones', () => {
    const [noise] = LIBRARY.filter(({ id }) => id === 'noise');
    if (noise === undefined) throw new Error('The library knows noise');
    const own = (id: string, reviewed: string) => ({ ...noise, kind: 'hazard', revision: 1, order: 0, id, replaces: null, sources: [{ text: 'Handbook', status: 'read', reviewed }] }) as const;
    const [first] = listReviews({ series: document.series, hazards: [own('a', '2026-10-01'), own('b', '2025-10-01')] }, '2026-12-01');
    expect(first).toMatchObject({ text: 'Handbook', reviewed: '2025-10-01', dueOn: '2026-10-01', standing: 'overdue' });
    expect(first?.hazards).toHaveLength(2);
  });

  it('starts the year again when somebody of the series has read a source, the last of them counting', () => {
    const today = '2027-12-01';
    const [overdue] = listReviews(document, today);
    const memory = listReviews(document, today).find(({ standing }) => standing === 'never read');
    if (overdue === undefined || memory === undefined) throw new Error('The library has such sources');
    const texts = [overdue.text, memory.text];
    const readings = texts.flatMap((text) => [{ text, on: '2027-11-30', by: 'Kim' }, { text, on: '2027-06-01', by: 'Robin' }]);
    const read = { ...document, series: { ...document.series, sourceReadings: readings } };
    const found = (day: string) => listReviews(read, day).filter(({ text }) => texts.includes(text)).map(({ by, dueOn, standing }) => [standing, dueOn, by]);
    expect(found(today)).toEqual([['read', '2028-11-29', 'Kim'], ['read', '2028-11-29', 'Kim']]);
    expect(new Set(found('2028-11-30').map(([standing]) => standing))).toEqual(new Set(['overdue']));
  });

  it('takes a reading only of a source that is there to be read, by somebody, on a day that has come', () => {
    const today = '2026-12-01';
    const codesOf = (draft: Partial<ReadingDraft>) => {
      const added = addReading(document, { text: listReviews(document, today)[0]?.text ?? '', on: today, personId: 'person-kim', ...draft }, today);
      return added.ok ? added.value.map(({ by, on }) => `${by} ${on}`) : added.error.map(({ code }) => code);
    };
    expect(codesOf({})).toEqual(['Kim 2026-12-01']);
    expect(codesOf({ on: '2026-12-02' })).toEqual(['reading-date']);
    expect(codesOf({ on: '' })).toEqual(['reading-date']);
    expect(codesOf({ personId: 'nobody', text: 'a book nobody names', on: 'soon' })).toEqual(['source-unknown', 'signed-by-nobody', 'reading-date']);
    expect(codesOf({ text: listReviews(document, today).find(({ standing }) => standing === 'no source')?.text ?? '' })).toEqual(['source-unknown']);
  });
});
