'use client';

import { TriangleAlert } from 'lucide-react';
import type { RefObject } from 'react';
import { Button } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { DraftObject, NewestRecord } from '@/lib/views';
import { findChanges } from './merge-drafts';
import styles from './record-form.module.css';

interface StalePanelProps {
  readonly issues: readonly Issue[];
  readonly base: DraftObject;
  readonly typed: DraftObject;
  readonly newest: NewestRecord;
  readonly focus: RefObject<HTMLElement | null>;
  readonly onTake: () => void;
}

/** Somebody else has saved the record since it was opened: says what is there now and offers to go on from it. */
export function StalePanel({ issues, base, typed, newest, focus, onTake }: StalePanelProps) {
  const labels = new Map(newest.view.sections.flatMap((section) => section.fields.map((field) => [field.name, field.label])));
  const changes = findChanges(base, typed, newest.view.draft);
  return (
    <section ref={focus} tabIndex={-1} role="alert" className={styles.stale} aria-labelledby="stale-title">
      <h2 id="stale-title" className={styles.summaryTitle}>
        <TriangleAlert size={22} aria-hidden />
        Not saved: changed elsewhere since you opened it
      </h2>
      {issues.map(({ message }) => (
        <p key={message}>{message}</p>
      ))}
      {changes.length === 0 ? <p>It was saved again with the same values.</p> : null}
      <dl className={styles.staleList}>
        {changes.map(({ name, isTyped }) => (
          <div key={name}>
            <dt>{labels.get(name) ?? name}</dt>
            <dd>
              is now: {newest.words[name] ?? ''}
              <br />
              <span className={styles.staleChoice}>{isTyped ? 'You typed here too; what you typed will be kept.' : 'This will be taken over.'}</span>
            </dd>
          </div>
        ))}
      </dl>
      <div>
        <Button look="main" onClick={onTake}>
          Load the newest and keep what I typed
        </Button>
      </div>
    </section>
  );
}
