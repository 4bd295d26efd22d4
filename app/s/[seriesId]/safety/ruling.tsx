'use client';

import { useState } from 'react';
import { Button, FieldErrors, SelectField, TextField, UntilReady } from '@/app/_ui';
import type { TaskHazardsView } from '@/lib/views';
import { ruleHazardAction } from './actions';
import { useSafetyAction } from './use-safety-action';
import styles from './safety.module.css';

const RULINGS = [{ value: 'hazard-added', label: 'Add a hazard' }, { value: 'hazard-removed', label: 'Take one out' }] as const;

/** A person adds a hazard to a task or takes one out; the reason stays on record. */
export function Ruling({ view }: { readonly view: TaskHazardsView }) {
  const [ruling, setRuling] = useState<string>('hazard-added');
  const [hazardId, setHazardId] = useState('');
  const [personId, setPersonId] = useState('');
  const [reason, setReason] = useState('');
  const { errors, isPending, run } = useSafetyAction(view.seriesId);
  const options = ruling === 'hazard-added' ? view.others : view.found.map(({ id, name }) => ({ value: id, label: name }));
  const rule = () => run(() => ruleHazardAction(view.seriesId, { taskId: view.task.value, hazardId, ruling, personId, reason }), () => {
    setHazardId('');
    setReason('');
  });
  return (
    <section className={styles.section} aria-labelledby="ruling-head">
      <h2 id="ruling-head">Add one, or take one out</h2>
      <UntilReady>
        <form
          className={styles.form}
          onSubmit={(event) => {
            event.preventDefault();
            rule();
          }}
        >
          <SelectField
            id="ruling"
            label="What to do"
            value={ruling}
            options={RULINGS}
            onChange={(next) => {
              setRuling(next);
              setHazardId('');
            }}
          />
          <SelectField id="ruling-hazard" label="Hazard" none="Choose one" value={hazardId} onChange={setHazardId} options={options} />
          <SelectField id="ruling-person" label="Who says so" none="Nobody" value={personId} onChange={setPersonId} options={view.people} />
          <TextField id="ruling-reason" label="Why" isOptional={ruling === 'hazard-added'} value={reason} onChange={setReason} help="It stays on record." />
          <div role="alert">
            <FieldErrors id="ruling" errors={errors} />
          </div>
          <Button type="submit" look="main" aria-disabled={isPending}>
            {isPending ? 'Signing' : 'Sign'}
          </Button>
        </form>
      </UntilReady>
    </section>
  );
}
