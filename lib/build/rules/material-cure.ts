import { issue, type Issue } from '@/lib/result';
import type { Material, MaterialCure } from '../model';
import { formatNumber, quoteName, sayLength, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

type Add = (isWrong: boolean, code: string, message: string, fix: string, path: readonly (string | number)[]) => void;

const degrees = (value: number): string => `${formatNumber(value)} °C`;

function checkLimits(material: Material, cure: MaterialCure, add: Add): void {
  const low = material.minimumTemperature;
  const high = cure.maximumTemperature;
  add(high < low, 'maximum-below-minimum', `may be laid from ${degrees(low)} to ${degrees(high)}: the highest temperature is below the lowest.`, `Type ${degrees(low)} or more as the highest.`, ['maximumTemperature']);
  add(cure.minimumUntilDry !== null && cure.minimumUntilDry > low, 'dry-minimum-above-minimum', `may be laid at ${degrees(low)}, but must stay at ${degrees(cure.minimumUntilDry ?? 0)} until dry.`, 'Raise the lowest temperature to lay it at.', ['minimumUntilDry']);
  add((cure.humidity.low ?? 0) > (cure.humidity.high ?? 100), 'humidity-reversed', 'has a lowest humidity above its highest.', 'Swap the two.', ['humidity', 'high']);
  add([cure.humidity.low, cure.humidity.high].some((value) => value !== null && !(value >= 0 && value <= 100)), 'humidity-range', 'has a humidity that is no percentage.', 'Type 0 to 100 %.', ['humidity', 'high']);
  add(!(cure.dewMargin >= 0), 'dew-margin-negative', `has a dew margin of ${formatNumber(cure.dewMargin)} K.`, 'Type 3 K unless the data sheet says more.', ['dewMargin']);
  add((cure.thinner.low ?? 0) < 0 || (cure.thinner.low ?? 0) > (cure.thinner.high ?? 100), 'thinner-reversed', 'has a least share of thinner above its largest, or below 0 %.', 'Swap the two.', ['thinner', 'high']);
}

function checkTimes(material: Material, cure: MaterialCure, add: Add): void {
  const { touchDry, recoatFrom } = material.stages;
  add(!(cure.flashOff >= 0), 'flash-off-negative', `has a flash-off of ${formatNumber(cure.flashOff)} min.`, 'Type 0 min or more.', ['flashOff']);
  const first = Math.min(touchDry, recoatFrom);
  add(cure.flashOff > first, 'flash-off-late', `flashes off after ${sayLength(cure.flashOff)}, later than it is touch dry or ready to recoat after ${sayLength(first)}.`, `Type ${sayLength(first)} or less.`, ['flashOff']);
  const { pot } = cure;
  add(!(pot.halvesPer > 0), 'pot-life-rate', `has a pot life that halves for every ${formatNumber(pot.halvesPer)} K.`, 'Type 10 K when the data sheet says nothing.', ['pot', 'halvesPer']);
  add(material.potLife !== null && pot.isInductionIncluded && pot.induction >= material.potLife, 'pot-life-induction', 'has a pot that is used up before its induction is over.', 'Check whether the pot life starts at mixing.', ['pot', 'induction']);
  const { kind, value } = cure.law;
  const isOwed = kind === 'arrhenius' || kind === 'maturity' || kind === 'moisture';
  add(isOwed && value === null, 'law-value-missing', `follows the temperature by the ${kind} law, and its value is empty.`, 'Type the value, or choose doubling.', ['law', 'value']);
  const isFalling = value !== null && ((kind === 'arrhenius' && value < 0) || (kind === 'maturity' && value >= material.referenceTemperature) || (kind === 'moisture' && value <= 0));
  add(isFalling, 'law-value-wrong', 'would not cure faster in the warmth with this value.', 'Check the value of the law.', ['law', 'value']);
}

function checkRows(cure: MaterialCure, add: Add): void {
  cure.recoatRows.forEach((row, index) => {
    const before = cure.recoatRows[index - 1];
    add(row.max < row.min, 'recoat-row-reversed', `has a row ${index + 1} of its recoat table that closes after ${formatNumber(row.max)} h, before it opens after ${formatNumber(row.min)} h.`, 'Swap the two.', ['recoatRows', index, 'max']);
    add(row.to < row.from || (before !== undefined && row.from <= before.to), 'recoat-row-order', `has a row ${index + 1} of its recoat table, ${formatNumber(row.from)} to ${formatNumber(row.to)} °C, that does not follow the row before.`, 'Write the rows from cold to warm, without overlap.', ['recoatRows', index, 'from']);
  });
}

/** Limits of a material lie the right way round, and its stages, tables and laws can be followed. */
export const checkMaterialCures: Rule = (document) => document.materials.flatMap((material) => {
  const { cure } = material;
  if (cure === undefined) return [];
  const issues: Issue[] = [];
  const add: Add = (isWrong, code, message, fix, path) => {
    if (isWrong) issues.push(issue(code, `${startWith(material)} ${message}`, fix, { path: ['cure', ...path], subjects: subjectsOf(material) }));
  };
  checkLimits(material, cure, add);
  checkTimes(material, cure, add);
  checkRows(cure, add);
  const unsourced = cure.sources.filter(({ kind, text }) => kind === 'read' && text.trim() === '').map(({ field }) => field);
  return unsourced.length === 0 ? issues : [...issues, issue('source-without-place', `The material ${quoteName(material.name)} has values marked as read, without saying where.`, 'Name the data sheet, or mark them as practice.', { severity: 'warn', path: ['cure', 'sources'], subjects: subjectsOf(material) })];
});
