/** Hazards that come from two things together: in one air, one after the other, or one person too few. One rule a function. */
import { startWith, subjectOf, type HazardFact, type SeriesDocument, type Session, type Task } from '@/lib/build';
import { issue, type Issue } from '@/lib/result';
import type { Instant } from '@/lib/units';
import type { WorkedPiece } from './exposure';
import { findHazards } from './find-hazards';
import { listHazards } from './library-in-force';
import { factsOfTask } from './task-facts';

/** Air that holds wet paint or its vapour, after or during a task. */
export interface WetAir {
  readonly taskId: string;
  readonly start: Instant;
  readonly end: Instant;
}

/** The dated side of a plan, as far as the rules need it. Empty: only what follows from the tasks themselves is found. */
export interface DatedWork {
  readonly pieces: readonly WorkedPiece[];
  readonly wet: readonly WetAir[];
}

interface Scene {
  readonly document: SeriesDocument;
  readonly work: DatedWork;
  readonly tasks: ReadonlyMap<string, { readonly task: Task; readonly facts: ReadonlySet<HazardFact>; readonly airZone: string; readonly isTwoPerson: boolean }>;
}

type Span = { readonly start: Instant; readonly end: Instant };

const overlaps = (a: Span, b: Span): boolean => a.start < b.end && b.start < a.end;
const BURNS: readonly HazardFact[] = ['heater-or-flame', 'arc-welding', 'gas-welding', 'hot-cutting'];
const SPARKS: readonly HazardFact[] = [...BURNS, 'grinding'];
const HOT: readonly HazardFact[] = ['arc-welding', 'gas-welding', 'hot-cutting', 'heating'];
const FUEL: readonly HazardFact[] = ['fuel-opened', 'petrol'];
const IN_AIR: readonly HazardFact[] = ['solvent', 'solvent-wiping', 'chlorinated'];
const hasAny = (facts: ReadonlySet<HazardFact>, wanted: readonly HazardFact[]): boolean => wanted.some((fact) => facts.has(fact));

const factsIn = (document: SeriesDocument, task: Task): ReadonlySet<HazardFact> => new Set(factsOfTask(document, task).map(({ fact }) => fact));

/** Grinding, an arc, a flame, a lit heater. */
export const makesSparks = (facts: readonly HazardFact[]): boolean => SPARKS.some((fact) => facts.includes(fact));

/** Solvent comes into the air. */
export const givesOffVapour = (facts: readonly HazardFact[]): boolean => IN_AIR.some((fact) => facts.includes(fact));

function sceneOf(document: SeriesDocument, work: DatedWork): Scene {
  const hazards = listHazards(document);
  const zones = new Map(document.places.map(({ id, airZone }) => [id, airZone]));
  const tasks = new Map(document.tasks.map((task) => [task.id, {
    task, facts: factsIn(document, task), airZone: zones.get(task.placeId) ?? task.placeId,
    isTwoPerson: findHazards(document, task, hazards).found.some(({ hazard }) => hazard.needsSecondPerson),
  }]));
  return { document, work, tasks };
}

type Known = Scene['tasks'] extends ReadonlyMap<string, infer T> ? T : never;

interface Meeting {
  readonly first: Known;
  readonly second: Known;
}

/** Pairs of different tasks at one time in one air. */
function listMeetings({ work, tasks }: Scene, isFirst: (one: Known) => boolean, isSecond: (one: Known) => boolean): readonly Meeting[] {
  return work.pieces.flatMap((piece) => {
    const first = tasks.get(piece.taskId);
    if (first === undefined || !isFirst(first)) return [];
    return work.pieces.flatMap((other) => {
      const second = tasks.get(other.taskId);
      const meets = second !== undefined && other.taskId !== piece.taskId && second.airZone === first.airZone && overlaps(piece, other) && isSecond(second);
      return meets ? [{ first, second }] : [];
    });
  });
}

