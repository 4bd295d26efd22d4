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

const LOGGED = { value: 'logged', label: 'A take of the log' } as const;
const KINDS = [{ value: 'take', label: 'A take and timecode, typed' }, { value: 'exception', label: 'A reviewed exception' }] as const;

/** What is signed with: a take of the log, what was typed, or nothing but the reason. */
function evidenceOf(kind: string, { entryId, take, timecode }: { readonly entryId: string; readonly take: string; readonly timecode: string }): Readonly<Record<string, string>> {
  if (kind === 'logged') return { kind: 'take', take: '', timecode, entryId };
  return kind === 'take' ? { kind, take, timecode } : { kind };
}

/** Signs one line, or takes its signature back. */
export function SignForm({ view, item, personId, done }: SignFormProps) {
  const takes = item.takeTaskIds.flatMap((id) => view.takes[id] ?? []);
  const [kind, setKind] = useState<string>(takes.length > 0 ? 'logged' : 'take');
  const [entryId, setEntryId] = useState('');
  const [take, setTake] = useState('');
  const [timecode, setTimecode] = useState('');
  const [reason, setReason] = useState('');
  const { errors, isPending, run } = useSafetyAction(view.seriesId);
  const kinds = [...(takes.length > 0 ? [LOGGED] : []), ...KINDS, ...(item.canWithdraw ? [{ value: 'withdrawn', label: 'Take the signature back' }] : [])];
  const isTake = kind === 'take' || kind === 'logged';
  const start = takes.find(({ value }) => value === entryId)?.timecode ?? '';
  const sign = () => run(() => signItemAction(view.seriesId, {
    episodeId: view.episode.id, itemId: item.id, fingerprint: item.fingerprint, personId, reason, evidence: evidenceOf(kind, { entryId, take, timecode }),
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
      {kind === 'logged' ? <SelectField id="evidence-entry" label="Take of the log" none="Choose one" value={entryId} onChange={setEntryId} options={takes} /> : null}
      {kind === 'take' ? <TextField id="evidence-take" label="Take" width="middle" value={take} onChange={setTake} input={{ autoComplete: 'off' }} /> : null}
      {isTake ? (
        <TextField
          id="evidence-timecode"
          label="Timecode"
          width="middle"
          value={timecode}
          onChange={setTimecode}
          isOptional={kind === 'logged' && start !== ''}
          {...(kind === 'logged' && start !== '' ? { help: `Empty: where the take starts, ${start}.` } : {})}
          input={{ placeholder: start === '' ? view.timecodeExample : start, autoComplete: 'off' }}
        />
      ) : null}
      <TextField id="evidence-reason" label={isTake ? 'Remark' : 'Why'} isOptional={isTake} value={reason} onChange={setReason} />
      <div role="alert">
        <FieldErrors id="evidence" errors={errors} />
      </div>
      <Button type="submit" look="main" aria-disabled={isPending}>
        {isPending ? 'Signing' : personId === '' ? 'Sign' : `Sign as ${view.people.find(({ value }) => value === personId)?.label ?? ''}`}
      </Button>
    </form>
  );
}
