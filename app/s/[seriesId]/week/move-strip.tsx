'use client';

import { useRef, useState, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { useMover } from './mover';
import { momentAt, type ScaledSpan } from './strip-time';
import styles from './move-panel.module.css';

/** Pixels that a press may wander before it is a drag. */
const SLACK = 6;

interface Drag {
  readonly blockId: string;
  readonly pressedAt: number;
  /** Pixels from the piece's left edge to the pointer. */
  readonly grip: number;
  readonly track: DOMRect;
  readonly piece: DOMRect;
  readonly isMoving: boolean;
  readonly at: number | null;
}

const pieceOf = (target: EventTarget): HTMLElement | null => (target instanceof Element ? target.closest<HTMLElement>('[data-move]') : null);

/** Lets the pieces of the strip be moved: drag with mouse or pen, or Shift with the arrow keys. A press without a drag opens the sheet as ever. */
export function MoveStrip({ children, spans, zone }: { readonly children: ReactNode; readonly spans: readonly ScaledSpan[]; readonly zone: string }) {
  const mover = useMover();
  const [drag, setDrag] = useState<Drag | null>(null);
  const hasDragged = useRef(false);
  if (mover === null) return children;
  const press = (event: PointerEvent) => {
    hasDragged.current = false;
    const piece = pieceOf(event.target);
    const track = piece?.parentElement;
    if (piece === null || !track || event.button !== 0 || event.pointerType === 'touch') return;
    const box = piece.getBoundingClientRect();
    setDrag({ blockId: piece.dataset.move ?? '', pressedAt: event.clientX, grip: event.clientX - box.left, track: track.getBoundingClientRect(), piece: box, isMoving: false, at: null });
  };
  const pull = (event: PointerEvent) => {
    if (drag === null || (!drag.isMoving && Math.abs(event.clientX - drag.pressedAt) < SLACK)) return;
    if (!drag.isMoving) event.currentTarget.setPointerCapture(event.pointerId);
    hasDragged.current = true;
    const at = momentAt(spans, (event.clientX - drag.grip - drag.track.left) / drag.track.width);
    if (at !== drag.at || !drag.isMoving) setDrag({ ...drag, isMoving: true, at });
  };
  const letGo = () => {
    if (drag?.isMoving && drag.at !== null) mover.wish(drag.blockId, { at: drag.at });
    setDrag(null);
  };
  const step = (event: KeyboardEvent) => {
    const blockId = pieceOf(event.target)?.dataset.move;
    if (blockId === undefined) return;
    if (event.shiftKey && (event.key === 'ArrowLeft' || event.key === 'ArrowRight')) {
      event.preventDefault();
      mover.step(blockId, event.key === 'ArrowLeft' ? -1 : 1);
    } else if (event.key === 'Enter' && mover.held?.block.id === blockId) {
      event.preventDefault();
      document.querySelector<HTMLElement>('[data-move-panel] button')?.focus();
    }
  };
  return (
    // The pieces inside are the buttons; this only listens to what they let through.
    <div
      role="presentation" onPointerDown={press} onPointerMove={pull} onPointerUp={letGo} onPointerCancel={() => setDrag(null)} onKeyDown={step}
      onClickCapture={(event) => {
        if (!hasDragged.current) return;
        hasDragged.current = false;
        event.preventDefault();
        event.stopPropagation();
      }}
    >
      {children}
      {drag?.isMoving ? <Ghost drag={drag} spans={spans} zone={zone} /> : null}
    </div>
  );
}

function Ghost({ drag, spans, zone }: { readonly drag: Drag; readonly spans: readonly ScaledSpan[]; readonly zone: string }) {
  const { at } = drag;
  const span = spans.find((one) => at !== null && one.start <= at && at < one.end);
  if (at === null || span === undefined) return null;
  const share = span.left + (span.width * (at - span.start)) / (span.end - span.start);
  const left = drag.track.left + share * drag.track.width;
  const words = new Intl.DateTimeFormat('en-GB', { timeZone: zone, weekday: 'short', hour: '2-digit', minute: '2-digit' }).format(at);
  return (
    <span className={styles.ghost} style={{ left, top: drag.piece.top, width: drag.piece.width, height: drag.piece.height }} aria-hidden>
      {words}
    </span>
  );
}
