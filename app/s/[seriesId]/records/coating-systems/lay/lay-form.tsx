'use client';

import { useState, useTransition, type FormEvent } from 'react';
import { useRouter } from 'next/navigation';
import { Button, Refused, kindPath, SelectField, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { LayingView } from '@/lib/views';
import { laySystemAction } from './actions';
import styles from './lay.module.css';

/** Chooses system, part and place; what was chosen stays after a refusal. */
export function LayForm({ seriesId, view }: { readonly seriesId: string; readonly view: LayingView }) {
  const router = useRouter();
  const { sayChange } = useNotices();
  const [values, setValues] = useState({
    systemId: view.systems[0]?.value ?? '', on: view.states[0]?.value ?? '', placeId: view.places[0]?.value ?? '', episodeId: '', skill: '',
  });
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const set = (name: keyof typeof values) => (value: string) => setValues((before) => ({ ...before, [name]: value }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isPending) return;
    start(async () => {
      const outcome = await laySystemAction(seriesId, values);
      setIssues(outcome.ok ? [] : outcome.issues);
      if (!outcome.ok) return;
      sayChange(seriesId, outcome.saved);
      router.push(kindPath(seriesId, 'task'));
    });
  };
  return (
    <form onSubmit={submit} noValidate>
      <UntilReady className={styles.form}>
        <Refused issues={issues} seriesId={seriesId} />
        <SelectField id="lay-system" label="Coating system" value={values.systemId} onChange={set('systemId')} options={view.systems} />
        <SelectField id="lay-on" label="On the part, in the state" value={values.on} onChange={set('on')} options={view.states} help="The new states come after this one." />
        <SelectField id="lay-place" label="Place" value={values.placeId} onChange={set('placeId')} options={view.places} />
        <SelectField id="lay-episode" label="Episode" value={values.episodeId} onChange={set('episodeId')} options={view.episodes} none="No episode" isOptional />
        <SelectField id="lay-skill" label="Skill" value={values.skill} onChange={set('skill')} options={view.skills} none="Anybody" isOptional />
        <div><Button type="submit" look="main" aria-disabled={isPending}>{isPending ? 'Laying' : 'Make the tasks'}</Button></div>
      </UntilReady>
    </form>
  );
}
