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
  ListSpec, ManyChoicesSpec, MomentSpec, PartStateSpec, RecordFormView, TextSpec, ThreePointSpec, } from './record-form-model';
export { HISTORY_STEP, viewHistory } from './history';
export type { ChangeView, EditView } from './history';
export { viewBuild } from './build';
export type { Assembly, Bead, BuildView, GraphArc, GraphNode, PartThread, WorkGraph } from './build-model';
export { viewNow } from './now';
export type { NowView, NowWork, Reminder } from './now-model';
export { viewPlans } from './plans';
export type { ChangeLine, DraftView, EpisodeLine, PlanFacts, PlanRow, PlansView } from './plans-model';
export { viewWeek } from './week';
export type {
  BlockPart, BlockReason, BlockView, DayColumn, DayNote, Deadline, DrawnBar, DrawnFrame, DrawnPiece, FallbackItem, PlanStamp, ReadyItem, RecordLink, SessionCard, StripRow,
  WaitingWork, WeekView,
} from './week-model';
export { describeWeek } from './week-document';
export { writeWeek } from './week-text';
export { searchLog, viewLog, viewPhoto, type FoundView, type LogView } from './log';
export type { EntryView } from './log-words';
export { viewLogPhone, type PhoneView } from './log-phone';
export { viewChecks, type ChecksView, type FindingView } from './log-checks';
export { viewPromises, type PromiseView } from './log-promises';
export { viewPickups, type PickupView } from './log-pickups';
export { viewStates, type StatesView, type ThreadView } from './log-states';
export { viewStills, type StillView } from './log-stills';
export { EXPORTS, exportLog } from './log-export';
