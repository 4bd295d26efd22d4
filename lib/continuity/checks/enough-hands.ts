import { crewSize, startWith } from '@/lib/build';
import { sayAt, taskBlocks } from '../facts';
import { makeCheck } from './check';

/** 14: work that takes two people, or somebody who has learned it, has them. */
export const enoughHands = makeCheck(14, 'stop', 'Work for two people or for somebody trained has them', (facts) =>
  taskBlocks(facts).filter(({ task }) => task.doneAt === null).flatMap(({ block, task }) => {
    const crew = facts.document.people.filter(({ id }) => block.crewIds.includes(id));
    const missing = [
      ...(crew.length < crewSize(task) ? [`${crewSize(task)} people, and ${crew.length} ${crew.length === 1 ? 'is' : 'are'} on it`] : []),
      ...task.crew.flatMap(({ skill, count }) => (skill !== null && crew.filter(({ skills }) => skills.includes(skill)).length < count ? [`somebody for ${skill}`] : [])),
    ];
    return missing.map((what) => ({ key: `${task.id}/${what}`, about: [task], message: `${startWith(task)} on ${sayAt(facts, block.start)} needs ${what}.`, fix: 'Plan again with the right crew.' }));
  }));
