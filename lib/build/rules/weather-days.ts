import { issue, type Issue } from '@/lib/result';
import type { Weather } from '../model';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const [COLDEST, HOTTEST] = [-60, 60];

function checkTable(weather: Weather): readonly Issue[] {
  const subjects = subjectsOf(weather);
  const seen = new Set<string>();
  const issues: Issue[] = [];
  weather.days.forEach(({ date, low, high, dewPoint, humidity }, index) => {
    const add = (code: string, message: string, fix: string, field: string): void => {
      issues.push(issue(code, `${startWith(weather)}, row ${index + 1} (${date}): ${message}`, fix, { path: ['days', index, field], subjects }));
    };
    const isWithin = (value: number): boolean => value >= COLDEST && value <= HOTTEST;
    if (!isWithin(low) || !isWithin(high)) add('weather-range', `${formatNumber(low)} to ${formatNumber(high)} °C cannot be.`, 'Check the unit: the values are read as °C.', 'low');
    else if (low > high) add('weather-low-above-high', `the low of ${formatNumber(low)} °C is above the high of ${formatNumber(high)} °C.`, 'Swap the two.', 'low');
    if (humidity !== null && !(humidity > 0 && humidity <= 100)) add('weather-humidity', `a humidity of ${formatNumber(humidity)} %.`, 'Type more than 0 and at most 100 %.', 'humidity');
    if (dewPoint !== null && !(dewPoint >= COLDEST && dewPoint <= high)) add('weather-dew-point', `a dew point of ${formatNumber(dewPoint)} °C with a high of ${formatNumber(high)} °C.`, 'Type a dew point not above the high.', 'dewPoint');
    if (seen.has(date)) add('weather-twice', 'this day is given twice.', 'Take one of the two rows out.', 'date');
    seen.add(date);
  });
  return issues;
}

/** Every day of a weather table is one that can be, once. */
export const checkWeatherTables: Rule = (document) => document.weather.flatMap(checkTable);
