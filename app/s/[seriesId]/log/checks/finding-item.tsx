'use client';

import { useId, useState } from 'react';
import { Button, IssueList, SelectField, TextField, UntilReady } from '@/app/_ui';
import type { FindingView } from '@/lib/views';
import { waiveFindingAction, withdrawEntryAction } from '../actions';
import styles from '../log.module.css';
import { useLogAction } from '../use-log-action';

interface FindingItemProps {
  readonly seriesId: string;
  readonly finding: FindingView;
  readonly people: readonly string[];
}

/** One finding: what is wrong, and the way to let it pass with a reason. */
export function FindingItem({ seriesId, finding, people }: FindingItemProps) {
  const id = useId();
  const [reason, setReason] = useState('');
  const [author, setAuthor] = useState(people[0] ?? '');
  const { isPending, errors, run } = useLogAction();
  const { waived } = finding;
  return (
    <li className={waived === null ? styles.finding : `${styles.finding} ${styles.waived}`}>
      <p className={styles.by}>Check {finding.check}: {finding.title}</p>
      <IssueList issues={[finding.issue]} seriesId={seriesId} />
      {waived === null ? (
        <details className={styles.correct}>
          <summary>Let it pass</summary>
          <UntilReady className={styles.form}>
            <TextField id={`${id}-reason`} label="Why it does no harm" value={reason} onChange={setReason} errors={errors} />
            {people.length > 1 ? <SelectField id={`${id}-author`} label="Said by" value={author} onChange={setAuthor} options={people.map((name) => ({ value: name, label: name }))} /> : null}
            <div className={styles.buttons}><Button aria-disabled={isPending} onClick={() => run(() => waiveFindingAction(seriesId, finding, author, reason), () => setReason(''))}>Let it pass</Button></div>
          </UntilReady>
        </details>
      ) : (
        <UntilReady className={styles.form}>
          <p>{waived.words}</p>
          <div className={styles.buttons}><Button aria-disabled={isPending} onClick={() => run(() => withdrawEntryAction(seriesId, waived.entryId, author))}>Let it count again</Button></div>
        </UntilReady>
      )}
    </li>
  );
}
