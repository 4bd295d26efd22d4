import { expect, test } from 'vitest';
import { weekdayOf } from '@/lib/calendar';
import { listHolidays } from '@/lib/exchange';

/** Holidays on Monday to Friday: lists differ in whether they name a holiday that falls on a weekend besides its substitute. */
async function weekdaysOff(country: string, region: string, year: number): Promise<readonly string[]> {
  const spans = await listHolidays(country, region, { from: year, to: year });
  return spans.map(({ from }) => from).filter((date) => weekdayOf(date) <= 5).map((date) => date.slice(5));
}

// GOV.UK, UK bank holidays, England and Wales; the days from memory, the substitute days of both years read in the press.
test.each([
  [2026, ['01-01', '04-03', '04-06', '05-04', '05-25', '08-31', '12-25', '12-28']],
  [2027, ['01-01', '03-26', '03-29', '05-03', '05-31', '08-30', '12-27', '12-28']],
])('GOV.UK: the bank holidays of England in %i', async (year, days) => {
  expect(await weekdaysOff('GB', 'ENG', year)).toEqual(days);
});

// US Office of Personnel Management, federal holidays, 5 U.S.C. 6103; the days from memory, the rule of Saturday and Sunday and 3 July 2026 read.
test.each([
  [2026, ['01-01', '01-19', '02-16', '05-25', '06-19', '07-03', '09-07', '10-12', '11-11', '11-26', '12-25']],
  [2027, ['01-01', '01-18', '02-15', '05-31', '06-18', '07-05', '09-06', '10-11', '11-11', '11-25', '12-24', '12-31']],
])('US Office of Personnel Management: the federal holidays of %i', async (year, days) => {
  expect(await weekdaysOff('US', '', year)).toEqual(days);
});
