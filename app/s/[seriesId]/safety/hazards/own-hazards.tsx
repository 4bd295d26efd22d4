'use client';

import { useState } from 'react';
import { Button, Field, FieldErrors, SelectField, UntilReady } from '@/app/_ui';
import { addHazardsAction } from '../actions';
import { useSafetyAction } from '../use-safety-action';
import styles from '../safety.module.css';

interface AddHazardsProps {
  readonly seriesId: string;
  readonly templates: readonly { readonly id: string; readonly name: string; readonly asText: string }[];
}

/** Hazards as text: what others wrote is taken in, and any hazard can be taken along. */
export function AddHazards({ seriesId, templates }: AddHazardsProps) {
  const [from, setFrom] = useState('');
  const [text, setText] = useState('');
  const { errors, isPending, run } = useSafetyAction(seriesId);
  const copy = (id: string) => {
    setFrom(id);
    const template = templates.find((one) => one.id === id);
    if (template !== undefined) setText(template.asText);
  };
  const add = () => run(() => addHazardsAction(seriesId, text), () => {
    setText('');
    setFrom('');
  });
  return (
    <details className={styles.fold}>
      <summary>Take in hazards as text, or take one along to another series</summary>
      <UntilReady>
        <form
          className={styles.form}
          onSubmit={(event) => {
            event.preventDefault();
            add();
          }}
        >
          <SelectField id="hazard-from" label="Start from" none="Nothing" value={from} onChange={copy} options={templates.map(({ id, name }) => ({ value: id, label: name }))} />
          <Field id="hazard-text" label="The hazard as text" help="One, or a list in square brackets. Every hazard names its sources. A copy stands in for the one it came from; set “replaces” to null to have both.">
            {(control) => <textarea {...control} className={styles.text} rows={14} value={text} onChange={(event) => setText(event.target.value)} spellCheck={false} />}
          </Field>
          <div role="alert">
            <FieldErrors id="hazards" errors={errors} />
          </div>
          <Button type="submit" look="main" aria-disabled={isPending}>
            {isPending ? 'Reading' : 'Take it in'}
          </Button>
        </form>
      </UntilReady>
    </details>
  );
}
