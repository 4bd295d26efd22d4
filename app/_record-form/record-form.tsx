'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition, type FormEvent } from 'react';
import { Button, hasForm, hazardsPath, kindPath, LinkButton, newRecordPath, recordsPath, UntilReady, useNotices } from '@/app/_ui';
import { loadNewestAction, removeRecordAction, saveRecordAction } from '@/app/_actions/records';
import type { Outcome } from '@/app/_actions/outcome';
import type { Issue } from '@/lib/result';
import type { DraftObject, NewestRecord, RecordFormView } from '@/lib/views';
import { ErrorSummary } from './error-summary';
import { FormProvider } from './form-context';
import { isSameDraft, mergeDrafts } from './merge-drafts';
import { Sections } from './sections';
import { StalePanel } from './stale-panel';
import { useDraftForm, useLeaveGuard } from './use-draft-form';
import styles from './record-form.module.css';

/** Refusals that a removal with everything that needs the record gets over. */
const isOrphaning = (issues: readonly Issue[]): boolean => issues.length > 0 && issues.every(({ code }) => code.startsWith('removal-orphans'));

interface RecordFormProps {
  readonly view: RecordFormView;
  /** `place`, as in “Add place”. */
  readonly one: string;
}

/** The form of any record. What is typed lives here until it is saved; a refusal changes nothing of it. */
export function RecordForm({ view, one }: RecordFormProps) {
  const { seriesId, kind, id } = view;
  const router = useRouter();
  const notices = useNotices();
  const form = useDraftForm(view);
  const [base, setBase] = useState(view);
  const [newest, setNewest] = useState<NewestRecord | null>(null);
  const [isPending, startSaving] = useTransition();
  useLeaveGuard(!isPending && !isSameDraft(form.draft, base.draft));
  const back = kind === 'hazard' ? hazardsPath(seriesId) : hasForm(kind) ? kindPath(seriesId, kind) : recordsPath(seriesId);

  const run = (action: () => Promise<Outcome>, done: () => void) => {
    if (isPending) return;
    startSaving(async () => {
      const outcome = await action();
      if (outcome.ok) {
        notices.sayChange(seriesId, outcome.saved);
        return done();
      }
      const isStale = id !== null && outcome.issues.some(({ code }) => code === 'stale-record');
      setNewest(isStale ? await loadNewestAction(seriesId, kind, id) : null);
      form.showIssues(outcome.issues);
    });
  };

  const leave = () => router.push(back);
  const startAnother = (sent: DraftObject) => {
    form.showIssues([]);
    // What was typed while it was being saved belongs to the next one.
    form.replaceDraft((typed) => mergeDrafts(sent, typed, base.draft));
    document.querySelector<HTMLElement>('form input')?.focus();
  };
  const save = (done: (sent: DraftObject) => void) => {
    const { draft } = form;
    run(() => saveRecordAction({ seriesId, kind, id, revision: base.revision, draft }), () => done(draft));
  };
  const remove = (cascade: boolean) => {
    if (id === null || kind === 'series') return;
    run(() => removeRecordAction({ seriesId, kind, id, revision: base.revision, cascade }), leave);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save(leave);
  };
  const takeNewest = () => {
    if (newest === null) return;
    form.replaceDraft(mergeDrafts(base.draft, form.draft, newest.view.draft));
    form.showIssues([]);
    setBase(newest.view);
    setNewest(null);
  };

  return (
    <FormProvider value={{ ...form.context, choices: base.choices, partStates: base.partStates }}>
      <form onSubmit={submit} noValidate>
        <UntilReady className={styles.form}>
          {form.issues.length > 0 && newest === null ? (
            <ErrorSummary seriesId={seriesId} sorted={form.sorted} focus={form.summary}>
              {isOrphaning(form.issues) ? (
                <Button look="stop" onClick={() => remove(true)} aria-disabled={isPending}>
                  Remove it with everything that needs it
                </Button>
              ) : null}
            </ErrorSummary>
          ) : null}
          {newest ? <StalePanel issues={form.issues} base={base.draft} typed={form.draft} newest={newest} focus={form.summary} onTake={takeNewest} /> : null}
          <Sections sections={view.sections} draft={form.draft} issues={form.issues} />
          <div className={styles.bar} data-form-bar>
            <Button type="submit" look="main" aria-disabled={isPending}>
              {isPending ? 'Saving' : id === null ? `Add ${one}` : 'Save'}
            </Button>
            {id === null ? (
              <Button onClick={() => save(startAnother)} aria-disabled={isPending}>
                Add and start another
              </Button>
            ) : null}
            <LinkButton look="quiet" href={back}>
              Cancel
            </LinkButton>
          </div>
          {id !== null && hasForm(kind) ? (
            <div className={styles.more}>
              <LinkButton look="quiet" href={`${newRecordPath(seriesId, kind)}?like=${encodeURIComponent(id)}`}>
                Make a copy
              </LinkButton>
              <Button look="stop" aria-disabled={isPending} onClick={() => remove(false)}>
                Remove
              </Button>
            </div>
          ) : null}
        </UntilReady>
      </form>
    </FormProvider>
  );
}
