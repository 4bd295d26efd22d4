'use client';

import { useState, useTransition } from 'react';
import { Check, Trash2 } from 'lucide-react';
import { Button, Refused, SelectField, TextField, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import { acceptPlanAction, discardPlanAction, type PlanOutcome } from './actions';
import styles from './page.module.css';

interface DecisionProps {
  readonly seriesId: string;
  readonly number: number;
  /** The build has changed since: it can only be put aside. */
  readonly isStale: boolean;
  /** Names of the crew. */
  readonly people: readonly string[];
  /** Starts fixed by hand that only the draft has: they outlive it. */
  readonly pinCount: number;
}

function tellDiscarded(number: number, pinCount: number): string {
  const kept = pinCount === 0 ? '' : ` ${pinCount === 1 ? 'One start stays' : `${pinCount} starts stay`} fixed by hand: take the pin off below if that was for this draft.`;
  return `Plan ${number} is discarded. It stays in the list.${kept}`;
}

/** Accept or discard a draft. A refusal stays in view with its fix. */
export function Decision({ seriesId, number, isStale, people, pinCount }: DecisionProps) {
  const { say } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [by, setBy] = useState('');
  const [why, setWhy] = useState('');
  const [isPending, start] = useTransition();
  const decide = (run: () => Promise<PlanOutcome>, done: string) => {
    if (isPending) return;
    start(async () => {
      const outcome = await run();
      setIssues(outcome.issues);
      if (outcome.issues.length === 0) say(done);
    });
  };
  return (
    <UntilReady className={styles.decision}>
      {isStale ? null : (
        <div className={styles.said}>
          {people.length === 0 ? null : <SelectField id="accepted-by" label="Who accepts it" value={by} onChange={setBy} options={people.map((name) => ({ value: name, label: name }))} none="not said" />}
          <TextField id="accepted-why" label="Why, for the list of plans" value={why} onChange={setWhy} input={{ maxLength: 300 }} />
        </div>
      )}
      {isStale ? null : (
        <Button look="main" aria-disabled={isPending} onClick={() => decide(() => acceptPlanAction(seriesId, number, { by, why }), `Plan ${number} is accepted.`)}>
          <Check size={18} aria-hidden /> Accept plan {number}
        </Button>
      )}
      <Button look="stop" aria-disabled={isPending} onClick={() => decide(() => discardPlanAction(seriesId, number), tellDiscarded(number, pinCount))}>
        <Trash2 size={18} aria-hidden /> Discard plan {number}
      </Button>
      <Refused issues={issues} seriesId={seriesId} className={styles.refusal} />
    </UntilReady>
  );
}
