/** What finished work says about the open work of a series, as factors with their spread. */
import type { SeriesDocument } from '@/lib/build';
import { gatherExperience } from '@/lib/episodes';
import { factorOf } from '@/lib/estimate';
import type { LearnedFactor } from './chances';

/** Eight of ten values of a normal distribution lie this many standard deviations about its mean. */
const MIDDLE_80 = 1.281_551_565_5;

/**
 * One factor for each category of open work; empty while too little is finished to go by, and the wide default spread counts.
 * A category nothing is finished of borrows from the others, and is the wider for it.
 */
export function learnedFactors(document: SeriesDocument): ReadonlyMap<string, LearnedFactor> {
  const { learnedHandsOn } = gatherExperience(document);
  if (!learnedHandsOn.isEnough) return new Map();
  const categories = new Set(document.tasks.filter((task) => task.doneAt === null).map((task) => task.category));
  return new Map([...categories].map((category) => {
    const { factor, interval } = factorOf(learnedHandsOn, category);
    return [category, { mean: Math.log(factor), deviation: Math.log(interval.high / interval.low) / (2 * MIDDLE_80) }];
  }));
}
