export { bookable, threePointDeviation, threePointMean, type Triple } from './three-point';
export {
  checkFilmingTimes, COMMON_PRACTICE, furtherTakes, P80_DEVIATIONS, p80Of, sessionTime, usualCounts,
  type FilmingAssumptions, type FilmingCounts, type FilmingHabits, type FilmingManner, type FilmingTimes, type SessionTime, type TimeTerm,
} from './session-time';
export { factorOf, FEWEST_OBSERVATIONS, isLearnable, learnFactors, type Learned, type LearnedFactor, type LearningBasis, type Observation } from './learning';
export { countWords, fitsSubtitle, leastReadingSeconds, READING, SPEECH_RATE, speechMinutes } from './speech';
