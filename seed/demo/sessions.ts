/** When the arch is open: Tuesday and Thursday evenings, Saturdays, every other Sunday; not over the year's end. */
import { addDays } from '@/lib/calendar';
import type { CivilDate, Person, Session } from '@/lib/build';
import { celsius } from '@/lib/units';
import type { Moment, SpanDraft } from './draft';
import { people } from './people';
import { places } from './places';

const WEEKS = 18;

interface Slot {
  readonly day: number;
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly crew: readonly string[];
  readonly isRecording: boolean;
  readonly isNoiseAllowed: boolean;
  readonly isDay: boolean;
  readonly heating: number;
}

const [marta, dilip, joan] = ['person-marta', 'person-dilip', 'person-joan'] as const;

/**
 * One week's slots. The arch next door rehearses on Thursdays and Sundays: quiet then.
 * Every other Tuesday is for work alone, without the camera.
 */
function weekSlots(week: number): readonly Slot[] {
  const tuesday: Slot = { day: 1, name: 'Tuesday evening', from: '18:30', to: '21:30', crew: week % 2 === 0 ? [marta, joan] : [marta, dilip, joan], isRecording: week % 2 === 1, isNoiseAllowed: true, isDay: false, heating: 14 };
  const thursday: Slot = { day: 3, name: 'Thursday evening', from: '18:30', to: '21:30', crew: [marta, dilip], isRecording: true, isNoiseAllowed: false, isDay: false, heating: 14 };
  const saturday: Slot = { day: 5, name: 'Saturday', from: '09:30', to: '17:00', crew: [marta, dilip, joan], isRecording: true, isNoiseAllowed: true, isDay: true, heating: 16 };
  const sunday: Slot = { day: 6, name: 'Sunday', from: '10:00', to: '15:00', crew: week % 4 === 1 ? [marta, joan] : [marta, dilip, joan], isRecording: true, isNoiseAllowed: false, isDay: true, heating: 16 };
  return week % 2 === 1 ? [tuesday, thursday, saturday, sunday] : [tuesday, thursday, saturday];
}

/** Single evenings that somebody misses, by week and day. */
const missing: readonly { readonly week: number; readonly day: number; readonly person: string }[] = [
  { week: 1, day: 1, person: joan },
  { week: 2, day: 3, person: dilip },
  { week: 5, day: 3, person: marta },
  { week: 9, day: 5, person: dilip },
  { week: 12, day: 1, person: marta },
];

/** Days on which nobody comes, as month and day. */
const holidays: readonly string[] = ['12-24', '12-25', '12-26', '12-31', '01-01'];

const isAway = (spans: readonly SpanDraft[], day: number): boolean => spans.some((span) => span.fromDay <= day && day <= span.toDay);

function crewOf(slot: Slot, week: number): readonly Person['id'][] {
  const day = week * 7 + slot.day;
  return slot.crew.filter((id) => {
    const person = people.find((one) => one.id === id);
    const isMissing = missing.some((one) => one.week === week && one.day === slot.day && one.person === id);
    return person !== undefined && !isMissing && !isAway(person.away, day);
  });
}

/**
 * Every session of the series.
 * @param at gives the instant of a day after the starting Monday and a time on the wall.
 */
export function buildSessions(monday: CivilDate, at: (moment: Moment) => Session['start']): readonly Session[] {
  const indoors = places.map((place) => place.id).filter((id) => id !== 'place-yard');
  const sessions: Session[] = [];
  for (let week = 0; week < WEEKS; week += 1) {
    for (const slot of weekSlots(week)) {
      const day = week * 7 + slot.day;
      if (holidays.includes(addDays(monday, day).slice(5))) continue;
      sessions.push({
        kind: 'session', id: `session-w${week + 1}-${slot.name.split(' ')[0]!.toLowerCase()}`, revision: 1, order: sessions.length, name: slot.name,
        start: at({ day, at: slot.from }), end: at({ day, at: slot.to }),
        placeIds: slot.isDay ? [...indoors, 'place-yard'] : indoors, crewIds: crewOf(slot, week),
        isRecording: slot.isRecording, hasDaylight: slot.isDay, isNoiseAllowed: slot.isNoiseAllowed, heating: celsius(slot.heating),
      });
    }
  }
  return sessions;
}
