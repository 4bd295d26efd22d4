/** The air outside by the hour, from each day's low and high. */
import { addDays, dateOfDayNumber, dayNumberOf, isCivilDate, isZone, offsetMinutes, startOfDay, type CivilDate, type CivilSpan } from '@/lib/calendar';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { instant, MS_PER_MINUTE, type Instant } from '@/lib/units';
import { fractionBelowHigh, HOUR_OF_HIGH, HOUR_OF_LOW } from './daily-shape';
import { magnusPressure, vapourPressure } from './vapour';

/** One day's weather. Moisture from the dew point, else from the mean humidity, else the air is taken as saturated at the low. */
export interface DailyWeather {
  readonly date: CivilDate;
  /** °C */
  readonly low: number;
  readonly high: number;
  /** °C, null: not known. */
  readonly dewPoint?: number | null;
  /** Mean of the day in percent, null: not known. */
  readonly humidity?: number | null;
}

export interface OutsideSeries {
  readonly origin: Instant;
  /** Minutes. */
  readonly step: number;
  /** Mean of each step, °C. */
  readonly air: Float64Array;
  /** Vapour pressure, hPa. */
  readonly vapour: Float64Array;
  /** Days with no weather of their own, laid on a straight line between their neighbours. */
  readonly filledDays: readonly CivilDate[];
}

interface DayValues {
  readonly low: number;
  readonly high: number;
  readonly vapour: number;
}

const HOUR_MS = 60 * MS_PER_MINUTE;
const COLDEST = -60;
const HOTTEST = 60;

function checkDay(day: DailyWeather, index: number, seen: ReadonlySet<string>): Issue[] {
  if (!isCivilDate(day.date)) {
    return [issue('weather-date', `Row ${index + 1} of the weather has no date: "${day.date}".`, 'Write a date like 2026-12-01.', { path: [index, 'date'] })];
  }
  const issues: Issue[] = [];
  const within = (value: number): boolean => value >= COLDEST && value <= HOTTEST;
  if (!within(day.low) || !within(day.high)) {
    const message = `The weather of ${day.date} lies outside ${COLDEST} to ${HOTTEST} °C: low ${day.low}, high ${day.high}.`;
    issues.push(issue('weather-range', message, 'Check the unit: the values are read as °C.', { path: [index, 'low'] }));
  } else if (day.low > day.high) {
    const message = `The low of ${day.date} (${day.low} °C) is above its high (${day.high} °C).`;
    issues.push(issue('weather-low-above-high', message, 'Swap the two, or correct one.', { path: [index, 'low'] }));
  }
  const { humidity } = day;
  if (humidity !== undefined && humidity !== null && !(humidity > 0 && humidity <= 100)) {
    issues.push(issue('weather-humidity', `The humidity of ${day.date} is ${humidity} %.`, 'Write a percentage above 0, at most 100.', { path: [index, 'humidity'] }));
  }
  const { dewPoint } = day;
  if (dewPoint !== undefined && dewPoint !== null && !(dewPoint >= COLDEST && dewPoint <= day.high)) {
    issues.push(issue('weather-dew-point', `The dew point of ${day.date} is ${dewPoint} °C, with a high of ${day.high} °C.`, 'Write a dew point not above the high.', { path: [index, 'dewPoint'] }));
  }
  if (seen.has(day.date)) {
    issues.push(issue('weather-twice', `The weather of ${day.date} is given twice.`, 'Remove one of the two rows.', { path: [index, 'date'] }));
  }
  return issues;
}

/**
 * Whether each day makes sense; all issues collected, with row and field as path.
 * Fails with `weather-date`, `weather-range`, `weather-low-above-high`, `weather-humidity`, `weather-dew-point`, `weather-twice` or `weather-empty`.
 */
function checkWeather(days: readonly DailyWeather[]): Result<readonly DailyWeather[]> {
  const seen = new Set<string>();
  const issues = days.flatMap((day, index) => {
    const found = checkDay(day, index, seen);
    seen.add(day.date);
    return found;
  });
  if (days.length === 0) issues.push(issue('weather-empty', 'There is no weather at all.', 'Give low and high of one day at least.'));
  return issues.length > 0 ? fail(issues) : ok(days);
}

/** Vapour pressure of a day. Dew point = low where nothing is measured: FAO Irrigation paper 56, eq. 48, from memory. */
function dayVapour(day: DailyWeather): number {
  if (day.dewPoint !== undefined && day.dewPoint !== null) return magnusPressure(day.dewPoint);
  if (day.humidity !== undefined && day.humidity !== null) return vapourPressure((day.low + day.high) / 2, day.humidity);
  return magnusPressure(day.low);
}

