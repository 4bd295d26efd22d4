'use client';

import { useState } from 'react';
import { BookOpenCheck } from 'lucide-react';
import { Button, FieldErrors, SelectField, TextField, UntilReady } from '@/app/_ui';
import type { SafetyRoomView } from '@/lib/views';
import { recordReadingAction } from './actions';
import { useSafetyAction } from './use-safety-action';
import styles from './safety.module.css';

type ReviewListProps = { readonly view: Pick<SafetyRoomView, 'seriesId' | 'reviews' | 'people' | 'today' | 'revision'> };

/** The sources to read again; who reads and when is said once for all of them. */
export function ReviewList({ view }: ReviewListProps) {
  const { people, reviews, revision, seriesId, today } = view;
  const [personId, setPersonId] = useState('');
  const [on, setOn] = useState(today);
  const [asked, setAsked] = useState('');
  const { errors, isPending, run } = useSafetyAction(seriesId);
  const record = (text: string) => {
    setAsked(text);
    run(() => recordReadingAction(seriesId, { text, on, personId, revision }), () => {});
  };
  return (
    <UntilReady>
      <div className={styles.reader}>
        <SelectField id="reading-person" label="Who has read" none="Nobody" value={personId} onChange={setPersonId} options={people} />
        <TextField id="reading-day" label="On" type="date" width="middle" value={on} onChange={setOn} input={{ max: today }} />
      </div>
      <ul className={`plain ${styles.reviews}`}>
        {reviews.map(({ text, when, hazards, isDue, canRead }) => (
          <li key={text}>
            <p>
              <strong>{text}</strong> <span className={isDue ? styles.warn : styles.soft}>{when}</span> <span className={styles.soft}>({hazards})</span>
            </p>
            {canRead ? (
              <Button aria-disabled={isPending} onClick={() => record(text)}>
                <BookOpenCheck size={18} aria-hidden /> Read: it still holds<span className="visually-hidden">: {text}</span>
              </Button>
            ) : null}
            <div role="alert">{asked === text ? <FieldErrors id="reading" errors={errors} /> : null}</div>
          </li>
        ))}
      </ul>
    </UntilReady>
  );
}
