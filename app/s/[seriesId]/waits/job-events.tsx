'use client';

import { useState, useTransition } from 'react';
import { Check } from 'lucide-react';
import type { Outcome } from '@/app/_actions/outcome';
import { Button, Refused, TextField, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { AwayJob } from '@/lib/views';
import { jobEventAction, promiseAction } from './actions';
import styles from './page.module.css';

interface JobEventsProps {
  readonly seriesId: string;
  readonly job: Pick<AwayJob, 'id' | 'revision' | 'name' | 'isAway' | 'promisedFor'>;
}

/** What happened to an outside job: dropped off, promised for another day, collected. Each is a change of its own. */
export function JobEvents({ seriesId, job }: JobEventsProps) {
  const { sayChange } = useNotices();
  const [day, setDay] = useState(job.promisedFor ?? '');
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const run = (action: () => Promise<Outcome>) => {
    if (isPending) return;
    start(async () => {
      const outcome = await action();
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  const event = job.isAway ? 'collected' : 'dropped off';
  return (
    <UntilReady className={styles.events}>
      <TextField
        id={`promise-${job.id}`} label="Promised for" type="date" width="middle" value={day} onChange={setDay} isOptional
        errors={issues.filter(({ path }) => path[0] === 'for').map(({ message, fix }) => `${message} ${fix}`)}
      />
      <Button onClick={() => run(() => promiseAction(seriesId, job.id, job.revision, day))} aria-disabled={isPending}>
        Save the promise<span className="visually-hidden">: {job.name}</span>
      </Button>
      <Button look="main" onClick={() => run(() => jobEventAction(seriesId, job.id, job.revision, event))} aria-disabled={isPending}>
        <Check size={18} aria-hidden /> {job.isAway ? 'Collected now' : 'Dropped off now'}<span className="visually-hidden">: {job.name}</span>
      </Button>
      <Refused issues={issues.filter(({ path }) => path[0] !== 'for')} seriesId={seriesId} />
    </UntilReady>
  );
}
