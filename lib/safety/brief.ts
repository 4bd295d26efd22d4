/** The brief before a session: one page, from what is planned in it. */
import { attendanceOf, crewSize, type SeriesDocument, type Session, type Task } from '@/lib/build';
import { dateOf, formatLength } from '@/lib/calendar';
import type { Issue } from '@/lib/result';
import { findCombinations, type DatedWork } from './combinations';
import { clearanceOfTask } from './clearance';
import { listPersonDays, type PersonDay } from './exposure';
import { findHazards } from './find-hazards';
import { readSign, type Sign } from './iso-7010';
import { listHazards } from './library-in-force';
import type { Hazard, ProtectiveEquipment } from './model';

export interface BriefHazard {
  readonly hazard: Hazard;
  readonly taskNames: readonly string[];
  readonly isDeferred: boolean;
}

export interface SessionBrief {
  /** What is planned in the session, earliest first. */
  readonly pieces: DatedWork['pieces'];
  /** In the order proposed: dusty work first, wet paint last. */
  readonly tasks: readonly Task[];
  /** The severest first. */
  readonly hazards: readonly BriefHazard[];
  /** Things to lay out, each once, with what is worn. */
  readonly layOut: readonly string[];
  readonly equipment: readonly ProtectiveEquipment[];
  /** Tasks for which somebody else must be in the building, and whether two are. */
  readonly notAlone: readonly { readonly taskName: string; readonly isCovered: boolean }[];
  /** Extinguisher, fire blanket, first aid, eyewash, emergency stop: at hand before the start. */
  readonly atHand: readonly Sign[];
  readonly ventilation: readonly string[];
  readonly combinations: readonly Issue[];
  readonly stopRules: readonly string[];
  /** Cautions written into the tasks themselves. */
  readonly cautions: readonly { readonly taskName: string; readonly texts: readonly string[] }[];
  /** Names of tasks for which nobody has stated a fact that is a hazard. */
  readonly unstated: readonly string[];
  readonly exposures: readonly PersonDay[];
}

const SEVERITIES: readonly Hazard['severity'][] = ['I', 'II', 'III', 'IV'];
const AT_HAND: readonly string[] = ['E003', 'E011', 'E020', 'F001', 'F016'];

/** Dusty 0, anything else 1, coats 2: dust settles before paint is wet. */
function cleanliness(task: Task): number {
  if (task.coats.length > 0) return 2;
  return task.isDusty || task.hazards.facts.includes('dust-sanding') || task.hazards.facts.includes('grinding') ? 0 : 1;
}

function listBriefHazards(document: SeriesDocument, tasks: readonly Task[]): readonly BriefHazard[] {
  const all = listHazards(document);
  const found = tasks.flatMap((task) => findHazards(document, task, all).found.map((one) => ({ ...one, task })));
  return all.flatMap((hazard): readonly BriefHazard[] => {
    const here = found.filter((one) => one.hazard.id === hazard.id);
    return here.length === 0 ? [] : [{ hazard, taskNames: here.map(({ task }) => task.name), isDeferred: here.some(({ isDeferred }) => isDeferred) }];
  }).toSorted((a, b) => SEVERITIES.indexOf(a.hazard.severity) - SEVERITIES.indexOf(b.hazard.severity));
}

function listAtHand(hazards: readonly BriefHazard[]): readonly Sign[] {
  const codes = new Set(['E003', 'F001', ...hazards.flatMap(({ hazard }) => hazard.signs)]);
  return AT_HAND.filter((code) => codes.has(code)).flatMap((code) => {
    const sign = readSign(code);
    return sign.ok ? [sign.value] : [];
  });
}

function listStopRules(hazards: readonly BriefHazard[]): readonly string[] {
  const own = hazards.flatMap(({ hazard }) => (hazard.deferral === null ? [] : [`${hazard.name}: stop when ${hazard.deferral.text}`]));
  return ['Anybody may stop the work, and nobody has to say why first', 'Somebody is hurt or feels ill: stop, help, call', 'A control is missing or does not work: stop until it does', ...own];
}

