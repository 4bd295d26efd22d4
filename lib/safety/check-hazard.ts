/** Is a hazard that somebody wrote or brought in complete? */
import { HAZARD_FACTS, type HazardFields } from '@/lib/build';
import { issue, type Issue } from '@/lib/result';
import { checkCaution } from './captions';
import { readSign } from './iso-7010';
import { LIBRARY } from './library';

type Draft = HazardFields & { readonly name: string };

function checkSources({ name, sources }: Draft): readonly Issue[] {
  if (sources.length === 0) return [issue('hazard-without-source', `“${name}” names no source.`, 'Write where it comes from; “workshop practice, no source” is an answer too.', { path: ['sources'] })];
  return sources.flatMap(({ text, status, reviewed }, index) => [
    ...(text.trim() === '' ? [issue('hazard-without-source', `Source ${index + 1} of “${name}” is empty.`, 'Write where it comes from, or take the line out.', { path: ['sources', index, 'text'] })] : []),
    ...(status === 'read' && reviewed === null ? [issue('source-not-dated', `Source ${index + 1} of “${name}” is called read, and no day says when.`, 'Give the day it was read, or call it “from memory”.', { path: ['sources', index, 'reviewed'] })] : []),
  ]);
}

function checkTrigger({ name, trigger }: Draft): readonly Issue[] {
  const unknown = trigger.flat().filter((fact) => !HAZARD_FACTS.includes(fact));
  if (unknown.length > 0) return [issue('fact-unknown', `“${name}” is set off by facts that no task can have: ${unknown.join(', ')}.`, 'Choose facts from the list.', { path: ['trigger'] })];
  if (trigger.every((group) => group.length === 0)) return [issue('hazard-without-trigger', `Nothing sets off “${name}”: it would never be found.`, 'Choose at least one fact.', { path: ['trigger'] })];
  return trigger.flatMap((group, index) => (group.length > 0 ? [] : [
    issue('way-empty', `Way ${index + 1} that sets off “${name}” has no fact.`, 'Choose its facts, or take the way out.', { path: ['trigger', index] }),
  ]));
}

function checkSign(code: string, path: Issue['path']): readonly Issue[] {
  const sign = readSign(code);
  return sign.ok ? [] : sign.error.map((one): Issue => ({ ...one, path }));
}

function checkEquipment({ name, equipment }: Draft): readonly Issue[] {
  return equipment.flatMap(({ text, sign }, index) => [
    ...(text.trim() === '' ? [issue('equipment-empty', `Line ${index + 1} of what is worn for “${name}” says nothing.`, 'Write what is worn, or take the line out.', { path: ['equipment', index, 'text'] })] : []),
    ...(sign === null ? [] : checkSign(sign, ['equipment', index, 'sign'])),
  ]);
}

/** A deferral says for whom or when it is left; its facts are a list that a task can have. */
function checkDeferral({ name, deferral }: Draft): readonly Issue[] {
  if (deferral === null || deferral.text.trim() !== '') return [];
  return [issue('deferral-empty', `“${name}” is to be left to somebody else, and nothing says when.`, 'Write when to leave it: “the rim is a split rim”.', { path: ['deferral', 'text'] })];
}

/** Everything that is missing or unknown in a hazard; nothing when it can be used. */
export function checkHazard(hazard: Draft): readonly Issue[] {
  const { name, controls, signs, replaces, caution } = hazard;
  return [
    ...checkSources(hazard),
    ...checkTrigger(hazard),
    ...signs.flatMap((code, index) => checkSign(code, ['signs', index])),
    ...checkEquipment(hazard),
    ...checkDeferral(hazard),
    ...controls.flatMap(({ text }, index) => (text.trim() === '' ? [issue('control-empty', `Control ${index + 1} of “${name}” says nothing.`, 'Write what is done, or take the line out.', { path: ['controls', index, 'text'] })] : [])),
    ...(controls.every(({ text }) => text.trim() === '') ? [issue('hazard-without-control', `“${name}” has no control.`, 'Write at least one thing to do about it, best of all one that takes it away.', { path: ['controls'] })] : []),
    ...checkCaution(caution),
    ...(replaces !== null && !LIBRARY.some(({ id }) => id === replaces) ? [issue('replaced-unknown', `“${name}” replaces a hazard that is not in the library (${replaces}).`, 'Choose one of the library, or none.', { path: ['replaces'] })] : []),
  ];
}
