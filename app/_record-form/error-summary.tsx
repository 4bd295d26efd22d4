'use client';

import { OctagonX } from 'lucide-react';
import type { ReactNode, RefObject } from 'react';
import { IssueList } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import styles from './record-form.module.css';

interface ErrorSummaryProps {
  readonly seriesId: string;
  /** Issues by the id of their control, '' for those of the whole record. */
  readonly sorted: ReadonlyMap<string, readonly Issue[]>;
  readonly focus: RefObject<HTMLElement | null>;
  /** A way out, where there is one. */
  readonly children?: ReactNode;
}

/** Goes to a field, unfolding what hides it. */
function goTo(id: string): void {
  const target = document.getElementById(id);
  const fold = target?.closest('details');
  if (fold) fold.open = true;
  target?.focus();
}

/** Says how much is wrong and links to every field; takes the focus when a save is refused. */
export function ErrorSummary({ seriesId, sorted, focus, children }: ErrorSummaryProps) {
  const ofRecord = sorted.get('') ?? [];
  const ofFields = [...sorted].filter(([id]) => id !== '').flatMap(([id, issues]) => issues.map((found) => ({ id, found })));
  const count = ofRecord.length + ofFields.length;
  return (
    <section ref={focus} tabIndex={-1} role="alert" className={styles.summary} aria-labelledby="summary-title">
      <h2 id="summary-title" className={styles.summaryTitle}>
        <OctagonX size={22} aria-hidden />
        Not saved: {count === 1 ? 'one thing' : `${count} things`} to put right
      </h2>
      {ofFields.length > 0 ? (
        <ul className={styles.summaryList}>
          {ofFields.map(({ id, found }) => (
            <li key={`${id}:${found.code}:${found.message}`}>
              <a
                href={`#${id}`}
                onClick={(event) => {
                  event.preventDefault();
                  goTo(id);
                }}
              >
                {found.message}
              </a>{' '}
              {found.fix}
            </li>
          ))}
        </ul>
      ) : null}
      {ofRecord.length > 0 ? <IssueList issues={ofRecord} {...(seriesId === '' ? {} : { seriesId })} /> : null}
      {children ? <div>{children}</div> : null}
    </section>
  );
}
