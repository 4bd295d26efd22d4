/** Formats that other programs read and write. */
export { listHolidayCountries } from './holiday-countries';
export { checkHolidayPlace, closeOnHolidays, listHolidays } from './holidays';
export { readOtio, writeOtio, type Timeline, type TimelineClip, type TimelineMarker } from './otio';
export { readTakesCsv, writeTakesCsv, type TakeRow } from './takes-csv';
export { readWebVtt, writeWebVtt, type Cue } from './webvtt';
