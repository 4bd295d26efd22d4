/** What must be said beside a material or a heater. The data sheet comes first everywhere. */
import type { Heater } from '@/lib/climate';
import type { CoatMaterial } from './coat-material';

const DATA_SHEET = 'The maker\'s data sheet and safety data sheet come first; these values stand in for them only where they say nothing.';
const VENTILATION = 'Ventilate from opening the tin until the coat is touch dry and the room is aired.';
const IGNITION = 'No flame, burner, glowing heater or switch in the same air: solvent vapour ignites.';
const BY_CONTENT = 'Choose the respirator by what the safety data sheet lists, not by the number of packs: single-pack products can hold isocyanate too.';
const AIR_FED = 'Holds isocyanate: filters are not enough when it is sprayed; air-fed equipment, and nobody else in that air.';
const FILTERS = 'Solvent vapour and spray mist need a combined vapour and particle filter, besides the ventilation.';

/** Cautions of a material, the general ones first. */
export function cautionsOf(material: CoatMaterial): string[] {
  const cautions = [DATA_SHEET];
  if (material.hasSolvent) cautions.push(VENTILATION, IGNITION);
  if (material.hasSolvent || material.hasIsocyanate) cautions.push(BY_CONTENT);
  if (material.hasIsocyanate) cautions.push(AIR_FED);
  else if (material.hasSolvent) cautions.push(FILTERS);
  return [...cautions, ...material.cautions];
}

/** Cautions of a heater. */
export function heaterCautions(heater: Heater): string[] {
  const cautions: string[] = [];
  if (!heater.isIgnitionSafe) cautions.push('Not beside open solvent: switch it off and let it cool before the tin is opened.');
  if (heater.kind === 'flueless burner') {
    cautions.push('Its exhaust stays in the room: ventilate, and keep a carbon monoxide alarm.', 'It adds water to the air, so the dew margin shrinks while it heats.');
  }
  if (heater.kind === 'flued burner') cautions.push('Its flue must draw, and a carbon monoxide alarm belongs in the room.');
  return cautions;
}
