'use client';

import { useState } from 'react';
import { Button, FieldErrors, SelectField, TextField, UntilReady } from '@/app/_ui';
import type { EpisodeSafetyView } from '@/lib/views';
import { overrideGateAction, setStatusAction } from './actions';
import { useSafetyAction } from './use-safety-action';
import styles from './safety.module.css';

const STATUSES = [{ value: 'cleared', label: 'cleared' }, { value: 'released', label: 'released' }] as const;

/** Calls the episode cleared or released, or overrides the gate with a name and a reason. */
export function GateDecision({ view }: { readonly view: EpisodeSafetyView }) {
  const { episode } = view;
  const { errors, isPending, run } = useSafetyAction(view.seriesId);
  const next = episode.status === 'cleared' ? 'released' : 'cleared';
  if (episode.status === 'released') return null;
  return (
    <UntilReady>
      {view.openBlocks === 0 ? (
        <>
          <Button look="main" aria-disabled={isPending} onClick={() => run(() => setStatusAction(view.seriesId, episode.id, episode.revision, next), () => {})}>
            Call it {next}
          </Button>
          <div role="alert">
            <FieldErrors id="gate" errors={errors} />
          </div>
        </>
      ) : (
        <Override view={view} />
      )}
    </UntilReady>
  );
}

function Override({ view }: { readonly view: EpisodeSafetyView }) {
  const [personId, setPersonId] = useState('');
  const [status, setStatus] = useState('cleared');
  const [reason, setReason] = useState('');
  const { errors, isPending, run } = useSafetyAction(view.seriesId);
  const override = () => run(() => overrideGateAction(view.seriesId, {
    episodeId: view.episode.id, revision: view.episode.revision, status, personId, reason, seen: view.openBlocks,
  }), () => setReason(''));
  return (
    <details className={styles.fold}>
      <summary>Override the gate</summary>
      <p className={styles.warn}>The name and the reason stay on this page for ever; nobody can take them back, and undo does not either.</p>
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          override();
        }}
      >
        <SelectField id="override-person" label="Who overrides it" none="Nobody" value={personId} onChange={setPersonId} options={view.people} />
        <SelectField id="override-status" label="The episode is then called" value={status} onChange={setStatus} options={STATUSES} />
        <TextField id="override-reason" label={`Why, in spite of ${view.openBlocks} open`} value={reason} onChange={setReason} />
        <div role="alert">
          <FieldErrors id="override" errors={errors} />
        </div>
        <Button type="submit" look="stop" aria-disabled={isPending}>
          {isPending ? 'Signing' : 'Override and sign'}
        </Button>
      </form>
    </details>
  );
}
