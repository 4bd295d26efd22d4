'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { ArrowLeftRight, ChevronLeft, ChevronRight, CircleCheck, OctagonX, Pin, Route, X } from 'lucide-react';
import { Button, IssueList, Refused, plansPath, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { TrialView } from '@/lib/views';
import { runSearch } from '../plans/run-search';
import { pinTaskAction } from './actions';
import { HAND_STEP } from './strip-time';
import type { Held, Mover } from './held';
import styles from './move-panel.module.css';

/** Seconds of the search after a move: the plan is held where it can be, so that a short one does. */
const SECONDS = 5;

interface MovePanelProps {
  readonly held: Held;
  readonly mover: Mover;
  readonly seriesId: string;
  readonly sessions: readonly { readonly id: string; readonly label: string }[];
}

/** The block in the hand: where to, what that breaks, and the buttons that save it. Lies over the foot of the page; Escape puts it back. */
export function MovePanel({ held, mover, seriesId, sessions }: MovePanelProps) {
  const { block } = held;
  useEffect(() => {
    const close = (event: KeyboardEvent) => {
      if (event.key === 'Escape') mover.drop();
    };
    document.addEventListener('keydown', close);
    return () => document.removeEventListener('keydown', close);
  }, [mover]);
  return (
    <section className={styles.panel} aria-labelledby="move-title" data-move-panel>
      <header className={styles.head}>
        <h2 id="move-title">Move “{block.title}”</h2>
        <Button look="quiet" onClick={mover.drop} aria-label="Put it back">
          <X size={20} aria-hidden />
        </Button>
      </header>
      <div className={styles.where}>
        <Button onClick={() => mover.step(block.id, -1)}>
          <ChevronLeft size={18} aria-hidden /> {HAND_STEP} min earlier
        </Button>
        <Button onClick={() => mover.step(block.id, 1)}>
          {HAND_STEP} min later <ChevronRight size={18} aria-hidden />
        </Button>
        <label className={styles.session}>
          To the first place in{' '}
          <select value="" onChange={(event) => mover.wish(block.id, { session: event.target.value })}>
            <option value="">a session…</option>
            {sessions.map((session) => (
              <option key={session.id} value={session.id}>
                {session.label}
              </option>
            ))}
          </select>
        </label>
      </div>
      <output className={styles.answer}>
        {held.answer === null ? (held.issues.length > 0 ? '' : 'Asking…') : <Answer answer={held.answer} isMoved={held.answer.start !== block.start} />}
      </output>
      {held.issues.length > 0 ? <IssueList issues={held.issues} seriesId={seriesId} /> : null}
      {held.answer === null || held.answer.verdict === 'impossible' ? null : <Decide key={held.answer.start} held={held} answer={held.answer} seriesId={seriesId} onDone={mover.drop} />}
    </section>
  );
}

const VERDICTS = {
  fits: { icon: CircleCheck, word: 'Fits: nothing else has to move' },
  displaces: { icon: ArrowLeftRight, word: 'Possible, if other work gives way' },
  impossible: { icon: OctagonX, word: 'Not possible there' },
} as const;

function Answer({ answer, isMoved }: { readonly answer: TrialView; readonly isMoved: boolean }) {
  const { icon: Icon, word } = VERDICTS[answer.verdict];
  return (
    <>
      <p className={`${styles.verdict} ${styles[answer.verdict]}`}>
        <Icon size={20} aria-hidden /> <strong>{answer.when}</strong> <span>{isMoved ? word : 'Where the plan has it'}.</span>
      </p>
      {answer.breaks.length > 0 ? (
        <ul className={styles.breaks}>
          {answer.breaks.map((one) => (
            <li key={one.text}>
              {one.text} {one.change && answer.verdict === 'impossible' ? <span className={styles.soft}>{one.change}</span> : null}
            </li>
          ))}
        </ul>
      ) : null}
      {answer.givesWay.length > 0 ? <p>Gives way: {answer.givesWay.join(', ')}.</p> : null}
    </>
  );
}

interface DecideProps {
  readonly held: Held;
  readonly answer: TrialView;
  readonly seriesId: string;
  readonly onDone: () => void;
}

/** Saves the pin, alone or with a new plan around it. */
function Decide({ answer, held, onDone, seriesId }: DecideProps) {
  const router = useRouter();
  const { say, sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [running, setRunning] = useState<AbortController | null>(null);
  const { block } = held;
  const pin = async () => {
    const outcome = await pinTaskAction(seriesId, block.taskId, block.revision, answer.start);
    if (!outcome.ok) setIssues(outcome.issues);
    return outcome;
  };
  const pinOnly = async () => {
    const outcome = await pin();
    if (!outcome.ok) return;
    sayChange(seriesId, outcome.saved);
    onDone();
  };
  const planAround = async () => {
    const controller = new AbortController();
    setRunning(controller);
    const outcome = await pin();
    if (!outcome.ok) {
      setRunning(null);
      return;
    }
    try {
      let refused: readonly Issue[] = [];
      await runSearch(seriesId, SECONDS, controller.signal, (line) => {
        if (line.kind === 'issues') refused = line.issues;
        if (line.kind === 'plan') say(`Pinned. Plan ${line.planNumber} is ready as a draft around it.`);
      });
      if (refused.length > 0) setIssues(refused);
      else router.push(plansPath(seriesId));
    } catch {
      say('The search was stopped. The pin is saved; plan again when you like.');
      onDone();
    }
    setRunning(null);
  };
  return (
    <div className={styles.decide}>
      {/* One button for both, so that the keyboard does not lose its place. */}
      <Button look="main" onClick={() => (running === null ? void planAround() : running.abort())}>
        <Route size={18} aria-hidden /> {running === null ? 'Pin it there and re-plan' : 'Planning around it… stop'}
      </Button>
      {running === null ? (
        <Button onClick={() => void pinOnly()}>
          <Pin size={18} aria-hidden /> Only pin it
        </Button>
      ) : null}
      <Refused issues={issues} seriesId={seriesId} className={styles.issues} />
    </div>
  );
}
