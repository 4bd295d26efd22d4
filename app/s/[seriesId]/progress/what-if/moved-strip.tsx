import type { CSSProperties } from 'react';
import Link from 'next/link';
import { MoveRight } from 'lucide-react';
import { ScrollRegion, weekPath } from '@/app/_ui';
import type { MovedPiece, MovedRow, MovedStrip as Moves } from '@/lib/views';
import strip from '../../week/strip.module.css';
import styles from './moved-strip.module.css';

const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;
const PX_PER_UNIT = 0.66;

/** The week in which work moves first: each block where it was, dashed, and where it would be. */
export function MovedStrip({ moves, seriesId }: { readonly moves: Moves; readonly seriesId: string }) {
  return (
    <>
      <p className={styles.legend}>
        <span><span className={`${styles.sample} ${styles.was}`} aria-hidden /> where it was</span>
        <span><span className={`${styles.sample} ${styles.would}`} aria-hidden /> where it would be</span>
        <Link href={weekPath(seriesId, moves.week)}>{moves.label} as it is planned</Link>
      </p>
      <ScrollRegion className={strip.scroll} label={`What moves in the week, ${moves.label}`}>
        <div className={`${strip.strip} ${styles.strip}`} style={{ '--least': `${Math.round(moves.units * PX_PER_UNIT)}px` } as CSSProperties}>
          <div className={strip.head}>
            <div className={strip.corner} />
            <div className={`${strip.track} ${styles.days}`}>
              {moves.days.map((day) => <div key={day.date} className={strip.day} style={{ width: percent(day.width) }}><h4 className={strip.dayName}>{day.label}</h4></div>)}
            </div>
          </div>
          {moves.rows.map((row) => <Row key={row.id} row={row} moves={moves} />)}
        </div>
      </ScrollRegion>
      {moves.laterCount > 0 ? <p className={styles.later}>{moves.laterCount} more in other weeks, named below.</p> : null}
    </>
  );
}

function Row({ moves, row }: { readonly moves: Moves; readonly row: MovedRow }) {
  return (
    <section className={strip.row} aria-label={row.name} style={{ '--lanes': row.lanes, '--waits': 0 } as CSSProperties}>
      <h4 className={strip.rowName}>{row.name}</h4>
      <div className={strip.track}>
        {moves.days.map((day) => <span key={day.date} className={strip.dayLine} style={{ left: percent(day.left), width: percent(day.width) }} aria-hidden />)}
        {moves.frames.filter((frame) => frame.rowIds.includes(row.id)).map((frame) => (
          <span key={frame.sessionId} className={`${strip.frame} ${strip.frameTop} ${strip.frameBottom}`} style={{ left: percent(frame.left), width: percent(frame.width) }} aria-hidden />
        ))}
        {row.pieces.map((piece) => <Piece key={piece.key} piece={piece} />)}
      </div>
    </section>
  );
}

function Piece({ piece }: { readonly piece: MovedPiece }) {
  return (
    <p className={`${styles.piece} ${styles[piece.look]}`} style={{ left: percent(piece.left), width: percent(piece.width), '--lane': piece.lane } as CSSProperties} title={`${piece.title}, ${piece.when}`}>
      <span className={styles.word}>{piece.look === 'was' ? 'was' : 'would be'}</span>
      {piece.other === null ? null : <span className={styles.other}> <MoveRight size={13} aria-hidden /> {piece.other}</span>}
      <span className={styles.title}>{piece.title}</span>
      <span className="visually-hidden">, {piece.when}</span>
    </p>
  );
}
