import { Camera, Check, OctagonAlert, Pin } from 'lucide-react';
import type { CSSProperties } from 'react';
import type { BlockView, DrawnBar, DrawnPiece } from '@/lib/views';
import { BlockSign, sheetId } from './block-sign';
import { isMovable, MOVE_HINT_ID } from './movable';
import styles from './block-button.module.css';

const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;

function lookOf(block: BlockView): string {
  const kind = { task: styles.work, 'before-shot': styles.film, 'late-work': styles.work, 'drop-off': styles.errand, collection: styles.errand, away: styles.away, cure: styles.cure, shut: styles.shut }[block.kind];
  return [kind, block.isDone ? styles.done : undefined].filter(Boolean).join(' ');
}

/** What the marks of a block say, for those who cannot see them. */
function describeMarks(block: BlockView): string {
  const marks = [
    block.isDone ? 'done' : '',
    block.kind === 'task' && block.isFilmed ? 'filmed' : '',
    block.isIrreversible && block.kind === 'task' ? 'once only' : '',
    block.isPinned ? 'pinned' : '',
  ].filter((mark) => mark !== '');
  return marks.length > 0 ? `, ${marks.join(', ')}` : '';
}

function Marks({ block }: { readonly block: BlockView }) {
  return (
    <span className={styles.marks} aria-hidden>
      {block.isDone ? <Check size={15} /> : null}
      {block.kind === 'task' && block.isFilmed ? <Camera size={15} /> : null}
      {block.kind === 'task' && block.isIrreversible ? <OctagonAlert size={15} /> : null}
      {block.isPinned ? <Pin size={15} /> : null}
    </span>
  );
}

/** A worked piece on the strip: a plate that opens its sheet. The thick edge shows its true time. */
export function PieceButton({ piece, block }: { readonly piece: DrawnPiece; readonly block: BlockView }) {
  const place = {
    '--left': percent(piece.left), '--width': percent(piece.width), '--lane': piece.lane,
    '--true-left': percent(piece.trueLeft), '--true-width': percent(piece.trueWidth),
  } as CSSProperties;
  const isStray = piece.sessionId === null && (block.kind === 'task' || block.kind === 'before-shot' || block.kind === 'late-work');
  return (
    <button
      type="button"
      className={`${styles.piece} ${lookOf(block)} ${isStray ? styles.stray : ''}`}
      style={place}
      popoverTarget={sheetId(block.id)}
      {...(isMovable(block) ? { 'data-move': block.id, 'aria-describedby': MOVE_HINT_ID } : {})}
    >
      <span className={styles.edge} />
      <span className={styles.inside} aria-hidden>
        <span className={styles.title}>{block.label}</span>
        <span className={styles.small}>
          <span className={styles.time}>{piece.time}</span> <span>{piece.crewInitials}</span>
        </span>
      </span>
      <span className="visually-hidden">
        {block.kindWord}: {block.label}, {piece.time}, {block.crew.join(' and ')}
        {describeMarks(block)}
        {isStray ? ', its session is gone' : ''}
      </span>
      <Marks block={block} />
    </button>
  );
}

/** A wait on the strip: a bar from its first to its last moment. */
export function BarButton({ bar, block }: { readonly bar: DrawnBar; readonly block: BlockView }) {
  const place = { '--left': percent(bar.left), '--width': percent(bar.width), '--lane': bar.lane } as CSSProperties;
  const open = `${bar.startsBefore ? styles.fromBefore : ''} ${bar.endsAfter ? styles.toAfter : ''}`;
  return (
    <button
      type="button"
      className={`${styles.bar} ${lookOf(block)} ${open}`}
      style={place}
      popoverTarget={sheetId(block.id)}
    >
      <BlockSign kind={block.kind} size={15} />
      <span className={styles.barWords}>
        <strong>{block.kindWord}</strong> {block.title} <span className={styles.until}>{bar.until}</span>
      </span>
    </button>
  );
}

/** A block in a list: time, title, place and people. */
export function LineButton({ block, time }: { readonly block: BlockView; readonly time: string }) {
  return (
    <button type="button" className={`${styles.line} ${lookOf(block)}`} popoverTarget={sheetId(block.id)}>
      <span className={styles.lineTime}>{time}</span>
      <span className={styles.lineWords}>
        <span className={styles.lineTitle}>{block.title}</span>
        <span className={styles.lineSmall}>
          <BlockSign kind={block.kind} size={15} /> {block.kindWord}
          {block.place ? ` · ${block.place}` : ''}
          {block.crew.length > 0 ? ` · ${block.crew.join(', ')}` : ''}
          {describeMarks(block)}
        </span>
      </span>
      <Marks block={block} />
    </button>
  );
}
