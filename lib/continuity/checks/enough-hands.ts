import { crewSize, startWith, type Task } from '@/lib/build';
import { overlaps, sayAt, taskBlocks, type Facts } from '../facts';
import { hazardsOf } from '../hazardous';
import type { PlannedBlock } from '../planned-block';
import { makeCheck } from './check';

/** People who are in the building while a block lasts: its own crew, and that of the sessions it lies in. */
function peopleIn({ document }: Facts, block: PlannedBlock): number {
  return new Set([...block.crewIds, ...document.sessions.filter((session) => overlaps(session, block)).flatMap(({ crewIds }) => crewIds)]).size;
}

/** Hazards that nobody meets alone, and those that belong to somebody licensed. */
function dangers(facts: Facts, block: PlannedBlock, task: Task) {
  return hazardsOf(facts, task).flatMap(({ hazard, isDeferred }) => [
    ...(hazard.needsSecondPerson && peopleIn(facts, block) < 2 ? [{
      key: `${task.id}/alone/${hazard.id}`, about: [task], message: `${startWith(task)} on ${sayAt(facts, block.start)} is done with nobody else in the building, and “${hazard.name}” needs a second person there.`,
      fix: 'Move it to a session with two people.',
    }] : []),
    ...(isDeferred && !isSigned(facts, task, hazard.id) ? [{
      key: `${task.id}/deferred/${hazard.id}`, about: [task], message: `${startWith(task)} on ${sayAt(facts, block.start)} is for somebody licensed or equipped for “${hazard.name}”, and nobody has signed who that is.`,
      fix: 'Give it to an outside trade, or sign on the episode’s checklist who is qualified.',
    }] : []),
  ]);
}

/** Somebody has signed who is licensed or equipped for it, and not taken that back. */
function isSigned({ document }: Facts, { episodeId }: Task, hazardId: string): boolean {
  const last = document.statements.findLast(({ about }) => about.sort === 'evidence' && about.episodeId === episodeId && about.itemId === `deferral:${hazardId}`);
  return last?.about.sort === 'evidence' && last.about.evidence.kind !== 'withdrawn';
}

/** 14: work that takes two people, or somebody who has learned it, has them. */
export const enoughHands = makeCheck(14, 'stop', 'Work for two people or for somebody trained has them', (facts) =>
  taskBlocks(facts).filter(({ task }) => task.doneAt === null).flatMap(({ block, task }) => {
    const crew = facts.document.people.filter(({ id }) => block.crewIds.includes(id));
    const missing = [
      ...(crew.length < crewSize(task) ? [`${crewSize(task)} people, and ${crew.length} ${crew.length === 1 ? 'is' : 'are'} on it`] : []),
      ...task.crew.flatMap(({ skill, count }) => (skill !== null && crew.filter(({ skills }) => skills.includes(skill)).length < count ? [`somebody for ${skill}`] : [])),
    ];
    const short = missing.map((what) => ({ key: `${task.id}/${what}`, about: [task], message: `${startWith(task)} on ${sayAt(facts, block.start)} needs ${what}.`, fix: 'Plan again with the right crew.' }));
    return [...short, ...dangers(facts, block, task)];
  }));
