'use client';

import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, useTransition, type ReactNode } from 'react';
import { Undo2, X } from 'lucide-react';
import type { Outcome, SavedNote } from '@/app/_actions/outcome';
import { undoAction } from '@/app/_actions/undo';
import { Button } from './button';
import styles from './notice.module.css';

/** How long a notice stays while nobody points at it. */
const STAY_MS = 10_000;
const TICK_MS = 200;

interface Told {
  readonly key: number;
  readonly text: string;
  /** The change that the Undo button takes back. */
  readonly undo: { readonly seriesId: string; readonly number: number } | null;
}

interface Notices {
  /** Says a sentence that needs no answer. */
  readonly say: (text: string) => void;
  /** Says what was saved, with an Undo button for ten seconds. History keeps it for ever. */
  readonly sayChange: (seriesId: string, saved: SavedNote) => void;
}

/** The change in words, with the first thing it made questionable. */
function sayChange({ label, warnings }: SavedNote): string {
  const [first, ...others] = warnings;
  if (first === undefined) return `${label}.`;
  const more = others.length === 0 ? '' : ` And ${others.length} more, marked in the records.`;
  return `${label}. Note: ${first}${more}`;
}

const NoticeContext = createContext<Notices | null>(null);

/** The notices of the page. Works anywhere below the root layout. */
export function useNotices(): Notices {
  const notices = useContext(NoticeContext);
  if (notices === null) throw new Error('useNotices needs NoticeHost above it');
  return notices;
}

/** Holds the one notice that may stand; lives in the root layout so that it outlasts a change of page. */
export function NoticeHost({ children }: { children: ReactNode }) {
  const [told, setTold] = useState<Told | null>(null);
  const keys = useRef(0);
  const tell = useCallback((text: string, undo: Told['undo']) => {
    keys.current += 1;
    setTold({ key: keys.current, text, undo });
  }, []);
  const notices = useMemo<Notices>(
    () => ({
      say: (text) => tell(text, null),
      sayChange: (seriesId, saved) => tell(sayChange(saved), { seriesId, number: saved.number }),
    }),
    [tell],
  );
  const close = useCallback(() => setTold(null), []);
  return (
    <NoticeContext value={notices}>
      {children}
      <div className={styles.host}>
        {/* The live region stands from the start, so that its first words are read out too. */}
        <output className="visually-hidden">
          {told?.text}
          {told?.undo ? ' Undo is available for ten seconds, and later in the history.' : ''}
        </output>
        {told ? <NoticeCard key={told.key} told={told} close={close} tell={tell} /> : null}
      </div>
    </NoticeContext>
  );
}

interface NoticeCardProps {
  readonly told: Told;
  readonly close: () => void;
  readonly tell: (text: string, undo: Told['undo']) => void;
}

function NoticeCard({ told, close, tell }: NoticeCardProps) {
  const card = useRef<HTMLElement>(null);
  const [isHeld, setHeld] = useState(false);
  const [left, setLeft] = useState(STAY_MS);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [isPending, startUndo] = useTransition();
  const isWaiting = isHeld || isPending || refusal !== null;

  useEffect(() => {
    if (isWaiting) return;
    const timer = setInterval(() => setLeft((before) => before - TICK_MS), TICK_MS);
    return () => clearInterval(timer);
  }, [isWaiting]);

  // The clock stands while somebody points at the notice or is in it with the keyboard.
  useEffect(() => {
    const element = card.current;
    if (element === null) return;
    const leaving = new AbortController();
    const listen = (type: string, held: boolean) => element.addEventListener(type, () => setHeld(held), { signal: leaving.signal });
    listen('mouseenter', true);
    listen('focusin', true);
    listen('mouseleave', false);
    listen('focusout', false);
    return () => leaving.abort();
  }, []);

  useEffect(() => {
    if (left <= 0) close();
  }, [left, close]);

  const undo = () => {
    if (told.undo === null || isPending) return;
    const { seriesId, number } = told.undo;
    startUndo(async () => {
      const outcome: Outcome = await undoAction(seriesId, number);
      if (outcome.ok) tell(sayChange(outcome.saved), { seriesId, number: outcome.saved.number });
      else setRefusal(outcome.issues.map((issue) => `${issue.message} ${issue.fix}`).join(' '));
    });
  };

  return (
    <section ref={card} className={styles.notice} aria-label="Last change">
      <span className={styles.words}>
        {told.text}
        {refusal ? (
          <span role="alert" className={styles.refusal}>
            Not undone. {refusal}
          </span>
        ) : null}
      </span>
      <span className={styles.buttons}>
        {told.undo ? (
          <Button onClick={undo} aria-disabled={isPending}>
            <Undo2 size={18} aria-hidden />
            {isPending ? 'Undoing' : 'Undo'}
          </Button>
        ) : null}
        <Button look="quiet" onClick={close} aria-label="Close the notice">
          <X size={18} aria-hidden />
        </Button>
      </span>
      <span className={styles.left} style={{ width: `${(100 * left) / STAY_MS}%` }} aria-hidden />
    </section>
  );
}
