'use client';

import { useState } from 'react';
import { Button, FieldErrors, SelectField, TextField } from '@/app/_ui';
import type { EpisodeSafetyView, ItemView } from '@/lib/views';
import { signItemAction } from './actions';
import { useSafetyAction } from './use-safety-action';
import styles from './safety.module.css';

interface SignFormProps {
  readonly view: EpisodeSafetyView;
  readonly item: ItemView;
  readonly personId: string;
  readonly done: () => void;
}

const KINDS = [{ value: 'take', label: 'A take and timecode' }, { value: 'exception', label: 'A reviewed exception' }] as const;

/** Signs one line, or takes its signature back. */
export function SignForm({ view, item, personId, done }: SignFormProps) {
  const [kind, setKind] = useState<string>('take');
  const [take, setTake] = useState('');
  const [timecode, setTimecode] = useState('');
  const [reason, setReason] = useState('');
  const { errors, isPending, run } = useSafetyAction(view.seriesId);
  const kinds = item.canWithdraw ? [...KINDS, { value: 'withdrawn', label: 'Take the signature back' }] : KINDS;
  const sign = () => run(() => signItemAction(view.seriesId, {
    episodeId: view.episode.id, itemId: item.id, fingerprint: item.fingerprint, personId, reason, evidence: kind === 'take' ? { kind, take, timecode } : { kind },
  }), done);
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        sign();
      }}
    >
      <SelectField id="evidence-kind" label="What you sign with" help={item.asksFor} value={kind} onChange={setKind} options={kinds} />
      {kind === 'take' ? (
        <>
          <TextField id="evidence-take" label="Take" width="middle" value={take} onChange={setTake} input={{ autoComplete: 'off' }} />
          <TextField id="evidence-timecode" label="Timecode" width="middle" value={timecode} onChange={setTimecode} input={{ placeholder: view.timecodeExample, autoComplete: 'off' }} />
        </>
      ) : null}
      <TextField id="evidence-reason" label={kind === 'take' ? 'Remark' : 'Why'} isOptional={kind === 'take'} value={reason} onChange={setReason} />
      <div role="alert">
        <FieldErrors id="evidence" errors={errors} />
      </div>
      <Button type="submit" look="main" aria-disabled={isPending}>
        {isPending ? 'Signing' : personId === '' ? 'Sign' : `Sign as ${view.people.find(({ value }) => value === personId)?.label ?? ''}`}
      </Button>
    </form>
  );
}
