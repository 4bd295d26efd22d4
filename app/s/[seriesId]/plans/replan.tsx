'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Route, Square } from 'lucide-react';
import { Button, IssueList, UntilReady, useNotices } from '@/app/_ui';
import { issue, type Issue } from '@/lib/result';
import { SEARCH_SECONDS, type RunLine } from './progress';
import { runSearch } from './run-search';
import styles from './replan.module.css';

type Progress = Extract<RunLine, { kind: 'progress' }>;

const SECONDS_WORDS: Record<(typeof SEARCH_SECONDS)[number], string> = { 5: 'quick, 5 s', 20: 'thorough, 20 s', 60: 'patient, 60 s' };

const DAY_MS = 86_400_000;

/** How far the best end so far is from the best end possible. */
function describeBound({ earliestFinish, finish, unplaced }: Progress): string {
  if (finish === null || unplaced !== 0) return '';
  const days = Math.ceil((finish - earliestFinish) / DAY_MS);
  return days <= 0 ? '; it ends as early as any plan can' : `; it ends at most ${days} ${days === 1 ? 'day' : 'days'} later than the best possible`;
}

function describeProgress(progress: Progress): string {
  const { schedulesTried, lateMinutes, unplaced } = progress;
  const tried = `${schedulesTried} ${schedulesTried === 1 ? 'schedule' : 'schedules'} tried`;
  if (unplaced === null) return `${tried}, none fits yet`;
  const late = lateMinutes ? 'some episodes late' : 'no episode late';
  return `${tried}; the best so far has ${late}, ${unplaced === 0 ? 'everything placed' : `${unplaced} without a place`}${describeBound(progress)}`;
}

interface ReplanProps {
  readonly seriesId: string;
  readonly hasPlan: boolean;
}

/** Starts a search, tells how far it is, and can stop it. The accepted plan stays as it is until a draft is accepted. */
export function Replan({ seriesId, hasPlan }: ReplanProps) {
  const router = useRouter();
  const { say } = useNotices();
  const [seconds, setSeconds] = useState<number>(SEARCH_SECONDS[0]);
  const [progress, setProgress] = useState<Progress | null>(null);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [running, setRunning] = useState<AbortController | null>(null);

  const hear = (line: RunLine) => {
    if (line.kind === 'progress') setProgress(line);
    if (line.kind === 'issues') setIssues(line.issues);
    if (line.kind === 'plan') say(`Plan ${line.planNumber} is ready as a draft.`);
  };
  const run = async () => {
    const controller = new AbortController();
    setIssues([]);
    setProgress(null);
    setRunning(controller);
    try {
      await runSearch(seriesId, seconds, controller.signal, hear);
      router.refresh();
    } catch (error) {
      if (controller.signal.aborted) say('The search was stopped. Nothing was saved.');
      else setIssues([issue('search-broke-off', error instanceof Error ? error.message : 'The search failed.', 'Check that Benchtake is still running, then try again.')]);
    }
    setRunning(null);
  };
  const isRunning = running !== null;
  return (
    <div className={styles.replan}>
      <UntilReady className={styles.row}>
        {/* One button for both, so that the keyboard does not lose its place. */}
        <Button look={isRunning ? 'plain' : 'main'} onClick={() => (running === null ? void run() : running.abort())}>
          {isRunning ? <Square size={16} aria-hidden /> : <Route size={18} aria-hidden />}
          {isRunning ? 'Stop' : hasPlan ? 'Re-plan' : 'Make the first plan'}
        </Button>
        {isRunning ? null : (
          <label className={styles.seconds}>
            Search{' '}
            <select value={seconds} onChange={(event) => setSeconds(Number(event.target.value))}>
              {SEARCH_SECONDS.map((choice) => (
                <option key={choice} value={choice}>
                  {SECONDS_WORDS[choice]}
                </option>
              ))}
            </select>
          </label>
        )}
      </UntilReady>
      {isRunning ? (
        <div className={styles.progress}>
          <progress value={progress?.share ?? 0} max={1} aria-label="Share of the search time used" />
          <p>{progress ? describeProgress(progress) : 'Reading the build and laying out the work'}</p>
        </div>
      ) : null}
      {/* Read out at each quarter only: ten times a second would be noise. */}
      <output className="visually-hidden">{isRunning ? `Planning, ${25 * Math.floor(4 * (progress?.share ?? 0))} %` : ''}</output>
      {issues.length > 0 ? (
        <div role="alert" className={styles.issues}>
          <h2>No plan was made</h2>
          <IssueList issues={issues} seriesId={seriesId} />
        </div>
      ) : null}
    </div>
  );
}
