'use client';

import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { issue } from '@/lib/result';
import type { Held, MovedBlock, Mover } from './held';
import { MovePanel } from './move-panel';
import { stepFrom, type ScaledSpan } from './strip-time';
import { askTry, type Wish } from './try-answer';

const MoverContext = createContext<Mover | null>(null);

/** The mover of the page; null where blocks cannot be moved. */
export function useMover(): Mover | null {
  return useContext(MoverContext);
}

interface MoverHostProps {
  readonly seriesId: string;
  readonly blocks: readonly MovedBlock[];
  readonly spans: readonly ScaledSpan[];
  readonly sessions: readonly { readonly id: string; readonly label: string }[];
  readonly children: ReactNode;
}

/** Holds the block that is being moved and asks the server what each place would mean. Nothing is saved until a button says so. */
export function MoverHost({ blocks, children, seriesId, sessions, spans }: MoverHostProps) {
  const [held, setHeld] = useState<Held | null>(null);
  const asking = useRef<AbortController | null>(null);
  const at = useRef<{ readonly id: string; readonly at: number } | null>(null);
  const ask = useCallback(async (block: MovedBlock, wish: Wish) => {
    asking.current?.abort();
    const controller = new AbortController();
    asking.current = controller;
    at.current = { id: block.id, at: 'at' in wish ? wish.at : block.start };
    // The last answer stays until the next one is here, so that the panel does not flicker.
    setHeld((before) => ({ block, at: 'at' in wish ? wish.at : null, answer: before?.block.id === block.id ? before.answer : null, issues: [] }));
    try {
      const reply = await askTry(seriesId, block.id, wish, controller.signal);
      if (controller.signal.aborted) return;
      if (reply.ok) at.current = { id: block.id, at: reply.answer.start };
      setHeld({ block, at: reply.ok ? reply.answer.start : null, answer: reply.ok ? reply.answer : null, issues: reply.ok ? [] : reply.issues });
    } catch (error) {
      if (controller.signal.aborted) return;
      setHeld({ block, at: null, answer: null, issues: [issue('no-answer', error instanceof Error ? error.message : 'There was no answer.', 'Check that Benchtake is still running, then try again.')] });
    }
  }, [seriesId]);
  const mover = useMemo((): Mover => {
    const find = (blockId: string) => blocks.find(({ id }) => id === blockId);
    const wishFor = (blockId: string, wish: Wish) => {
      const block = find(blockId);
      if (block !== undefined) void ask(block, wish);
    };
    return {
      held,
      wish: wishFor,
      take: (blockId) => wishFor(blockId, { at: find(blockId)?.start ?? 0 }),
      step: (blockId, direction) => {
        const from = at.current?.id === blockId ? at.current.at : (find(blockId)?.start ?? 0);
        wishFor(blockId, { at: stepFrom(spans, from, direction) });
      },
      drop: () => {
        asking.current?.abort();
        at.current = null;
        setHeld(null);
      },
    };
  }, [ask, blocks, held, spans]);
  useEffect(() => () => asking.current?.abort(), []);
  return (
    <MoverContext value={mover}>
      {children}
      {held === null ? null : <MovePanel held={held} mover={mover} seriesId={seriesId} sessions={sessions} />}
    </MoverContext>
  );
}
