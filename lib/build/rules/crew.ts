import { issue, type Issue } from '@/lib/result';
import type { SeriesDocument, Task } from '../model';
import { crewSize } from '../task-sessions';
import { count, formatNumber, quoteName, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

function checkCounts(task: Task): readonly Issue[] {
  return task.crew.flatMap((need, index) => (Number.isInteger(need.count) && need.count >= 1 ? [] : [
    issue('crew-count-not-positive', `${startWith(task)} needs ${formatNumber(need.count)} people${need.skill === null ? '' : ` for ${quoteName(need.skill)}`}; it must be a whole number from 1.`,
      'Type 1 or more, or take the line out.', { path: ['crew', index, 'count'], subjects: subjectsOf(task) }),
  ]));
}

function checkSkills(document: SeriesDocument, task: Task): readonly Issue[] {
  return task.crew.flatMap(({ skill, count: needed }, index) => {
    if (skill === null) return [];
    const able = document.people.filter((person) => person.skills.includes(skill)).length;
    if (able >= needed) return [];
    const more = { path: ['crew', index, 'skill'], subjects: subjectsOf(task) };
    const code = able === 0 ? 'skill-nobody-has' : 'skill-held-by-too-few';
    const who = able === 0 ? 'nobody has it' : `only ${count(able, 'person has', 'people have')} it`;
    return [issue(code, `${startWith(task)} needs ${count(needed, 'person', 'people')} with the skill ${quoteName(skill)}, and ${who}.`, `Give somebody the skill ${quoteName(skill)}.`, more)];
  });
}

function checkSize(document: SeriesDocument, task: Task): readonly Issue[] {
  const [needed, there] = [crewSize(task), document.people.length];
  if (needed <= there) return [];
  return [issue('crew-larger-than-people', `${startWith(task)} needs ${count(needed, 'person', 'people')} at once, and the series has ${count(there, 'person', 'people')}.`,
    'Ask for fewer people, or add the people who help.', { path: ['crew'], subjects: subjectsOf(task) })];
}

/** Work that is still to do asks for people and skills that the series has. Silent while there are no people at all. */
export const checkCrews: Rule = (document) => {
  const tasks = document.tasks.flatMap((task) => {
    const counts = checkCounts(task);
    if (counts.length > 0 || task.doneAt !== null || document.people.length === 0) return counts;
    return [...checkSkills(document, task), ...checkSize(document, task)];
  });
  const jobs = document.outsideJobs.flatMap((job) => {
    const isWhole = Number.isInteger(job.crew) && job.crew >= 1;
    const there = document.people.length;
    if (isWhole && (job.crew <= there || there === 0 || job.collectedAt !== null)) return [];
    const more = { path: ['crew'], subjects: subjectsOf(job) };
    if (!isWhole) return [issue('crew-count-not-positive', `${startWith(job)} needs ${formatNumber(job.crew)} people for a trip; it must be a whole number from 1.`, 'Type 1 or more.', more)];
    return [issue('crew-larger-than-people', `${startWith(job)} needs ${count(job.crew, 'person', 'people')} for a trip, and the series has ${count(there, 'person', 'people')}.`, 'Ask for fewer people, or add the people who help.', more)];
  });
  return [...tasks, ...jobs];
};
