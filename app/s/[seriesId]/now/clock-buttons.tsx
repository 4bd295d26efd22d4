'use client';

import { useState, useTransition } from 'react';
import { CameraIcon, Timer, TimerOff } from 'lucide-react';
import type { Outcome } from '@/app/_actions/outcome';
import { Button, Refused, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { RunningClock } from '@/lib/views';
import { startClockAction, stopClockAction } from '../episodes/actions';
import styles from './clock-buttons.module.css';

interface ClockButtonsProps {
  readonly seriesId: string;
  /** null: only stops what runs. */
  readonly taskId: string | null;
  readonly title: string;
  readonly clocks: readonly RunningClock[];
}

const ACTIVITIES = [
  { activity: 'hands-on', start: 'Start work clock', noun: 'work', icon: Timer },
  { activity: 'filming', start: 'Start camera clock', noun: 'filming', icon: CameraIcon },
] as const;

/** Clocks of a task, work and filming apart: one tap starts one, one stops it. */
export function ClockButtons({ seriesId, taskId, title, clocks }: ClockButtonsProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, begin] = useTransition();
  const run = (action: () => Promise<Outcome>) => {
    if (isPending) return;
    begin(async () => {
      const outcome = await action();
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  return (
    <UntilReady className={styles.clocks}>
      {ACTIVITIES.map(({ activity, start, noun, icon: Icon }) => {
        const clock = clocks.find((each) => each.activity === activity);
        if (clock === undefined) {
          return taskId === null ? null : (
            <Button key={activity} aria-disabled={isPending} onClick={() => run(() => startClockAction(seriesId, taskId, activity))}>
              <Icon size={18} aria-hidden /> {start}<span className="visually-hidden">: {title}</span>
            </Button>
          );
        }
        return (
          <span key={activity} className={styles.running}>
            <span>{noun} clock runs {clock.since}</span>
            <Button look="main" aria-disabled={isPending} onClick={() => run(() => stopClockAction(seriesId, clock.id, clock.revision, false))}>
              <TimerOff size={18} aria-hidden /> Stop<span className="visually-hidden"> the {noun} clock: {title}</span>
            </Button>
            <Button aria-disabled={isPending} onClick={() => run(() => stopClockAction(seriesId, clock.id, clock.revision, true))}>
              Stop, was interrupted<span className="visually-hidden">: {noun}, {title}</span>
            </Button>
          </span>
        );
      })}
      <Refused issues={issues} seriesId={seriesId} />
    </UntilReady>
  );
}
