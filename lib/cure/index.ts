export {
  coatMoments,
  cureRate,
  curingTemperature,
  recoatWindow,
  stageWait,
  type CoatMoments,
  type RecoatWindow,
} from './cure-time';
