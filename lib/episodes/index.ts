/** Episodes: what goes in, how much workshop time there is for it, what is in hand, and what is owed in them. */
export {
  checkPacking, costOf, termsOf, USUAL_WEIGHTS,
  type PackedEpisode, type Packing, type PackingProblem, type PackingRules, type PackingTerms, type PackingWeights, type StorySegment,
} from './packing-model';
export { packSegments } from './packing';
export { packParallel, type ParallelPacking, type ParallelProblem } from './parallel-packing';
