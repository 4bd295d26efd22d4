import { describe, expect, it } from 'vitest';
import { addDays, dateOf, wallOf } from '@/lib/calendar';
import { checkSeries, deriveOrder, findCycle, listStateUses, listWorks, sessionLength, sessionsFor, type SeriesDocument, type Task } from '@/lib/build';
import { bookable, threePointMean } from '@/lib/estimate';
import { demoSeries, DEMO_ZONE } from '@/seed/demo';

/** Mondays: the year's end inside, the clock going forward inside, back inside, and a leap day. */
const MONDAYS = ['2026-11-23', '2027-02-01', '2026-08-17', '2028-01-10', '2026-06-01'];
const demo = demoSeries('2026-11-23');

const hoursOf = (total: number): number => total / 60;
const crewOf = (task: Task): number => task.crew.reduce((sum, need) => sum + need.count, 0);
const isAhead = (task: Task, purpose: string): boolean => task.irreversible && purpose === 'before';
const open = (document: SeriesDocument): readonly Task[] => document.tasks.filter((task) => task.doneAt === null);

/** Minutes that a session must give to a task: mean hands-on time and what is filmed while it lasts. */
function sessionMinutes(task: Task): number {
  const filming = task.shots.filter((shot) => !isAhead(task, shot.purpose)).reduce((sum, shot) => sum + shot.time, 0);
  return bookable(threePointMean(task.effort) + filming);
}

function collectIds(value: unknown, into: string[]): string[] {
  if (Array.isArray(value)) for (const one of value) collectIds(one, into);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'id' && typeof inner === 'string') into.push(inner);
      else collectIds(inner, into);
    }
  }
  return into;
}

/** The ids that records define themselves, without references such as whereabouts and links. */
const ownIds = (document: SeriesDocument): readonly string[] => [
  document.series.id,
  ...[document.people, document.places, document.equipment, document.materials, document.trades, document.outsideJobs, document.links, document.sessions, document.episodes].flat().map((one) => one.id),
  ...document.parts.flatMap((part) => [part.id, ...part.states.map((state) => state.id)]),
  ...document.tasks.flatMap((task) => [task.id, ...task.shots.map((shot) => shot.id), ...task.coats.map((coat) => coat.id)]),
];

function textsOf(value: unknown, into: string[] = []): string[] {
  if (typeof value === 'string') into.push(value);
  else if (Array.isArray(value)) for (const one of value) textsOf(one, into);
  else if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) textsOf(inner, into);
  return into;
}

const taskOf = (id: string): Task => demo.tasks.find((one) => one.id === id)!;
const said = (one: Task): string => [...one.layOut, ...one.cautions, ...one.shots.map((shot) => shot.name)].join(' ').toLowerCase();

describe('the size of the demo', () => {
  it('has three people with different skills and different evenings', () => {
    expect(demo.people).toHaveLength(3);
    expect(new Set(demo.people.map((person) => person.skills.toSorted().join())).size).toBe(3);
    const evenings = demo.people.map((person) => demo.sessions.filter((session) => session.crewIds.includes(person.id)).map((session) => session.id).join());
    expect(new Set(evenings).size).toBe(3);
  });

  it('has at least 70 tasks, 30 parts, 10 materials, 7 outside jobs at 7 trades and 12 episodes', () => {
    expect(demo.tasks.length).toBeGreaterThanOrEqual(70);
    expect(demo.parts.length).toBeGreaterThanOrEqual(30);
    expect(demo.materials.length).toBeGreaterThanOrEqual(10);
    expect(demo.outsideJobs.length).toBeGreaterThanOrEqual(7);
    expect(new Set(demo.outsideJobs.map((job) => job.tradeId)).size).toBeGreaterThanOrEqual(7);
    expect(demo.episodes.length).toBeGreaterThanOrEqual(12);
  });

  it.each(MONDAYS)('has evenings and weekend days in each of at least 14 weeks from %s, none in the night', (monday) => {
    const sessions = demoSeries(monday).sessions.map((session) => wallOf(session.start, DEMO_ZONE));
    const weeks = Array.from({ length: 14 }, (_, week) => [addDays(monday, week * 7), addDays(monday, week * 7 + 6)] as const);
    for (const [first, last] of weeks) expect(sessions.some(({ date }) => date >= first && date <= last), `week of ${first}`).toBe(true);
    expect(new Set(sessions.map(({ weekday, time }) => `${weekday} ${time}`))).toEqual(new Set(['2 18:30', '4 18:30', '6 09:30', '7 10:00']));
  });
});

