'use client';

import { useId, useState } from 'react';
import { Button, FieldErrors, IssueList, SelectField, TextField, UntilReady } from '@/app/_ui';
import type { FindingView } from '@/lib/views';
import { markFlashbackAction, waiveFindingAction, withdrawEntryAction } from '../actions';
import styles from '../log.module.css';
import { useLogAction } from '../use-log-action';

type Flashback = NonNullable<FindingView['flashback']>;

/** Says that a segment goes back in the story on purpose. */
function MarkFlashback({ seriesId, segment }: { readonly seriesId: string; readonly segment: Flashback }) {
  const { isPending, errors, run } = useLogAction(seriesId);
  const id = useId();
  return (
    <UntilReady className={styles.buttons}>
      <Button aria-disabled={isPending} onClick={() => run(() => markFlashbackAction(seriesId, segment.id, segment.revision))}>Mark “{segment.name}” as a flashback</Button>
      <div role="alert"><FieldErrors id={id} errors={errors} /></div>
    </UntilReady>
  );
}

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
  const { isPending, errors, run } = useLogAction(seriesId);
  const { waived, flashback } = finding;
  return (
    <li className={waived === null ? styles.finding : `${styles.finding} ${styles.waived}`}>
      <p className={styles.by}>Check {finding.check}: {finding.title}</p>
      <IssueList issues={[finding.issue]} seriesId={seriesId} />
      {flashback === null ? null : <MarkFlashback seriesId={seriesId} segment={flashback} />}
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
