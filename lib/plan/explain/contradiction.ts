/** A contradiction of the engine as issues that name the things in it. */
import { issue, type Issue, type Subject } from '@/lib/result';
import type { Contradiction, Fact } from '@/lib/scheduling';
import type { Compiled } from '../compile/compile';
import { isWorkshopWork, readName } from '../compile/names';
import { factWords } from './fact-words';
import { activityTitle, joinTitles } from './titles';

function subjectOf(compiled: Compiled, activity: string): Subject {
  const { kind, id } = readName(activity);
  const isTask = isWorkshopWork(kind);
  return { kind: kind === 'episode' ? 'episode' : isTask ? 'task' : 'outsideJob', id, name: activityTitle(compiled.draft, activity) };
}

function tellFact(compiled: Compiled, fact: Fact): string {
  const about = 'activity' in fact ? `“${activityTitle(compiled.draft, fact.activity)}”: ` : '';
  const until = fact.kind === 'pin' ? pinMoment(compiled, fact.activity) : null;
  return about + factWords(compiled, fact, until).text;
}

function pinMoment(compiled: Compiled, activity: string) {
  const pin = compiled.problem.activities.find((candidate) => candidate.id === activity)?.pin;
  return pin ? compiled.draft.clock.moment(pin.start) : null;
}

function firstFix(compiled: Compiled, contradiction: Contradiction): string {
  const pin = contradiction.facts.find((fact) => fact.kind === 'pin');
  if (pin && 'activity' in pin) return `Take the pin out of “${activityTitle(compiled.draft, pin.activity)}”.`;
  const change = contradiction.facts.map((fact) => factWords(compiled, fact, null).change).find((text) => text !== null);
  return change ?? 'Drop any one of them.';
}

/** One issue for the whole contradiction: drop any one of its facts and the rest can hold. */
export function tellContradiction(compiled: Compiled, contradiction: Contradiction): Issue[] {
  const facts = contradiction.facts.map((fact) => tellFact(compiled, fact));
  const message = `These cannot all hold for ${joinTitles(compiled.draft, contradiction.activities)}: ${facts.map((fact, index) => `(${index + 1}) ${fact}`).join(' ')}`;
  return [issue('plan-contradiction', message, firstFix(compiled, contradiction), { subjects: contradiction.activities.map((activity) => subjectOf(compiled, activity)) })];
}
