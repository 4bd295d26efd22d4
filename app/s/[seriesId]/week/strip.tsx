import type { CSSProperties } from 'react';
import { Camera, Flag } from 'lucide-react';
import type { DayColumn, DrawnFrame, SessionCard, StripRow, WeekView } from '@/lib/views';
import { BarButton, PieceButton } from './block-button';
import { MOVE_HINT_ID } from './movable';
import styles from './strip.module.css';

const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;

/** Least width of the strip: every scaled minute gets this many px. */
const PX_PER_UNIT = 0.66;

/** The week as a strip: days as columns of time, places as rows, sessions as frames. Scrolls inside itself when the screen is narrow. */
export function Strip({ view }: { readonly view: WeekView }) {
  const least = Math.round(view.units * PX_PER_UNIT);
  return (
    <section className={styles.scroll} aria-label={`Strip of the week, ${view.label}`}>
      <p id={MOVE_HINT_ID} hidden>Shift with the left or right arrow moves it; nothing is saved until you say so.</p>
      <div className={styles.strip} style={{ '--least': `${least}px` } as CSSProperties}>
        <DayHeads view={view} />
        {view.rows.map((row, index) => (
          <Row key={row.id} row={row} view={view} above={view.rows[index - 1]} below={view.rows[index + 1]} />
        ))}
      </div>
    </section>
  );
}

function DayHeads({ view }: { readonly view: WeekView }) {
  return (
    <div className={styles.head}>
      <div className={styles.corner} />
      <div className={styles.track}>
        {view.days.map((day) => (
          <DayHead key={day.date} day={day} sessions={view.sessions.filter((session) => session.date === day.date)} />
        ))}
        {view.days.flatMap((day) => day.windows).map((window) =>
          window.ticks.map((tick, index) => (
            <span
              key={`${window.left}:${tick.left}`}
              className={`${styles.tick} ${index === 0 ? styles.tickFirst : ''} ${index > 0 && index === window.ticks.length - 1 ? styles.tickLast : ''}`}
              style={{ left: percent(tick.left) }}
              aria-hidden
            >
              {tick.label}
            </span>
          )),
        )}
        {view.nowAt === null ? null : (
          <span className={styles.nowFlag} style={{ left: percent(view.nowAt) }}>
            now
          </span>
        )}
      </div>
    </div>
  );
}

function DayHead({ day, sessions }: { readonly day: DayColumn; readonly sessions: readonly SessionCard[] }) {
  return (
    <div
      className={`${styles.day} ${day.isToday ? styles.today : ''} ${day.isQuiet ? styles.quietDay : ''}`}
      style={{ width: percent(day.width) }}
    >
      <h3 className={styles.dayName}>
        {/* On a narrow day the month goes to a line of its own. */}
        {day.label.replace(' ', '\u00a0')}
        {day.isToday ? <span className="visually-hidden">, today</span> : null}
      </h3>
      {sessions.map((session) => (
        <a key={session.id} href={`#session-${session.id}`} className={styles.session}>
          {session.name}
          {session.isRecording ? <Camera size={14} aria-label="recording" /> : null}
        </a>
      ))}
      {day.clockChange ? <p className={styles.clock}>{day.clockChange}</p> : null}
      {day.deadlines.map((deadline) => (
        <p key={`${deadline.kind}:${deadline.episode.id}`} className={`${styles.flag} ${deadline.isLate ? styles.late : ''}`}>
          <Flag size={14} aria-hidden /> <span>{deadline.text}</span>
        </p>
      ))}
    </div>
  );
}

interface RowProps {
  readonly row: StripRow;
  readonly view: WeekView;
  readonly above: StripRow | undefined;
  readonly below: StripRow | undefined;
}

function Row({ row, view, above, below }: RowProps) {
  const size = { '--lanes': row.lanes, '--waits': row.waitLanes } as CSSProperties;
  return (
    <section className={styles.row} aria-label={row.name} style={size}>
      <h4 className={`${styles.rowName} ${row.kind === 'place' ? '' : styles.outside}`}>{row.name}</h4>
      <div className={styles.track}>
        {view.days.map((day) => (
          <span key={day.date} className={`${styles.dayLine} ${day.isToday ? styles.todayLine : ''}`} style={{ left: percent(day.left), width: percent(day.width) }} aria-hidden />
        ))}
        {view.frames.filter((frame) => frame.rowIds.includes(row.id)).map((frame) => (
          <Frame key={frame.sessionId} frame={frame} isTop={!isOpenIn(frame, above)} isBottom={!isOpenIn(frame, below)} />
        ))}
        {row.bars.map((bar) => {
          const block = view.blocks[bar.blockId];
          return block ? <BarButton key={bar.blockId} bar={bar} block={block} /> : null;
        })}
        {row.pieces.map((piece) => {
          const block = view.blocks[piece.blockId];
          return block ? <PieceButton key={piece.key} piece={piece} block={block} /> : null;
        })}
        {view.nowAt === null ? null : <span className={styles.now} style={{ left: percent(view.nowAt) }} aria-hidden />}
      </div>
    </section>
  );
}

const isOpenIn = (frame: DrawnFrame, row: StripRow | undefined): boolean => row !== undefined && frame.rowIds.includes(row.id);

/** The piece of a session's frame that lies in one row; its edges meet those of the rows above and below. */
function Frame({ frame, isTop, isBottom }: { readonly frame: DrawnFrame; readonly isTop: boolean; readonly isBottom: boolean }) {
  return (
    <span
      className={`${styles.frame} ${isTop ? styles.frameTop : ''} ${isBottom ? styles.frameBottom : ''}`}
      style={{ left: percent(frame.left), width: percent(frame.width) }}
      aria-hidden
    />
  );
}
