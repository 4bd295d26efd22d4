'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { Bookmark, Check, Trash2 } from 'lucide-react';
import { Button, IssueList, plansPath, TextField, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import { acceptWhatIfAction, keepVariantAction, removeVariantAction } from './actions';
import styles from '../progress.module.css';

interface DecideProps {
  readonly seriesId: string;
  readonly whatIfs: readonly { readonly kind: string; readonly target: string }[];
  readonly remedy: string | null;
}

/** Make it so, or keep it under a name. A refusal stays in view with its fix. */
export function Decide({ remedy, seriesId, whatIfs }: DecideProps) {
  const router = useRouter();
  const { say, sayChange } = useNotices();
  const [name, setName] = useState('');
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const accept = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await acceptWhatIfAction(seriesId, { whatIfs, remedy });
      if (!outcome.ok) {
        setIssues(outcome.issues);
        return;
      }
      sayChange(seriesId, outcome.saved);
      router.push(plansPath(seriesId));
    });
  };
  const keep = () => {
    if (isPending) return;
    start(async () => {
      const refused = await keepVariantAction(seriesId, name, { whatIfs, remedy });
      setIssues(refused);
      if (refused.length > 0) return;
      say(`Kept as ${name.trim()}.`);
      setName('');
    });
  };
  const nameErrors = issues.filter((one) => one.code === 'variant-name').map((one) => `${one.message} ${one.fix}`);
  return (
    <UntilReady className={styles.decide}>
      <Button look="main" aria-disabled={isPending} onClick={accept}>
        <Check size={18} aria-hidden /> {isPending ? 'Working…' : 'Make it so and draft a plan'}
      </Button>
      <form className={styles.keep} action={keep}>
        <TextField id="variant-name" label="Keep under a name" value={name} onChange={setName} errors={nameErrors} />
        <Button type="submit" aria-disabled={isPending}><Bookmark size={18} aria-hidden /> Keep</Button>
      </form>
      {issues.length > nameErrors.length ? <div role="alert"><IssueList issues={issues} seriesId={seriesId} /></div> : null}
    </UntilReady>
  );
}

/** Takes a kept variant out. */
export function DropVariant({ name, number, seriesId }: { readonly name: string; readonly number: number; readonly seriesId: string }) {
  const { say } = useNotices();
  const [isPending, start] = useTransition();
  const drop = () => {
    if (isPending) return;
    start(async () => {
      const refused = await removeVariantAction(seriesId, number);
      say(refused[0]?.message ?? `${name} is gone.`);
    });
  };
  return <Button look="quiet" aria-disabled={isPending} onClick={drop}><Trash2 size={16} aria-hidden /> Drop {name}</Button>;
}
