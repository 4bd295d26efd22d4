/** The library of hazards that comes with the program. */
import type { Hazard } from '../model';
import { brakesAndAir } from './brakes-and-air';
import { raiseHazard } from './draft';
import { electricAndRays } from './electric-and-rays';
import { heatAndFire } from './heat-and-fire';
import { machinesAndLoads } from './machines-and-loads';
import { paintAndSolvent } from './paint-and-solvent';

/** In the order of the pages. Values from memory are marked and shown as unverified. */
export const LIBRARY: readonly Hazard[] = [brakesAndAir, paintAndSolvent, heatAndFire, machinesAndLoads, electricAndRays].flat().map(raiseHazard);