/** Tasks worked while paint of another task is wet in the same air. */
function listWetMeetings({ work, tasks }: Scene, isFirst: (one: Known) => boolean): readonly Meeting[] {
  return work.wet.flatMap((air) => {
    const second = tasks.get(air.taskId);
    if (second === undefined) return [];
    return work.pieces.flatMap((piece) => {
      const first = tasks.get(piece.taskId);
      const meets = first !== undefined && piece.taskId !== air.taskId && first.airZone === second.airZone && overlaps(piece, air) && isFirst(first);
      return meets ? [{ first, second }] : [];
    });
  });
}

const pairIssue = (code: string, { first, second }: Meeting, words: string, fix: string): Issue =>
  issue(code, `${startWith(first.task)} ${words} “${second.task.name}”.`, fix, { subjects: [subjectOf(first.task), subjectOf(second.task)] });

/** A burner with solvent in the air: in one task, in two at a time, or a heated session. */
function findBurnerInVapour(scene: Scene): readonly Issue[] {
  const own = [...scene.tasks.values()].filter(({ facts }) => hasAny(facts, IN_AIR) && hasAny(facts, BURNS)).map(({ task }) =>
    issue('burner-in-vapour', `${startWith(task)} has a flame, an arc or a heater and solvent in the same air.`, 'Split it in two tasks: heater off, unplugged and cold before any lid comes off.', { subjects: [subjectOf(task)] }));
  const pairs = listMeetings(scene, ({ facts }) => hasAny(facts, BURNS), ({ facts }) => hasAny(facts, IN_AIR))
    .map((meeting) => pairIssue('burner-in-vapour', meeting, 'has a flame, an arc or a heater in the air of', 'Plan them in different sessions, or in places that share no air.'));
  const wet = listWetMeetings(scene, ({ facts }) => hasAny(facts, BURNS))
    .map((meeting) => pairIssue('burner-in-vapour', meeting, 'has a flame, an arc or a heater while paint is wet in the same air:', 'Wait until it is touch dry and the fan has cleared the air.'));
  return [...own, ...pairs, ...wet, ...findHeatedSessions(scene)];
}

function findHeatedSessions({ document, work, tasks }: Scene): readonly Issue[] {
  const heated = document.sessions.filter(({ heating }) => heating !== null);
  return work.pieces.flatMap((piece) => {
    const known = tasks.get(piece.taskId);
    const session = heated.find((one) => overlaps(piece, one));
    if (known === undefined || session === undefined || !known.facts.has('spraying') || !known.facts.has('solvent')) return [];
    return [issue('heated-while-spraying', `${startWith(known.task)} sprays solvent in the heated session “${session.name}”.`, 'Heat first; then the heater is off, unplugged and cold before the lid comes off.', { severity: 'warn', subjects: [subjectOf(known.task), subjectOf(session)] })];
  });
}

/** Sparks where paint is wet, or beside open fuel. */
function findSparksNearFuel(scene: Scene): readonly Issue[] {
  const own = [...scene.tasks.values()].filter(({ facts }) => hasAny(facts, SPARKS) && hasAny(facts, FUEL)).map(({ task }) =>
    issue('sparks-near-fuel', `${startWith(task)} throws sparks beside open fuel.`, 'Close and remove the fuel in a task before it.', { subjects: [subjectOf(task)] }));
  const pairs = listMeetings(scene, ({ facts }) => hasAny(facts, SPARKS), ({ facts }) => hasAny(facts, FUEL))
    .map((meeting) => pairIssue('sparks-near-fuel', meeting, 'throws sparks while fuel is open in', 'Plan them in different sessions.'));
  const wet = listWetMeetings(scene, ({ facts }) => facts.has('grinding'))
    .map((meeting) => pairIssue('sparks-near-wet-paint', meeting, 'throws sparks while paint is wet from', 'Grind before the coat, or after it is touch dry.'));
  return [...own, ...pairs, ...wet];
}

