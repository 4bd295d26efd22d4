/** All rules of a series, in the order in which their issues are shown. */
import { checkBeforeShots, checkMissedBeforeShots } from './before-shot';
import { checkCadence } from './cadence';
import { checkCameras } from './camera-format';
import { checkCrews } from './crew';
import { checkDateSpans } from './date-span';
import { checkEfforts } from './effort';
import { checkEpisodeDates } from './episode-date';
import { checkEpisodeWork } from './episode-work';
import { checkEquipmentCounts } from './equipment-count';
import { checkFillLimit } from './fill-limit';
import { checkFrameRate } from './frame-rate';
import { checkLinkEnds } from './link-ends';
import { checkLinkWindows } from './link-window';
import { checkHeatingRuns } from './heating-run';
import { checkMaterialCures } from './material-cure';
import { checkMaterialSources } from './material-source';
import { checkMaterialStages } from './material-stages';
import { checkMaterialTemperatures } from './material-temperature';
import { checkCoats } from './missing-coats';
import { checkNames } from './name';
import { checkOutsideEvents } from './outside-events';
import { checkOutsideQuotes } from './outside-quote';
import { checkPartStateFlow } from './part-state-flow';
import { checkPartStates } from './part-states';
import { checkPartUses } from './part-use';
import { checkPinnedStarts } from './pinned-start';
import { checkPlaceCapacities } from './place-capacity';
import { checkPromises } from './promise-closure';
import { checkReferences } from './reference-exists';
import type { Rule } from './rule';
import { checkRuntime } from './runtime';
import { checkSessionFit } from './session-fit';
import { checkSessionLengths } from './session-length';
import { checkSegments } from './segment';
import { checkSessionOverlaps } from './session-overlap';
import { checkShotStates } from './shot-state';
import { checkSponsorships } from './sponsorship';
import { checkTimeLogs } from './time-log';
import { checkCoatingSystems } from './coating-system';
import { checkTradesOpen } from './trade-open';
import { checkWeatherTables } from './weather-days';
import { checkHoursOfWeek } from './weekly-hours';
import { checkWorkOrder } from './work-order';
import { checkWorkshop } from './workshop';
import { checkZone } from './zone-known';

export const RULES: readonly Rule[] = [
  checkNames, checkReferences,
  checkZone, checkCadence, checkFillLimit, checkRuntime, checkFrameRate,
  checkHoursOfWeek, checkDateSpans, checkPlaceCapacities, checkEquipmentCounts,
  checkPartStates, checkMaterialStages, checkMaterialTemperatures, checkMaterialCures, checkMaterialSources, checkTradesOpen,
  checkWorkshop, checkHeatingRuns, checkWeatherTables, checkCoatingSystems,
  checkEfforts, checkCrews, checkCoats, checkPartUses, checkPartStateFlow, checkOutsideQuotes, checkOutsideEvents,
  checkLinkEnds, checkLinkWindows, checkWorkOrder,
  checkSessionLengths, checkSessionOverlaps, checkSessionFit, checkPinnedStarts,
  checkBeforeShots, checkMissedBeforeShots, checkShotStates, checkEpisodeDates, checkEpisodeWork,
  checkSegments, checkTimeLogs, checkSponsorships,
  checkCameras, checkPromises,
];
