'use client';

import { useEffect, useRef, useState, useTransition, type FormEvent } from 'react';
import { Trash2 } from 'lucide-react';
import { Button, TextField, UntilReady, useNotices } from '@/app/_ui';
import { removeSeriesAction } from '@/app/_actions/series';
import styles from './home.module.css';

interface RemoveSeriesProps {
  readonly seriesId: string;
  readonly name: string;
}

/** Removes a series for good, once its name has been typed. */
export function RemoveSeries({ seriesId, name }: RemoveSeriesProps) {
  const notices = useNotices();
  const [isAsking, setAsking] = useState(false);
  const [typed, setTyped] = useState('');
  const [errors, setErrors] = useState<readonly string[]>([]);
  const [isPending, startRemoving] = useTransition();
  const opener = useRef<HTMLSpanElement>(null);
  const inputId = `remove-${seriesId}`;

  useEffect(() => {
    if (isAsking) document.getElementById(inputId)?.focus();
  }, [isAsking, inputId]);

  const cancel = () => {
    setAsking(false);
    setErrors([]);
    setTyped('');
    requestAnimationFrame(() => opener.current?.querySelector('button')?.focus());
  };

  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isPending) return;
    startRemoving(async () => {
      const outcome = await removeSeriesAction(seriesId, typed);
      if (!outcome.ok) return setErrors(outcome.issues.map(({ message, fix }) => `${message} ${fix}`));
      notices.say(`Removed the series ${name}.`);
    });
  };

  if (!isAsking) {
    return (
      <span ref={opener}>
        <UntilReady>
          <Button look="quiet" onClick={() => setAsking(true)} aria-label={`Remove the series ${name}`}>
            <Trash2 size={18} aria-hidden />
            Remove
          </Button>
        </UntilReady>
      </span>
    );
  }
  return (
    <form onSubmit={submit} noValidate className={styles.remove}>
      <TextField
        id={inputId}
        label="Type the name of the series to remove it"
        help="Its records, history and plans go too. This cannot be undone."
        value={typed}
        onChange={setTyped}
        errors={errors}
        input={{ autoComplete: 'off' }}
      />
      <div className={styles.removeButtons}>
        <Button type="submit" look="stop" aria-disabled={isPending}>
          Remove it for good
        </Button>
        <Button onClick={cancel}>Keep it</Button>
      </div>
    </form>
  );
}
