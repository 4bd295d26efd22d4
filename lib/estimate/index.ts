export { bookable, threePointDeviation, threePointMean } from './three-point';
export { checkFilmingTimes, COMMON_PRACTICE, furtherTakes, p80Of, sessionTime, usualCounts, type FilmingAssumptions, type FilmingManner, type FilmingTimes, type SessionTime, type TimeTerm } from './session-time';
export { factorOf, FEWEST_OBSERVATIONS, isLearnable, learnFactors, relativeSpread, type Learned, type LearnedFactor, type Observation } from './learning';
export { checkReading, countWords, fitsSubtitle, leastReadingSeconds, READING, SPEECH_RATE } from './speech';
