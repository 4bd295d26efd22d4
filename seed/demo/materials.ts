/** Materials by kind, never by name of a maker. Minutes at 20 °C. */
import { days, hours } from './draft';
import type { MaterialDraft } from './draft';
import type { MaterialVapour } from '@/lib/build';

/** Taken as xylene throughout: a planning figure. */
const xylene: MaterialVapour = { density: 0.87, molarMass: 106.17, solventShare: 0.5, limit: 50, source: 'xylene: UK WEL 50 ppm, from memory, not verified; share as sprayed is a guess, see the data sheet' };

/** One note for all: none of these figures has a published source. */
export const materialSource = 'Common practice, no source. The data sheet on the tin comes first.';

export const materials: readonly MaterialDraft[] = [
  { id: 'mat-etch-primer', name: 'Etch primer, single-pack', sort: 'primer', stages: [15, hours(2), days(7), hours(4), days(3)], minimumTemperature: 8, solvent: true, vapour: xylene },
  { id: 'mat-galv-primer', name: 'Primer for galvanized steel, single-pack', sort: 'primer', stages: [45, hours(4), days(7), hours(8), days(5)], minimumTemperature: 8, solvent: true, vapour: xylene },
  { id: 'mat-high-build', name: 'High-build primer, single-pack', sort: 'primer', stages: [20, hours(3), days(14), hours(6), days(4)], minimumTemperature: 8, solvent: true, vapour: xylene },
  { id: 'mat-zinc-primer', name: 'Zinc-rich weld-through primer, brushed', sort: 'primer', stages: [20, hours(2), days(14), hours(4), days(3)], minimumTemperature: 5, solvent: true },
  { id: 'mat-coach-enamel', name: 'Coach enamel, brushed', sort: 'paint', stages: [hours(5), hours(16), days(4), hours(24), days(7)], minimumTemperature: 8, solvent: true },
  { id: 'mat-spray-enamel', name: 'Synthetic enamel, single-pack, sprayed', sort: 'paint', stages: [hours(3), hours(14), days(4), hours(24), days(7)], minimumTemperature: 10, solvent: true, vapour: xylene },
  { id: 'mat-engine-black', name: 'Heat-resistant cylinder black, brushed', sort: 'paint', stages: [40, hours(2), days(7), hours(6), days(5)], minimumTemperature: 8, solvent: true },
  { id: 'mat-filler', name: 'Polyester body filler', sort: 'filler', stages: [20, 40, null, 45, hours(24)], minimumTemperature: 10, potLife: 6, solvent: true },
  { id: 'mat-seam-sealer', name: 'Seam sealer, hybrid polymer, no isocyanate on its data sheet', sort: 'sealer', stages: [40, hours(3), days(14), hours(16), days(3)], minimumTemperature: 5 },
  { id: 'mat-gasket', name: 'Jointing compound for crankcases', sort: 'sealer', stages: [10, 10, null, hours(2), hours(24)], minimumTemperature: 5, solvent: true },
  { id: 'mat-thread-locker', name: 'Thread locker, medium, anaerobic', sort: 'thread locker', stages: [15, 15, null, 30, hours(24)], minimumTemperature: 5 },
  { id: 'mat-wood-oil', name: 'Drying wood oil', sort: 'other', stages: [hours(6), hours(12), null, hours(24), days(7)], minimumTemperature: 8, solvent: true },
  { id: 'mat-cavity-wax', name: 'Cavity wax', sort: 'other', stages: [hours(3), hours(6), null, hours(12), days(2)], minimumTemperature: 5, solvent: true },
];
