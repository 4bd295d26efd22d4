import { issue, type Issue } from '@/lib/result';
import { findWrongEntry, isLength, type Known } from './validate-known';
import type { Activity, Problem } from './problem';

type Add = (code: string, message: string, fix: string) => void;

function checkTimes(problem: Problem, activity: Activity, add: Add): void {
  const { id } = activity;
  if (!isLength(activity.duration)) {
    const code = activity.duration < 0 ? 'negative-duration' : 'not-a-minute';
    add(code, `Activity ${id} lasts ${activity.duration} minutes.`, 'Use whole minutes from 0.');
  }
  const times = { release: activity.release, latestEnd: activity.latestEnd, due: activity.due?.at, previousStart: activity.previousStart };
  for (const [name, time] of Object.entries(times)) {
    if (time !== undefined && !Number.isInteger(time)) add('not-a-minute', `Activity ${id} has ${name} ${time}.`, 'Use whole minutes.');
  }
  if (activity.previousCrew !== undefined && activity.previousStart === undefined) {
    add('previous-crew-without-start', `Activity ${id} names its previous people but no previous start.`, 'Give both, or neither.');
  }
  const weight = activity.due?.weight ?? 0;
  if (!Number.isFinite(weight) || weight < 0) add('bad-weight', `Activity ${id} has the weight ${weight}.`, 'Use a number from 0.');
  const pin = activity.pin?.start;
  if (pin === undefined) return;
  if (!isLength(pin)) add('not-a-minute', `Activity ${id} is pinned at ${pin}.`, 'Use whole minutes from 0.');
  else if (pin + activity.duration > problem.horizon) {
    add('pin-after-horizon', `Activity ${id} is pinned at ${pin} and lasts ${activity.duration}, past the horizon ${problem.horizon}.`, 'Pin it earlier or move the horizon.');
  }
}

function checkCalendar(activity: Activity, known: Known, add: Add): void {
  if (activity.calendar === undefined) return;
  const calendar = known.calendars.get(activity.calendar);
  if (calendar === undefined) {
    add('unknown-calendar', `Activity ${activity.id} names the calendar ${activity.calendar}, which is not there.`, 'Name a calendar of the problem.');
    return;
  }
  if (calendar.intervals.length === 0) {
    add('empty-calendar', `Activity ${activity.id} can only be worked in the calendar ${calendar.id}, which has no time in it.`, 'Add time to the calendar.');
    return;
  }
  const longest = calendar.intervals.reduce((most, interval) => Math.max(most, interval.end - interval.start), 0);
  if (activity.mode === 'one-go' && activity.duration > longest) {
    add('longer-than-any-interval', `Activity ${activity.id} takes ${activity.duration} minutes in one go, but the longest interval of ${calendar.id} is ${longest}.`,
      'Let it be interrupted, shorten it, or make an interval longer.');
  }
}

function checkPieces(activity: Activity, known: Known, add: Add): void {
  const { id, shortestPiece } = activity;
  if (shortestPiece === undefined) return;
  if (!isLength(shortestPiece) || shortestPiece === 0) {
    add('bad-shortest-piece', `Activity ${id} has ${shortestPiece} minutes as its shortest piece.`, 'Use whole minutes from 1.');
    return;
  }
  if (activity.mode === 'one-go') {
    add('pieces-in-one-go', `Activity ${id} is done in one go but has a shortest piece of ${shortestPiece} minutes.`, 'Leave the shortest piece out, or let the work be split.');
    return;
  }
  const intervals = known.calendars.get(activity.calendar ?? '')?.intervals ?? [];
  const least = Math.min(shortestPiece, activity.duration);
  if (intervals.length > 0 && intervals.every(({ start, end }) => end - start < least)) {
    add('interval-too-short', `No interval of the calendar ${activity.calendar} holds a piece of ${least} minutes, the shortest that activity ${id} allows.`, 'Allow shorter pieces, or make an interval longer.');
  }
}

function checkDoses({ doses, id }: Activity, add: Add): void {
  for (const { kind, perMinute } of doses ?? []) {
    if (!isLength(perMinute)) add('bad-dose', `Each minute of activity ${id} gives a dose of ${perMinute} of ${kind}.`, 'Use a whole number from 0.');
  }
}

