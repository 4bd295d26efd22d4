export { rememberByTrade } from './trade-memory';
export { openingHours, readyAfter, workingDays, type WorkingDay } from './working-days';
export { learnRatio, shrinkGroups, type Group, type GroupMean, type LearnedRatio, type PastJob, type Shrunk } from './learning';
export { normalBelow, normalQuantile } from './normal';
export {
  backAfter, daysWithin, latestDropOff, probabilityBack, probabilityWithin, workingDaysTaken, type DropOff, type Quote, type TradeDays,
} from './return';
export {
  checkBatch, checkPreparations, checkReturnWindow, checkVentHoles, galvanizedPreparation,
  type GalvanizedPreparation, type HollowSection, type MinimumBatch, type Preparation, type ReturnWindow, type VentHoles, type WindowState,
} from './treatments';