/** Where isocyanate is sprayed: who stays out, and for how long. */
function listClearances(document: SeriesDocument, tasks: readonly Task[]): readonly string[] {
  return tasks.flatMap((task) => {
    const wait = clearanceOfTask(document, task);
    if (wait === null) return [];
    const own = document.places.find(({ id }) => id === task.placeId);
    const names = document.places.filter(({ airZone }) => airZone === own?.airZone).map(({ name }) => name).join(', ');
    const long = wait.ok ? `for ${formatLength(wait.value)} after it` : 'until the next day: nobody has said how long its air takes to clear';
    return [`${names}: nobody without air-fed protection during “${task.name}” and ${long}`];
  });
}

function listVentilation(document: SeriesDocument, tasks: readonly Task[], hazards: readonly BriefHazard[]): readonly string[] {
  const names = new Set(hazards.filter(({ hazard }) => hazard.signs.includes('M057')).flatMap(({ taskNames }) => taskNames));
  const placeIds = new Set(tasks.filter(({ name }) => names.has(name)).map(({ placeId }) => placeId));
  return document.places.filter(({ id }) => placeIds.has(id)).map(({ name, air }) =>
    (air.airChanges === null ? `${name}: ventilation on; nobody has said how much air it moves` : `${name}: ventilation on before the start, ${air.airChanges} air changes an hour`));
}

/** Equipment each thing once, in the order of the hazards. */
function listEquipment(hazards: readonly BriefHazard[]): readonly ProtectiveEquipment[] {
  const all = hazards.flatMap(({ hazard }) => hazard.equipment);
  return all.filter(({ text }, index) => all.findIndex((other) => other.text === text) === index);
}

/** The brief of a session from the dated work in it. What its people do outside of it counts for the exposure of their day only. */
export function briefSession(document: SeriesDocument, session: Session, work: DatedWork): SessionBrief {
  const pieces = work.pieces.filter((piece) => piece.start < session.end && session.start < piece.end).toSorted((a, b) => a.start - b.start);
  const here = new Set(pieces.map(({ taskId }) => taskId));
  const startOf = (task: Task): number => Math.min(...pieces.filter(({ taskId }) => taskId === task.id).map(({ start }) => start));
  const tasks = document.tasks.filter(({ id }) => here.has(id)).toSorted((a, b) => cleanliness(a) - cleanliness(b) || startOf(a) - startOf(b));
  const hazards = listBriefHazards(document, tasks);
  const twoPerson = new Set(hazards.filter(({ hazard }) => hazard.needsSecondPerson).flatMap(({ taskNames }) => taskNames));
  const inNumber = attendanceOf(document, session).present.length;
  const { zone } = document.series;
  const dates = new Set([dateOf(session.start, zone), ...pieces.map(({ start }) => dateOf(start, zone))]);
  const present = new Set(pieces.flatMap(({ personIds }) => personIds));
  const exposures = listPersonDays(document, work.pieces).filter(({ date, personId }) => dates.has(date) && present.has(personId));
  return {
    pieces, tasks, hazards, equipment: listEquipment(hazards),
    layOut: [...new Set(tasks.flatMap(({ layOut }) => layOut))],
    notAlone: tasks.filter(({ name }) => twoPerson.has(name)).map((task) => ({ taskName: task.name, isCovered: inNumber > 1 && inNumber >= crewSize(task) })),
    atHand: listAtHand(hazards),
    ventilation: [...listVentilation(document, tasks, hazards), ...listClearances(document, tasks)],
    combinations: findCombinations(document, work).filter(({ subjects }) => subjects.some(({ kind, id }) => kind === 'task' && here.has(id))),
    stopRules: listStopRules(hazards),
    cautions: tasks.filter(({ cautions }) => cautions.length > 0).map(({ name, cautions }) => ({ taskName: name, texts: cautions })),
    unstated: tasks.filter(({ name }) => !hazards.some(({ taskNames }) => taskNames.includes(name))).map(({ name }) => name),
    exposures,
  };
}
