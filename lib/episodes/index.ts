/** Episodes: what goes in, how much workshop time there is for it, what is in hand, and what is owed in them. */
export { checkAiringOrder, type ShownSegment } from './airing-order';
export { countBank, spreadReleases, USUAL_MINIMUM, type Bank, type BankedEpisode } from './bank';
export { cameraNeed, checkKit, gigabytesPerHour, shootingRatio, timeLapse, USUAL_KIT, USUAL_RATIO } from './camera';
export { chargeWork } from './charge-work';
export { compareExperience, experienceOf, filmingOf, gatherExperience, learnedTaskFactors, timesOf, unlearned, type LearnedTaskFactor, type TaskObservation } from './experience';
export { oneWayRisk } from './one-way-risk';
export { packSegments } from './packing';
export { costOf, termsOf, USUAL_TITLES, USUAL_WEIGHTS, type PackedEpisode, type Packing, type PackingProblem, type PackingRules, type StorySegment } from './packing-model';
export { packParallel, type ParallelProblem } from './parallel-packing';
export { findRelief, type Relief } from './relief';
export { fitRuntime } from './runtime-fit';
export { checkSponsorRelease } from './sponsor-gate';
export { checkDisclosure, checkSponsors, checkUnplaced, readObligation, type Obligation, type SponsoredEpisode } from './sponsors';
export { experiencedTime, filmingMinutes, shotsWithin, typedTime, type Experience, type SharedSpread, type TaskTime } from './task-time';
export { budgetEpisodes, type Balance, type BudgetProblem, type BudgetSession, type BudgetTask, type EpisodeBudget } from './time-budget';
