/** The near days of the accepted plan: a new plan leaves them alone where it can. */
import { findContradiction, type Activity, type Problem } from '@/lib/scheduling';
import type { Compiled } from './compile';
import { frozenUntil } from './objective';

function canFreeze(activity: Activity, until: number, people: ReadonlySet<string>): boolean {
  const { crew, pin, previousCrew, previousStart } = activity;
  if (pin !== undefined || previousStart === undefined || previousStart >= until) return false;
  const count = (crew ?? []).reduce((sum, need) => sum + need.count, 0);
  return (previousCrew?.length ?? 0) === count && (previousCrew ?? []).every((id) => people.has(id));
}

function pinned(problem: Problem, frozen: ReadonlySet<string>): Problem {
  return {
    ...problem,
    activities: problem.activities.map((activity) => (frozen.has(activity.id)
      ? { ...activity, pin: { start: activity.previousStart!, ...(activity.crew === undefined ? {} : { crew: activity.previousCrew! }) } }
      : activity)),
  };
}

/**
 * The problem with the work of the near days fixed where the accepted plan has it, with its people. What can no longer stand
 * there, by what was stated since, is free again: those and no others.
 */
export function freezeNear(compiled: Compiled): Compiled {
  const { draft, problem } = compiled;
  const until = frozenUntil(draft);
  const people = new Set(problem.resources.map(({ id }) => id));
  const frozen = new Set(problem.activities.filter((activity) => canFreeze(activity, until, people)).map(({ id }) => id));
  while (frozen.size > 0) {
    const asked = pinned(problem, frozen);
    const facts = findContradiction(asked)?.facts ?? [];
    const loose = facts.flatMap((fact) => (fact.kind === 'pin' && frozen.has(fact.activity) ? [fact.activity] : []));
    // A contradiction without them is for the search to tell.
    if (loose.length === 0) return { ...compiled, problem: asked, draft: { ...draft, frozen } };
    for (const id of loose) frozen.delete(id);
  }
  return compiled;
}
