/** Who is really in a session. */
import { wallOf } from '@/lib/calendar';
import type { Person, SeriesDocument, Session } from './model';

/** A person is in the session's crew and not marked away on its day. */
export function isAttending(person: Person, session: Session, zone: string): boolean {
  if (!session.crewIds.includes(person.id)) return false;
  const day = wallOf(session.start, zone).date;
  return !person.away.some((span) => span.from <= day && day <= span.to);
}

/** Everybody of the session's crew who is not away that day, and who is. In the order of the crew. */
export function attendanceOf({ people, series }: Pick<SeriesDocument, 'people' | 'series'>, session: Session): { readonly present: readonly Person[]; readonly away: readonly Person[] } {
  const crew = session.crewIds.flatMap((id) => people.find((person) => person.id === id) ?? []);
  return { present: crew.filter((person) => isAttending(person, session, series.zone)), away: crew.filter((person) => !isAttending(person, session, series.zone)) };
}
