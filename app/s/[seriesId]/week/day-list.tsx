import { Flag } from 'lucide-react';
import type { DayColumn, SessionCard, WeekView } from '@/lib/views';
import { LineButton } from './block-button';
import { BlockSign, sheetId } from './block-sign';
import styles from './day-list.module.css';

/** The week day by day, for a narrow screen: the same sessions, work and waits as the strip. */
export function DayList({ view }: { readonly view: WeekView }) {
  return (
    <ol className={`plain ${styles.days}`}>
      {view.days.map((day) => (
        <Day key={day.date} day={day} view={view} />
      ))}
    </ol>
  );
}

function Day({ day, view }: { readonly day: DayColumn; readonly view: WeekView }) {
  const sessions = view.sessions.filter((session) => session.date === day.date);
  const notes = view.notes[day.date] ?? [];
  const isEmpty = sessions.length === 0 && notes.length === 0 && day.deadlines.length === 0;
  return (
    <li className={styles.day}>
      <h3 className={day.isToday ? styles.today : undefined}>
        {day.label}
        {day.isToday ? ' · today' : ''}
        {isEmpty ? <span className={styles.nothing}> nothing planned</span> : null}
      </h3>
      {day.clockChange ? <p className={styles.small}>{day.clockChange}</p> : null}
      {day.deadlines.map((deadline) => (
        <p key={`${deadline.kind}:${deadline.episode.id}`} className={`${styles.flag} ${deadline.isLate ? styles.late : ''}`}>
          <Flag size={18} aria-hidden />
          <span>
            {deadline.text}: {deadline.outlook}
          </span>
        </p>
      ))}
      {notes.length > 0 ? (
        <ul className={`plain ${styles.notes}`}>
          {notes.map((note) => (
            <li key={`${note.blockId}:${note.text}`}>
              <button type="button" className={`${styles.note} ${styles[note.kind]}`} popoverTarget={sheetId(note.blockId)}>
                <BlockSign kind={note.kind} size={18} /> <span>{note.text}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {sessions.map((session) => (
        <DaySession key={session.id} session={session} view={view} />
      ))}
    </li>
  );
}

function DaySession({ session, view }: { readonly session: SessionCard; readonly view: WeekView }) {
  return (
    <section className={styles.session} aria-label={`Session ${session.when}`}>
      <p className={styles.sessionHead}>
        <strong>{session.when.slice(session.when.indexOf(':') - 2)}</strong> {session.crew.join(', ') || 'nobody is in'}
      </p>
      {session.work.length === 0 ? <p className={styles.small}>No work is planned in it.</p> : null}
      <ul className={`plain ${styles.work}`}>
        {session.work.map(({ blockId, time }) => {
          const block = view.blocks[blockId];
          return block ? (
            <li key={`${blockId}:${time}`}>
              <LineButton block={block} time={time} />
            </li>
          ) : null;
        })}
      </ul>
    </section>
  );
}
