/** The functions of psychrolib that the checks use. Temperatures °C, pressures Pa, humidity 0 to 1, in SI mode. */
declare module 'psychrolib' {
  interface Psychrolib {
    SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(dryBulb: number): number;
    GetTDewPointFromRelHum(dryBulb: number, relativeHumidity: number): number;
    GetHumRatioFromTWetBulb(dryBulb: number, wetBulb: number, pressure: number): number;
    GetRelHumFromTWetBulb(dryBulb: number, wetBulb: number, pressure: number): number;
    GetHumRatioFromRelHum(dryBulb: number, relativeHumidity: number, pressure: number): number;
    GetMoistAirVolume(dryBulb: number, humidityRatio: number, pressure: number): number;
    GetMoistAirEnthalpy(dryBulb: number, humidityRatio: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
