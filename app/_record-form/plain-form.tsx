'use client';

import { useTransition, type FormEvent, type ReactNode } from 'react';
import { Button, UntilReady } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { DraftObject, FormView } from '@/lib/views';
import { ErrorSummary } from './error-summary';
import { FormProvider } from './form-context';
import { Sections } from './sections';
import { isSameDraft } from './merge-drafts';
import { useDraftForm, useLeaveGuard } from './use-draft-form';
import styles from './record-form.module.css';

interface PlainFormProps<Answer> {
  readonly view: FormView;
  readonly submitWord: string;
  readonly save: (draft: DraftObject) => Promise<Answer | { readonly ok: false; readonly issues: readonly Issue[] }>;
  /** After it was saved: say so and go somewhere. */
  readonly onSaved: (answer: Answer) => void;
  /** Beside the submit button. */
  readonly children?: ReactNode;
}

/** A form that makes something new and is done. */
export function PlainForm<Answer extends { readonly ok: true }>({ view, submitWord, save, onSaved, children }: PlainFormProps<Answer>) {
  const form = useDraftForm(view);
  const [isPending, startSaving] = useTransition();
  useLeaveGuard(!isPending && !isSameDraft(form.draft, view.draft));

  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isPending) return;
    startSaving(async () => {
      const answer = await save(form.draft);
      if (answer.ok) onSaved(answer);
      else form.showIssues(answer.issues);
    });
  };

  return (
    <FormProvider value={form.context}>
      <form onSubmit={submit} noValidate>
        <UntilReady className={styles.form}>
          {form.issues.length > 0 ? <ErrorSummary seriesId={view.seriesId} sorted={form.sorted} focus={form.summary} /> : null}
          <Sections sections={view.sections} draft={form.draft} issues={form.issues} />
          <div className={styles.bar} data-form-bar>
            <Button type="submit" look="main" aria-disabled={isPending}>
              {isPending ? 'Saving' : submitWord}
            </Button>
            {children}
          </div>
        </UntilReady>
      </form>
    </FormProvider>
  );
}
