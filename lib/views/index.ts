/** What the pages read: one file a page, plain serialisable data. */
export { loadDocument, openViewContext } from './context';
export { viewSeriesFrame, viewSeriesList } from './series-list';
export type { SeriesRow } from './series-list';
export { checkDocument, issuesAbout, viewRecordList, viewRecordsIndex } from './records';
export type { KindCount, RecordRow } from './records';
export { wordsOfKind } from './records-kinds';
export type { KindWords } from './records-kinds';
export { viewCopyForm, viewNewRecordForm, viewNewSeriesForm, viewRecordForm } from './record-form';
export { readRepeatForm, viewRepeatForm } from './record-form-repeat';
export { viewNewest } from './record-form-newest';
export type { NewestRecord } from './record-form-newest';
export { readRecordForm } from './record-form-read';
export type {
  Choice, ChoiceSource, ChoiceSpec, Draft, DraftObject, FieldSpec, FormSection, FormView, GroupSpec, LeafSpec, LinesSpec,
  ListSpec, ManyChoicesSpec, MomentSpec, PartStateSpec, RecordFormView, TextSpec, ThreePointSpec } from './record-form-model';
export { HISTORY_STEP, viewHistory } from './history';
export type { ChangeView, EditView } from './history';
export { viewBuild } from './build';
export type { Assembly, Bead, BuildView, GraphArc, GraphNode, PartThread, WorkGraph } from './build-model';
export { viewNow } from './now';
export type { NowView, NowWork, Reminder, RunningClock } from './now-model';
export { viewEpisode } from './episode';
export { viewEpisodes } from './episodes';
export type { BankView, BoardRow, EpisodePageView, EpisodesView, EpisodeView, EstimatesView, FactorRow, ProposalView, ReelView, RuntimeView, SegmentRow, Standing } from './episodes-model';
export { viewEstimates } from './estimates';
export { viewPlans } from './plans';
export type { ChangeLine, DraftView, EpisodeLine, GoalLine, PlanFacts, PlanRow, PlansView } from './plans-model';
export { viewRepair, type RepairView } from './repair';
export { viewWeek } from './week';
export type {
  BlockPart, BlockReason, BlockView, DayColumn, DayNote, Deadline, DrawnBar, DrawnFrame, DrawnPiece, FallbackItem, PlanStamp, ReadyItem, RecordLink, SessionCard, StripRow,
  WaitingWork, WeekView,
} from './week-model';
export { describeWeek } from './week-document';
export { writeWeek } from './week-text';
export { viewSafety } from './safety';
export { viewBrief } from './safety-brief';
export { viewCaptions } from './safety-captions';
export { viewEpisodeSafety } from './safety-episode';
export { viewHazards, viewTaskHazards } from './safety-hazards';
export type {
  BriefView, EpisodeSafetyView, ExposureRow, HazardCard, ItemGroup, ItemView, SafetyChoice, SafetyRoomView, SignLine, TaskHazardsView, VapourRow,
} from './safety-model';
export { viewClimate } from './climate';
export type { ClimateCurve, ClimateDay, ClimateHour, ClimateView, FitView } from './climate-model';
export { viewWaits } from './waits';
export type { AwayJob, CuringCoat, GoView, HeatingPoint, HeatingView, HeldWork, StageMark, WaitsView } from './waits-model';
export { viewLaying } from './laying';
export type { LayingView } from './laying';
export { viewMaterialLibrary } from './material-library';
export { viewTradeLibrary, type TradeEntry, type TradeLibraryView } from './trade-library';
export type { LibraryMaterial } from './material-library';
export { viewProgress } from './progress';
export type { Answer, CalibrationView, ForecastView, Mark, ProgressView, Timelines } from './progress-model';
export type { MovedPiece, MovedRow, MovedStrip } from './moved-strip';
export { viewWhatIf } from './what-if';
export type { EffectView, VariantView, WhatIfChoice, WhatIfView } from './what-if';
export { searchLog, viewLog, viewPhoto, type FoundView, type LogView } from './log';
export type { EntryView } from './log-words';
export { viewLogPhone, type PhoneView } from './log-phone';
export { viewChecks, type ChecksView, type FindingView } from './log-checks';
export { viewPromises, type PromiseView } from './log-promises';
export { viewPickups, type PickupView } from './log-pickups';
export { viewStates, type StatesView, type ThreadView } from './log-states';
export { viewStills, type StillView } from './log-stills';
export { EXPORTS, exportLog } from './log-export';
export { tellExplained, tellTrial, type ExplainedView, type TrialView } from './trial';