function checkDemands(activity: Activity, known: Known, add: Add): void {
  const sums = new Map<string, number>();
  for (const demand of activity.demands) {
    if (!isLength(demand.amount)) add('bad-amount', `Activity ${activity.id} needs ${demand.amount} of ${demand.resource}.`, 'Use a whole number from 0.');
    sums.set(demand.resource, (sums.get(demand.resource) ?? 0) + demand.amount);
  }
  for (const [id, amount] of sums) {
    const resource = known.resources.get(id);
    if (resource === undefined) add('unknown-resource', `Activity ${activity.id} needs the resource ${id}, which is not there.`, 'Name a resource of the problem.');
    else if (amount > resource.capacity) {
      add('demand-above-capacity', `Activity ${activity.id} needs ${amount} of ${id}, but only ${resource.capacity} exist.`, 'Lower the need or raise the capacity.');
    }
  }
}

/** True when every slot can have its own person (augmenting paths). */
function canFill(pools: readonly (readonly string[])[]): boolean {
  const slotOf = new Map<string, number>();
  const assign = (slot: number, tried: Set<string>): boolean => (pools[slot] ?? []).some((person) => {
    if (tried.has(person)) return false;
    tried.add(person);
    const holder = slotOf.get(person);
    if (holder !== undefined && !assign(holder, tried)) return false;
    slotOf.set(person, slot);
    return true;
  });
  return pools.every((_, slot) => assign(slot, new Set()));
}

function checkCrew(activity: Activity, known: Known, add: Add): void {
  const needs = activity.crew ?? [];
  let isComplete = true;
  for (const need of needs) {
    const missing = need.pool.filter((id) => !known.resources.has(id));
    for (const id of missing) add('unknown-resource', `Activity ${activity.id} may take ${id} as crew, which is not there.`, 'Name a resource of the problem.');
    if (!isLength(need.count)) add('bad-amount', `Activity ${activity.id} needs ${need.count} people.`, 'Use a whole number from 0.');
    const able = new Set(need.pool.filter((id) => (known.resources.get(id)?.capacity ?? 0) > 0)).size;
    if (missing.length > 0 || !isLength(need.count)) isComplete = false;
    else if (able < need.count) {
      isComplete = false;
      add('pool-too-small', `Activity ${activity.id} needs ${need.count} out of ${able} (${need.pool.join(', ') || 'nobody'}).`, 'Add people to the pool or need fewer.');
    }
  }
  if (!isComplete) return;
  const pools = needs.flatMap((need) => Array.from({ length: need.count }, () => need.pool.filter((id) => (known.resources.get(id)?.capacity ?? 0) > 0)));
  if (!canFill(pools)) add('pool-too-small', `Activity ${activity.id} needs ${pools.length} different people, but its pools together do not hold so many.`, 'Add people to the pools or need fewer.');
  checkPinnedCrew(activity, pools, add);
}

function checkPinnedCrew(activity: Activity, pools: readonly (readonly string[])[], add: Add): void {
  const chosen = activity.pin?.crew;
  if (chosen === undefined) return;
  const isFit = chosen.length === pools.length && new Set(chosen).size === chosen.length && chosen.every((id, k) => pools[k]?.includes(id) === true);
  if (isFit) return;
  add('pinned-crew-does-not-fit', `Activity ${activity.id} is pinned with ${chosen.join(', ') || 'nobody'}, which does not fill its ${pools.length} places from their pools.`, 'Name one able person for each place, in order.');
}

function checkStates(activity: Activity, add: Add): void {
  const states = activity.states ?? [];
  for (const need of states) {
    if (!isLength(need.tail)) add('negative-duration', `Activity ${activity.id} leaves ${need.medium} ${need.state} for ${need.tail} minutes.`, 'Use whole minutes from 0.');
    const wrong = need.until === undefined ? -1 : findWrongEntry(need.until.ready, 0);
    if (wrong >= 0 || (need.until !== undefined && !(need.until.step > 0))) {
      add('table-not-fifo', `Activity ${activity.id} leaves ${need.medium} ${need.state} until a table whose entry ${Math.max(0, wrong)} comes before the one before it.`, 'A later end must never be over earlier.');
    }
    if (states.some((other) => other.medium === need.medium && other.state < need.state)) {
      add('two-states-at-once', `Activity ${activity.id} puts ${need.medium} into two states at once.`, 'Give it one state for each medium.');
    }
  }
}

/** All issues of one activity. */
export function findActivityIssues(problem: Problem, activity: Activity, index: number, known: Known): readonly Issue[] {
  const issues: Issue[] = [];
  const add: Add = (code, message, fix) => {
    issues.push(issue(code, message, fix, { path: ['activities', index], subjects: [{ kind: 'activity', id: activity.id, name: activity.id }] }));
  };
  checkTimes(problem, activity, add);
  checkCalendar(activity, known, add);
  checkPieces(activity, known, add);
  checkDemands(activity, known, add);
  checkDoses(activity, add);
  checkCrew(activity, known, add);
  checkStates(activity, add);
  return issues;
}
