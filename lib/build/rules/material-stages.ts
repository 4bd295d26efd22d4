import { issue, type Issue } from '@/lib/result';
import type { DryingStage, Material } from '../model';
import { quoteName, sayLength, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** The stages in plain words. */
export const STAGE_WORDS: Readonly<Record<DryingStage, string>> = {
  touchDry: 'touch dry', recoatFrom: 'ready to recoat', handle: 'ready to handle', fullCure: 'fully cured',
};

/** Pairs that cannot be the other way round. Recoating may come before or after handling: wet on wet, or a slow primer. */
const ORDERED: readonly (readonly [DryingStage, DryingStage])[] = [['touchDry', 'handle'], ['handle', 'fullCure'], ['recoatFrom', 'fullCure']];

function checkStages(material: Material): readonly Issue[] {
  const subjects = subjectsOf(material);
  const { stages } = material;
  const times = [...Object.entries(stages), ['potLife', material.potLife] as const];
  const negative = times.filter(([, time]) => time !== null && !(time >= 0 && Number.isFinite(time))).map(([key, time]) =>
    issue('material-time-negative', `${startWith(material)} has a time of ${time} min; times are 0 min or more.`, 'Type 0 min or more.', {
      path: key === 'potLife' ? ['potLife'] : ['stages', key], subjects,
    }));
  if (negative.length > 0) return negative;
  const swapped = ORDERED.filter(([first, second]) => stages[first] > stages[second]).map(([first, second]) =>
    issue('stages-out-of-order', `${startWith(material)} is ${STAGE_WORDS[first]} after ${sayLength(stages[first])}, later than ${STAGE_WORDS[second]} after ${sayLength(stages[second])}.`,
      `Type a time of ${sayLength(stages[first])} or more until it is ${STAGE_WORDS[second]}.`, { path: ['stages', second], subjects }));
  if (stages.recoatUntil === null || stages.recoatUntil >= stages.recoatFrom) return swapped;
  return [...swapped, issue('recoat-window-reversed', `The recoat window of the material ${quoteName(material.name)} closes after ${sayLength(stages.recoatUntil)}, before it opens after ${sayLength(stages.recoatFrom)}.`,
    'Type a later closing, or leave it empty when there is none.', { path: ['stages', 'recoatUntil'], subjects })];
}

/** Drying stages come in an order that paint can follow, and the recoat window does not close before it opens. */
export const checkMaterialStages: Rule = (document) => document.materials.flatMap(checkStages);