describe('what the demo must contain', () => {
  it('eases the caliper pistons out with low air, a wood pad and hands clear, after the maker\'s instructions', () => {
    const pistons = taskOf('task-caliper-pistons');
    for (const words of ['regulator', 'wood pad', 'hands clear', "maker's instructions come first", 'caution spoken', 'ear protection', 'face shield']) expect(said(pistons)).toContain(words);
    expect(pistons.equipmentIds).toContain('equip-compressor');
  });

  it('sprays only with a fan, a cold heater, an A2P3 mask and a data sheet without isocyanate', () => {
    const sprayed = demo.tasks.filter((one) => one.equipmentIds.includes('equip-spray-gun'));
    expect(sprayed.length).toBeGreaterThanOrEqual(5);
    for (const one of sprayed) {
      expect(one.equipmentIds).toContain('equip-tent-fan');
      expect(one.placeId).toBe('place-paint-tent');
      for (const words of ['a2p3', 'isocyanate', 'heater off', 'fan on']) expect(said(one), one.name).toContain(words);
    }
    expect(demo.materials.filter((material) => material.hasIsocyanate)).toEqual([]);
  });

  it('galvanizes the chassis after its vent holes and primes it within a window afterwards', () => {
    const states = demo.parts.find((part) => part.id === 'part-chassis')!.states.map((state) => state.id);
    expect(states.indexOf('state-chassis-vented')).toBeLessThan(states.indexOf('state-chassis-galvanized'));
    expect(demo.links.find((link) => link.id === 'link-profile-prime')).toMatchObject({ from: { id: 'task-zinc-profile' }, to: { id: 'task-zinc-prime' } });
    expect(demo.links.find((link) => link.id === 'link-profile-prime')!.maxWait).not.toBeNull();
    expect(demo.outsideJobs.some((job) => job.parts.some((use) => use.to?.endsWith('-powder-coated')))).toBe(true);
  });

  it('waits two weeks of elapsed time between the rims\' last coat and the tyres', () => {
    expect(demo.links.find((link) => link.id === 'link-rims-tyres')).toMatchObject({ minWait: 14 * 1440, clock: 'elapsed', to: { kind: 'outsideJob', id: 'job-tyres' } });
  });

  it('films wide, medium and close before every irreversible step', () => {
    const irreversible = demo.tasks.filter((one) => one.irreversible);
    expect(irreversible.length).toBeGreaterThanOrEqual(3);
    for (const one of irreversible) {
      const before = one.shots.filter((shot) => shot.purpose === 'before' && shot.mustHave).map((shot) => shot.name.split(':')[0]);
      expect(before, one.name).toEqual(['Wide', 'Medium', 'Close']);
    }
  });

  it('has at least one recoat window with an end, and one bond or seal that only waits', () => {
    expect(demo.materials.some((material) => material.stages.recoatUntil !== null)).toBe(true);
    expect(demo.links.some((link) => link.stage === 'fullCure')).toBe(true);
  });

  it('says of every material where its figures come from', () => {
    for (const material of demo.materials) expect(material.source).toContain('no source');
  });

  it('has trades that close at the year\'s end, and every quote low, likely, high', () => {
    for (const trade of demo.trades) expect(trade.closed.some((span) => span.from <= '2026-12-24' && span.to >= '2027-01-01'), trade.name).toBe(true);
    for (const job of demo.outsideJobs) expect(job.quote.low <= job.quote.likely && job.quote.likely <= job.quote.high && job.quote.low > 0).toBe(true);
  });
});

describe('that it can be done', () => {
  it.each(MONDAYS)('has nothing the rules of a series object to, from %s', (monday) => {
    expect(checkSeries(demoSeries(monday)).map((found) => `${found.severity} ${found.code}: ${found.message}`)).toEqual([]);
  });

  it('makes each needed state exactly once, by one task or job, unless the part came in it', () => {
    const first = new Set(demo.parts.map((part) => part.states[0]!.id));
    for (const { stateId, makers, keepers, takers } of listStateUses(demo)) {
      expect(makers.length, stateId).toBe(first.has(stateId) ? 0 : 1);
      expect(takers.length, stateId).toBeLessThanOrEqual(1);
      expect(keepers.length + takers.length + makers.length).toBeGreaterThan(0);
    }
  });

  it('uses every state of every part, in the order in which the part lists them', () => {
    const moves = listWorks(demo).flatMap((work) => work.parts.filter((use) => use.to !== null));
    for (const part of demo.parts) {
      const steps = part.states.slice(1).map((state, index) => [part.states[index]!.id, state.id]);
      const made = moves.filter((use) => use.partId === part.id).map((use) => [use.from, use.to]);
      expect(made.toSorted(), part.name).toEqual(steps.toSorted());
    }
  });

  it('has an order of work without a ring', () => {
    expect(findCycle(deriveOrder(demo))).toBeNull();
  });

  it('has done only work whose forerunners are done, before the Monday', () => {
    const done = new Map(demo.tasks.filter((one) => one.doneAt !== null).map((one) => [one.id, one.doneAt!]));
    expect(done.size).toBeGreaterThanOrEqual(3);
    for (const at of done.values()) expect(dateOf(at, DEMO_ZONE) < '2026-11-23').toBe(true);
    for (const { from, to } of deriveOrder(demo)) {
      const later = done.get(to.id);
      if (later !== undefined) expect(done.get(from.id), `${from.id} before ${to.id}`).toBeLessThan(later);
    }
    const away = demo.outsideJobs.filter((job) => job.droppedOffAt !== null && job.collectedAt === null);
    expect(away.map((job) => job.id)).toEqual(['job-bright-work']);
    for (const use of away[0]!.parts) expect(demo.parts.find((part) => part.id === use.partId)!.whereabouts).toEqual({ kind: 'trade', id: 'trade-plater' });
  });

  it.each(MONDAYS)('gives each task in one go at least two sessions that can hold it within the fill limit, from %s', (monday) => {
    const document = demoSeries(monday);
    for (const work of open(document).filter((one) => one.inOneGo)) {
      const fitting = sessionsFor(document, work).filter((session) => sessionLength(session) * document.series.fillLimit >= sessionMinutes(work));
      expect(fitting.length, work.name).toBeGreaterThanOrEqual(2);
    }
  });

  it.each(MONDAYS)('asks no more of the crew, or of one skill, than the fill limit leaves of its sessions, from %s', (monday) => {
    const document = demoSeries(monday);
    const offered = (has: (id: string) => boolean): number =>
      document.sessions.reduce((sum, session) => sum + sessionLength(session) * session.crewIds.filter(has).length, 0) * document.series.fillLimit;
    const asked = open(document).reduce((sum, task) => sum + sessionMinutes(task) * crewOf(task), 0);
    expect(hoursOf(asked)).toBeLessThan(hoursOf(offered(() => true)));
    const skills = new Set(document.tasks.flatMap((task) => task.crew.map((need) => need.skill)));
    for (const skill of skills) {
      if (skill === null) continue;
      const need = open(document).reduce((sum, task) => sum + sessionMinutes(task) * task.crew.filter((one) => one.skill === skill).reduce((count, one) => count + one.count, 0), 0);
      const able = new Set(document.people.filter((person) => person.skills.includes(skill)).map((person) => person.id));
      expect(hoursOf(need), skill).toBeLessThan(hoursOf(offered((id) => able.has(id))));
    }
  });

  it('has filmed and silent sessions, and people missing from some', () => {
    expect(demo.sessions.some((session) => session.isRecording)).toBe(true);
    expect(demo.sessions.some((session) => !session.isRecording)).toBe(true);
    expect(demo.sessions.some((session) => session.crewIds.length < 2)).toBe(true);
    for (const session of demo.sessions) expect(session.crewIds.length, session.id).toBeGreaterThan(0);
  });
});

