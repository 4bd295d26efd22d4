export { bookable, threePointDeviation, threePointMean, type Triple } from './three-point';