/** Dust in air that holds wet paint. */
function findDustOnWetPaint(scene: Scene): readonly Issue[] {
  return listWetMeetings(scene, ({ task, facts }) => task.isDusty || facts.has('dust-sanding'))
    .map((meeting) => pairIssue('dust-on-wet-paint', meeting, 'makes dust while paint is wet from', 'Do the dusty work first, or wait until it is touch dry.'));
}

/** Chlorinated cleaner on a part, or in the air that day, before heat: phosgene. */
function findCleanerBeforeHeat({ tasks, work }: Scene): readonly Issue[] {
  const all = [...tasks.values()];
  return all.filter(({ facts }) => facts.has('chlorinated')).flatMap((first) => all.filter(({ facts }) => hasAny(facts, HOT)).flatMap((second) => {
    const isSame = first.task.id === second.task.id;
    const sharesPart = first.task.parts.some(({ partId }) => second.task.parts.some((use) => use.partId === partId));
    const followsInAir = first.airZone === second.airZone && work.pieces.some((piece) => piece.taskId === first.task.id
      && work.pieces.some((other) => other.taskId === second.task.id && other.start >= piece.start && other.start - piece.end < 86_400_000));
    if (!isSame && !sharesPart && !followsInAir) return [];
    return [issue('cleaner-before-heat', `${startWith(first.task)} uses chlorinated cleaner, and “${second.task.name}” brings heat or an arc to the same part or air: that makes phosgene.`,
      'Use a cleaner without chlorine, or wash the part with hot water and dry it before any heat.', { subjects: [subjectOf(first.task), ...(isSame ? [] : [subjectOf(second.task)])] })];
  }));
}

const crewIn = (sessions: readonly Session[], piece: WorkedPiece): ReadonlySet<string> =>
  new Set([...piece.personIds, ...sessions.filter((session) => overlaps(session, piece)).flatMap(({ crewIds }) => crewIds)]);

/** Nobody else in the building for work that needs a second person. */
function findAlone({ document, work, tasks }: Scene): readonly Issue[] {
  const alone = new Set([...tasks.values()].filter(({ facts, isTwoPerson }) => isTwoPerson && facts.has('alone')).map(({ task }) => task.id));
  for (const piece of work.pieces) {
    if (tasks.get(piece.taskId)?.isTwoPerson === true && crewIn(document.sessions, piece).size < 2) alone.add(piece.taskId);
  }
  return [...alone].flatMap((id) => {
    const task = tasks.get(id)?.task;
    return task === undefined ? [] : [issue('alone-with-hazard', `${startWith(task)} needs a second person in the building, and there is only one.`, 'Move it to a session with two, or ask somebody in.', { subjects: [subjectOf(task)] })];
  });
}

/** Gloves at a turning spindle: stated, or laid out for the task. */
function findGlovesAtSpindle({ tasks }: Scene): readonly Issue[] {
  return [...tasks.values()]
    .filter(({ task, facts }) => facts.has('turning-or-drilling') && (facts.has('gloves-worn') || task.layOut.some((text) => /\bgloves?\b/i.test(text) && !/\b(no|off)\b/i.test(text))))
    .map(({ task }) => issue('gloves-at-spindle', `${startWith(task)} has gloves at a turning spindle.`, 'Take the gloves off the list of things to lay out; write “no gloves” there.', { subjects: [subjectOf(task)] }));
}

function onceEach(issues: readonly Issue[]): readonly Issue[] {
  const keys = issues.map(({ code, subjects }) => `${code}:${subjects.map(({ id }) => id).join('+')}`);
  return issues.filter((_, index) => keys.indexOf(keys[index] ?? '') === index);
}

/** All of them, each pair of tasks once. */
export function findCombinations(document: SeriesDocument, work: DatedWork = { pieces: [], wet: [] }): readonly Issue[] {
  const scene = sceneOf(document, work);
  return onceEach([findBurnerInVapour, findSparksNearFuel, findDustOnWetPaint, findCleanerBeforeHeat, findAlone, findGlovesAtSpindle].flatMap((rule) => rule(scene)));
}
