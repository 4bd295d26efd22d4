'use client';

import { useEffect, useMemo, useRef, useState, type Dispatch, type RefObject, type SetStateAction } from 'react';
import type { Issue } from '@/lib/result';
import type { Draft, DraftObject, FormView } from '@/lib/views';
import type { FormContextValue } from './form-context';
import { isDraftObject, setDraft, sortIssues, type Path } from './form-paths';

const NO_ISSUES: readonly Issue[] = [];

export interface DraftForm {
  readonly draft: DraftObject;
  readonly replaceDraft: Dispatch<SetStateAction<DraftObject>>;
  readonly issues: readonly Issue[];
  /** Shows issues and moves the focus to them; an empty list clears them. */
  readonly showIssues: (issues: readonly Issue[]) => void;
  readonly sorted: ReadonlyMap<string, readonly Issue[]>;
  /** Where the summary of issues takes the focus. */
  readonly summary: RefObject<HTMLElement | null>;
  readonly context: FormContextValue;
}

/** What is typed in a form and what is wrong with it. A refusal changes nothing of what is typed. */
export function useDraftForm(view: FormView): DraftForm {
  const [draft, replaceDraft] = useState<DraftObject>(view.draft);
  const [issues, showIssues] = useState(NO_ISSUES);
  const summary = useRef<HTMLElement>(null);
  const { sections, choices, partStates, zone } = view;
  const fields = useMemo(() => sections.flatMap((section) => section.fields), [sections]);
  const sorted = useMemo(() => sortIssues(fields, issues), [fields, issues]);

  useEffect(() => {
    if (issues.length > 0) summary.current?.focus();
  }, [issues]);

  const set = (path: Path, value: Draft) => {
    replaceDraft((before) => {
      const next = setDraft(before, path, value);
      return isDraftObject(next) ? next : before;
    });
  };
  return { draft, replaceDraft, issues, showIssues, sorted, summary, context: { choices, partStates, zone, issues: sorted, set } };
}

/** Asks before typed words are lost by closing the page. */
export function useLeaveGuard(isDirty: boolean): void {
  useEffect(() => {
    if (!isDirty) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [isDirty]);
}