/** Values for every day from `first` to `last` day number, missing ones on a straight line, held at both ends. */
function fillDays(days: readonly DailyWeather[], first: number, last: number): { values: DayValues[]; filled: CivilDate[] } {
  const known = days
    .map((day) => ({ at: dayNumberOf(day.date), low: day.low, high: day.high, vapour: dayVapour(day) }))
    .toSorted((a, b) => a.at - b.at);
  const values: DayValues[] = [];
  const filled: CivilDate[] = [];
  let next = 0;
  for (let at = first; at <= last; at += 1) {
    while (next < known.length && known[next]!.at < at) next += 1;
    const [before, after] = [known[next - 1] ?? known[next]!, known[next] ?? known[next - 1]!];
    if (after.at === at) {
      values.push(after);
      continue;
    }
    filled.push(dateOfDayNumber(at));
    const share = before.at === after.at ? 0 : (at - before.at) / (after.at - before.at);
    const mix = (a: number, b: number): number => a + (b - a) * share;
    values.push({ low: mix(before.low, after.low), high: mix(before.high, after.high), vapour: mix(before.vapour, after.vapour) });
  }
  return { values, filled };
}

/** Mean fraction below the high from each whole hour to the next. */
const MEAN_BELOW_HIGH = Float64Array.from({ length: 24 }, (_, hour) => (fractionBelowHigh(hour) + fractionBelowHigh(hour + 1)) / 2);

/** Mean of the hour from `hour` on day `index`: from the last high down to the low, up to the high; no jump at midnight. */
function meanOfHour(values: readonly DayValues[], index: number, hour: number): number {
  const high = hour < HOUR_OF_LOW ? values[index - 1]!.high : values[index]!.high;
  const low = hour < HOUR_OF_HIGH ? values[index]!.low : values[index + 1]!.low;
  const below = Number.isInteger(hour) ? MEAN_BELOW_HIGH[hour]! : (fractionBelowHigh(hour) + fractionBelowHigh(hour + 1)) / 2;
  return high - (high - low) * below;
}

/**
 * Outside air from the first moment of a span of dates to its last, by the hour, following ASHRAE's daily profile on the
 * clock of the zone. Day k's high leads down to day k+1's low, so nothing jumps at midnight. A day missing in `days` is
 * interpolated and named in `filledDays`; so a few dates a year already give a rough climate.
 * Fails with the issues of {@link checkWeather}. @throws RangeError for a span or zone that does not exist.
 */
export function outsideSeries(days: readonly DailyWeather[], over: CivilSpan, zone: string): Result<OutsideSeries> {
  const checked = checkWeather(days);
  if (!checked.ok) return checked;
  if (!isZone(zone)) throw new RangeError(`There is no time zone ${zone}`);
  const [first, last] = [dayNumberOf(over.from), dayNumberOf(over.to)];
  const { values, filled } = fillDays(days, first - 1, last + 1);
  const origin = startOfDay(over.from, zone);
  const end = startOfDay(addDays(over.to, 1), zone);
  const count = Math.max(0, Math.round((end - origin) / HOUR_MS));
  const [air, vapour] = [new Float64Array(count), new Float64Array(count)];
  let index = 1;
  let [dayStart, dayEnd] = [origin as number, startOfDay(addDays(over.from, 1), zone) as number];
  for (let k = 0; k < count; k += 1) {
    const at = origin + k * HOUR_MS;
    while (at >= dayEnd) {
      index += 1;
      dayStart = dayEnd;
      dayEnd = startOfDay(dateOfDayNumber(first + index), zone);
    }
    const plain = dayEnd - dayStart === 24 * HOUR_MS;
    const hour = plain ? (at - dayStart) / HOUR_MS : wallHour(at, zone);
    air[k] = meanOfHour(values, index, hour);
    vapour[k] = values[index]!.vapour;
  }
  const isWanted = (date: CivilDate): boolean => date >= over.from && date <= over.to;
  return ok({ origin, step: 60, air, vapour, filledDays: filled.filter(isWanted) });
}

function wallHour(at: number, zone: string): number {
  const wall = at + offsetMinutes(zone, instant(at)) * MS_PER_MINUTE;
  const dayMs = 24 * HOUR_MS;
  return (wall - Math.floor(wall / dayMs) * dayMs) / HOUR_MS;
}
