/** Noise, vibration and vapour: how much of it a person gets. */
export * from './noise';
export * from './person-days';
export * from './respirator';
export * from './task-vapour';
export * from './vapour';
export * from './vibration';
export { exposureRates } from './rates';
export type { ExposureKind, ExposureRate } from './rates';
export { checkTaskExposure } from './amount';
