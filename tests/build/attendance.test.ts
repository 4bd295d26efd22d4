import { expect, it } from 'vitest';
import { attendanceOf } from '@/lib/build';
import { sampleSeries } from './sample-series';

const sample = sampleSeries();
const session = sample.sessions.find(({ crewIds }) => crewIds.length > 1)!;
const day = new Date(session.start).toISOString().slice(0, 10);

function awayFrom(from: string, to: string): readonly string[] {
  const [first] = session.crewIds;
  const people = sample.people.map((person) => (person.id === first ? { ...person, away: [{ from, to, why: 'ill' }] } : person));
  return attendanceOf({ ...sample, people }, session).away.map(({ id }) => id);
}

it('leaves out whoever is away on the day of the session, both ends of the span included', () => {
  const [first] = session.crewIds;
  const shift = (days: number) => new Date(Date.parse(day) + days * 86_400_000).toISOString().slice(0, 10);
  expect(awayFrom(day, day)).toEqual([first]);
  expect(awayFrom(shift(-3), day)).toEqual([first]);
  expect(awayFrom(shift(-3), shift(-1))).toEqual([]);
  expect(awayFrom(shift(1), shift(3))).toEqual([]);
  expect(attendanceOf(sample, session).present.map(({ id }) => id)).toEqual(session.crewIds);
});