describe('the days it lies on', () => {
  it.each(MONDAYS)('starts its first session in the week of %s and releases nothing before it', (monday) => {
    const document = demoSeries(monday);
    const dates = document.sessions.map((session) => dateOf(session.start, DEMO_ZONE));
    expect(dates[0]).toBe(addDays(monday, 1));
    expect(dates.toSorted()).toEqual(dates);
    for (const episode of document.episodes) expect(episode.releaseDate > monday).toBe(true);
  });

  it('keeps the wall time of an evening on both sides of a clock change', () => {
    const tuesdays = demoSeries('2027-02-01').sessions.filter((session) => session.name === 'Tuesday evening');
    expect(new Set(tuesdays.map((session) => wallOf(session.start, DEMO_ZONE).time))).toEqual(new Set(['18:30']));
    expect(new Set(tuesdays.map((session) => (session.start / 3_600_000) % 24)).size).toBe(2);
  });

  it('leaves out the days around the year\'s end', () => {
    const dates = new Set(demo.sessions.map((session) => dateOf(session.start, DEMO_ZONE)));
    for (const day of ['2026-12-24', '2026-12-26', '2026-12-31']) expect(dates.has(day)).toBe(false);
    expect(dates.has('2026-12-29')).toBe(true);
  });

  it('refuses a day that is not a Monday', () => {
    expect(() => demoSeries('2026-11-24')).toThrow('is not one');
  });
});

describe('names and ids', () => {
  it('gives every record, state, shot and coat an id of its own', () => {
    const ids = ownIds(demo);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('gives every record a fresh id when asked, and leaves no reference behind', () => {
    let count = 0;
    const renewed = demoSeries('2026-11-23', () => `fresh-${(count += 1)}`);
    expect(new Set(ownIds(renewed)).size).toBe(ownIds(demo).length);
    const old = new Set(ownIds(demo));
    expect(textsOf(renewed).filter((text) => old.has(text))).toEqual([]);
    expect(collectIds(renewed, []).every((id) => id.startsWith('fresh-'))).toBe(true);
    expect(checkSeries(renewed)).toEqual([]);
  });

  it('has no placeholder in any text, and a name for everything', () => {
    const texts = textsOf(demo);
    expect(texts.filter((text) => /lorem|ipsum|todo|fixme|tbd|xxx|foo\b|placeholder|\bexample\b|https?:|@/i.test(text))).toEqual([]);
    for (const list of Object.values(demo)) if (Array.isArray(list)) for (const record of list) expect(record.name.trim().length).toBeGreaterThan(2);
  });

  it('tells each task what to lay out, and a place of the manual where the machine is worked on', () => {
    for (const task of demo.tasks) expect(task.layOut.length, task.name).toBeGreaterThan(0);
    expect(demo.tasks.filter((task) => task.manualReference !== '').length).toBeGreaterThanOrEqual(30);
    expect(demo.tasks.filter((task) => task.cautions.length > 0).length).toBeGreaterThanOrEqual(50);
  });
});
