/** Tells the share of faults found, with its 95 % interval, and the files whose faults live longest. */
import { sampled } from './sample.mjs';

/** @typedef {{ status: string, fileName: string, location: { start: { line: number, column: number } }, mutatorName: string, replacement?: string }} Fault */
/** @typedef {{ files: Record<string, { mutants: readonly Fault[] }> }} Report */

const FOUND = ['Killed', 'Timeout'];
const LEFT = ['Survived', 'NoCoverage'];
/** Of the normal distribution, for 95 %. */
const DEVIATIONS = 1.96;

/**
 * Interval of E. B. Wilson (1927) for a share seen in a sample.
 * @param {number} hits
 * @param {number} count
 */
export function intervalOf(hits, count) {
  const seen = hits / count;
  const square = DEVIATIONS ** 2;
  const middle = (seen + square / (2 * count)) / (1 + square / count);
  const half = (DEVIATIONS / (1 + square / count)) * Math.sqrt((seen * (1 - seen)) / count + square / (4 * count ** 2));
  return { from: middle - half, to: middle + half };
}

/** @param {readonly Fault[]} faults @param {readonly string[]} statuses */
function countOf(faults, statuses) {
  return faults.filter(({ status }) => statuses.includes(status)).length;
}

/** @param {number} share */
const percent = (share) => `${(share * 100).toFixed(1)} %`;

/** @param {Report} report */
export function describeScore({ files }) {
  const faults = Object.values(files).flatMap(({ mutants }) => mutants);
  const found = countOf(faults, FOUND);
  const valid = found + countOf(faults, LEFT);
  if (valid === 0) return 'No faults were made.';
  const rows = Object.entries(files)
    .map(([file, { mutants }]) => ({ file, left: countOf(mutants, LEFT), all: countOf(mutants, [...FOUND, ...LEFT]) }))
    .filter(({ left }) => left > 0)
    .toSorted((a, b) => b.left - a.left);
  const { from, to } = intervalOf(found, valid);
  const isSample = sampled.chosen < sampled.all;
  return [
    ...rows.map(({ all, file, left }) => `${String(left).padStart(5)} of ${String(all).padStart(4)} not found in ${file}`),
    `${valid} faults${isSample ? ` out of ${sampled.all}` : ''}: ${countOf(faults, ['Killed'])} found, ${countOf(faults, ['Timeout'])} found by time,`
      + ` ${countOf(faults, ['Survived'])} not found, ${countOf(faults, ['NoCoverage'])} never run.`,
    `Found: ${percent(found / valid)}${isSample ? `, of all of them between ${percent(from)} and ${percent(to)} (95 %)` : ''}.`,
  ].join('\n');
}

export const strykerPlugins = [{
  kind: 'Reporter',
  name: 'score',
  value: {
    /** Told at once: a run takes its time. @param {Fault} fault */
    onMutantTested(fault) {
      if (!LEFT.includes(fault.status)) return;
      const { line, column } = fault.location.start;
      console.log(`${fault.status} ${fault.fileName}:${line}:${column} ${fault.mutatorName} -> ${(fault.replacement ?? '').replaceAll(/\s+/g, ' ').slice(0, 100)}`);
    },
    /** @param {Report} report */
    onMutationTestReportReady(report) {
      console.log(describeScore(report));
    },
  },
}];
