/** Episodes: what goes in, how much workshop time there is for it, what is in hand, and what is owed in them. */
export {
  checkPacking, costOf, termsOf, USUAL_TITLES, USUAL_WEIGHTS,
  type PackedEpisode, type Packing, type PackingProblem, type PackingRules, type PackingTerms, type PackingWeights, type StorySegment,
} from './packing-model';
export { packSegments } from './packing';
export { packParallel, type ParallelPacking, type ParallelProblem } from './parallel-packing';
export { checkAiringOrder, type ShownPart, type ShownSegment } from './airing-order';
export { countBank, spreadReleases, USUAL_MINIMUM, type Bank, type BankedEpisode, type BankWeek } from './bank';
export {
  cameraNeed, checkKit, gigabytesPerHour, shootingRatio, timeLapse, USUAL_KIT, USUAL_RATIO, type CameraNeed, type TimeLapse,
} from './camera';
export { oneWayRisk, USUAL_LOSS, USUAL_SHARED, type OneWayRisk } from './one-way-risk';
export { chargeWork } from './charge-work';
export { compareExperience, experienceOf, filmingOf, gatherExperience, timesOf, type SeriesExperience, type TaskObservation } from './experience';
export { findRelief, type Relief } from './relief';
export { checkDisclosure, checkSponsors, checkUnplaced, type Obligation, type SponsoredEpisode } from './sponsors';
export { experiencedTime, filmingMinutes, shotsWithin, typedTime, type Experience } from './task-time';
export {
  budgetEpisodes, type Balance, type BudgetEpisode, type BudgetProblem, type BudgetSession, type BudgetTask, type EpisodeBudget, type Verdict,
} from './time-budget';
