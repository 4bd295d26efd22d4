export {
  coatMoments,

  curingTemperature,
  recoatWindow,
  stageWait,
  type CoatMoments,
  type RecoatWindow,
} from './cure-time';
export { cautionsOf, heaterCautions } from './cautions';
export { ageAtMinute, createCureClock, equivalentMinutes, minuteOfAge, readyAt, readyMinute, type CureClock, type CureProfile } from './clock';
export {
  closingMinute, coatClocks, createCoatClock, forecastCoat, stageMinute, type CoatClock, type CoatFault, type CoatForecast,
} from './coat';
export {
  checkCoatMaterial, unsourcedFields,
  type BelowMinimum, type CoatMaterial, type CureStage, type CureStages, type LateWork, type MaterialSort, type OvenBake, type PotLife, type RecoatRow,
  type SourcedField, type ValueSource,
} from './coat-material';
export { coatMaterialOf, fieldsOfLibrary, systemOf } from './from-record';
export { heatingOf, ignitingHours, readingsOf, workshopAir, type ReadingRows, type WorkshopAir } from './workshop-climate';
export {
  earliestGo, judgeCoating, judgeReadings, type EarliestGo, type GoCheck, type GoCode, type GoOptions, type GoVerdict,
} from './go-no-go';
export {
  addHeatingRun, cheapestHeating, compareHeating, heatingCurve, steadyOptions, type HeatingOption, type HeatingOutcome, type WaitingCoat,
} from './heating-choice';
export { findIgnitionConflicts, type IgnitionConflict, type SolventSpan } from './ignition';
export { ABRASIVE, lateSteps, lateTask, type LatePair, type LateStep } from './late-work';
export { findMaterial, MATERIAL_LIBRARY } from './library';
export { POLYURETHANE_ROWS } from './library-paints';
export { cureDepth, depthAt, minutesToDepth } from './moisture';
export { minutesAtMetal, outgasBake, ovenTime, steelTimeConstant, type MetalReading, type OvenTime } from './oven';
export { potLifeAt, potWindow, type PotWindow } from './pot-life';
export {
  activationEnergy, activationOfDoubling, arrheniusRate, doublingRate, equivalentAge, maturityRate, modelCodeAge, nurseSaulMaturity, rateAt,
  temperatureForMaturity, timeToMaturity, type RateLaw, type TemperatureSpan,
} from './rate';
export { readyTable, readyTables, spoiltStarts, type MinuteSpan, type TableGrid } from './ready-table';
export { longestRecoatWait, recoatRow } from './recoat';
export {
  layCoats, unfoldSystem, type CoatingSystem, type CoatLag, type LaidCoat, type SystemCoat, type SystemStep,
} from './system';
export { NUT_FACTOR, preloadRatio, tighteningTorque } from './thread';
