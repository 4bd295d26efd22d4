'use client';

import { useState, useTransition } from 'react';
import { Undo2 } from 'lucide-react';
import { Button, FieldErrors, UntilReady, useNotices } from '@/app/_ui';
import { undoAction } from '@/app/_actions/undo';
import styles from './history.module.css';

interface UndoButtonProps {
  readonly seriesId: string;
  readonly number: number;
  readonly label: string;
}

/** Takes back one change of the history. */
export function UndoButton({ seriesId, number, label }: UndoButtonProps) {
  const notices = useNotices();
  const [errors, setErrors] = useState<readonly string[]>([]);
  const [isPending, startUndo] = useTransition();
  const undo = () => {
    if (isPending) return;
    startUndo(async () => {
      const outcome = await undoAction(seriesId, number);
      if (outcome.ok) notices.sayChange(seriesId, outcome.saved);
      else setErrors(outcome.issues.map(({ message, fix }) => `${message} ${fix}`));
    });
  };
  return (
    <UntilReady className={styles.undo}>
      <Button onClick={undo} aria-disabled={isPending} aria-label={`Undo change ${number}: ${label}`}>
        <Undo2 size={18} aria-hidden />
        {isPending ? 'Undoing' : 'Undo'}
      </Button>
      <div role="alert">
        <FieldErrors id={`undo-${number}`} errors={errors} />
      </div>
    </UntilReady>
  );
}
