/** The state lines as a picture of the whole build: a thread for each part, marks for takes, places in percent of the time shown. */
import type { SeriesDocument } from '@/lib/build';
import { addDays, dateOf, formatDay, formatMoment, startOfDay } from '@/lib/calendar';
import { BEGINNING, nameOfState, type Facts, type StateLine, type StatePoint } from '@/lib/continuity';
import { loadFacts } from './continuity-facts';
import type { ViewContext } from './context';

/** A stretch of a thread in one state. */
export interface Stretch {
  readonly from: number;
  readonly width: number;
  readonly state: string;
  readonly isPlanned: boolean;
  readonly isAway: boolean;
  readonly branch: number;
  /** What it says when asked: `stripped since Tue 1 Dec 18:30, by “Strip the frame”`. */
  readonly words: string;
}

export interface ThreadView {
  readonly partId: string;
  readonly name: string;
  readonly assembly: string;
  readonly stretches: readonly Stretch[];
  readonly takes: readonly { readonly at: number; readonly words: string; readonly isGood: boolean }[];
  readonly redos: readonly string[];
  readonly disagreements: readonly string[];
}

export interface StatesView {
  /** Parts with a story so far or to come, by what they belong to. */
  readonly assemblies: readonly { readonly name: string; readonly threads: readonly ThreadView[] }[];
  /** Parts that nothing has happened to, and nothing is planned for: `Fork yokes, as found`. */
  readonly idle: readonly string[];
  readonly marks: readonly { readonly at: number; readonly label: string }[];
  readonly now: number;
  readonly from: string;
  readonly to: string;
}

const DAY_MS = 86_400_000;

interface Scale {
  readonly start: number;
  readonly end: number;
  readonly zone: string;
}

const placeOf = ({ start, end }: Scale, at: number): number => Math.round(Math.min(100, Math.max(0, ((at - start) / (end - start)) * 100)) * 100) / 100;

/** From the first thing that happened, or a week ago, to the last that is planned, or two weeks on. */
function makeScale(facts: Facts): Scale {
  const { zone } = facts.document.series;
  const moments = facts.lines.flatMap(({ points }) => points.map(({ at }) => at)).filter((at) => at !== BEGINNING);
  const first = moments.reduce((least, at) => Math.min(least, at), facts.now - 7 * DAY_MS);
  const last = moments.reduce((most, at) => Math.max(most, at), facts.now + 14 * DAY_MS);
  return { start: first - DAY_MS / 2, end: last + DAY_MS, zone };
}

function sayPoint({ zone }: Scale, point: StatePoint, state: string, where: string): string {
  const since = point.at === BEGINNING ? 'from the start' : `${point.isPlanned ? 'planned for' : 'since'} ${formatMoment(point.at, zone)}`;
  return `${[state, where].filter((word) => word !== '').join(', ')} ${since}${point.source.kind === 'start' ? '' : `: ${point.source.name}`}`;
}

function listStretches(facts: Facts, line: StateLine, scale: Scale): readonly Stretch[] {
  const part = facts.parts.get(line.partId);
  const points = line.points.toSorted((a, b) => a.at - b.at);
  let [stateId, isAway]: [string | null, boolean] = [null, part?.whereabouts.kind === 'trade' && line.points.every(({ whereabouts }) => whereabouts === null)];
  const stretches: Stretch[] = [];
  points.forEach((point, index) => {
    const before = { stateId, isAway };
    stateId = point.stateId ?? stateId;
    if (point.whereabouts !== null) isAway = point.whereabouts.kind === 'trade';
    const last = stretches.at(-1);
    const end = placeOf(scale, points[index + 1]?.at ?? scale.end);
    const from = placeOf(scale, point.at);
    const isSame = last !== undefined && before.stateId === stateId && before.isAway === isAway && last.isPlanned === point.isPlanned && last.branch === point.branch;
    if (isSame) stretches[stretches.length - 1] = { ...last, width: end - last.from };
    else stretches.push({ from, width: end - from, state: nameOfState(part, stateId), isPlanned: point.isPlanned, isAway, branch: point.branch, words: sayPoint(scale, point, nameOfState(part, stateId), isAway ? 'away' : '') });
  });
  return stretches.filter(({ width }) => width > 0);
}

function listMarks(scale: Scale): StatesView['marks'] {
  const days = Math.round((scale.end - scale.start) / DAY_MS);
  const step = Math.max(1, Math.ceil(days / 8));
  let date = dateOf(scale.start as Facts['now'], scale.zone);
  const marks: { at: number; label: string }[] = [];
  for (date = addDays(date, 1); startOfDay(date, scale.zone) < scale.end; date = addDays(date, step)) marks.push({ at: placeOf(scale, startOfDay(date, scale.zone)), label: formatDay(date) });
  return marks;
}

/** Nothing was done, seen or filmed of it, and nothing is planned. */
const isIdle = ({ stretches, takes, disagreements }: ThreadView): boolean => stretches.length < 2 && takes.length === 0 && disagreements.length === 0;

export async function viewStates(context: ViewContext, document: SeriesDocument): Promise<StatesView> {
  const facts = await loadFacts(context, document);
  const scale = makeScale(facts);
  const say = (partId: string, point: StatePoint): string => (point.stateId === null ? (point.whereabouts?.kind === 'trade' ? 'away' : 'here') : nameOfState(facts.parts.get(partId), point.stateId));
  const threads = document.parts.map((part): ThreadView => {
    const line = facts.lineOf.get(part.id);
    const takes = facts.takes.filter(({ taskId }) => taskId !== null && facts.tasks.get(taskId)?.parts.some(({ partId }) => partId === part.id));
    return {
      partId: part.id, name: part.name, assembly: part.assembly, stretches: line === undefined ? [] : listStretches(facts, line, scale),
      takes: takes.map((entry) => ({ at: placeOf(scale, entry.at), isGood: entry.take.verdict === 'good', words: `take ${entry.take.number}, ${entry.take.verdict}, ${formatMoment(entry.at, scale.zone)}` })),
      redos: (line?.redos ?? []).map((redo) => `Done again from ${nameOfState(part, redo.toId)}: ${formatMoment(redo.at, scale.zone)}, after it had been ${nameOfState(part, redo.fromId)} (${redo.source.name}).`),
      disagreements: facts.disagreements.filter(({ partId }) => partId === part.id).map(({ at, seen, said }) =>
        `${formatMoment(at, scale.zone)}: ${seen.source.name} says ${say(part.id, seen)}; ${said.isPlanned ? 'the plan of ' : ''}${said.source.name} says ${say(part.id, said)}.`),
    };
  });
  const names = [...new Set(threads.map(({ assembly }) => assembly))];
  const assemblies = names.map((name) => ({ name, threads: threads.filter((thread) => thread.assembly === name && !isIdle(thread)) })).filter((one) => one.threads.length > 0);
  const idle = threads.filter(isIdle).map(({ name, stretches }) => [name, stretches[0]?.state ?? ''].filter((word) => word !== '').join(', '));
  return { assemblies, idle, marks: listMarks(scale), now: placeOf(scale, context.now), from: formatDay(dateOf(scale.start as Facts['now'], scale.zone)), to: formatDay(dateOf(scale.end as Facts['now'], scale.zone)) };
}
