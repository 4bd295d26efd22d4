'use client';

import { createContext, useContext } from 'react';
import type { Issue } from '@/lib/result';
import type { Choice, ChoiceSource, Draft, RecordFormView } from '@/lib/views';
import { fieldId, type Path } from './form-paths';

export interface FormContextValue {
  readonly choices: RecordFormView['choices'];
  readonly partStates: RecordFormView['partStates'];
  readonly zone: string;
  readonly issues: ReadonlyMap<string, readonly Issue[]>;
  readonly set: (path: Path, value: Draft) => void;
}

const FormContext = createContext<FormContextValue | null>(null);

export const FormProvider = FormContext.Provider;

export function useForm(): FormContextValue {
  const form = useContext(FormContext);
  if (form === null) throw new Error('A control of a record form stands outside the form');
  return form;
}

/** Sentences to show at a control. */
export function useErrors(path: Path): readonly string[] {
  const { issues } = useForm();
  return (issues.get(fieldId(path)) ?? []).map(({ message, fix }) => `${message} ${fix}`);
}

export function useChoices(source: readonly Choice[] | ChoiceSource): readonly Choice[] {
  const { choices } = useForm();
  return typeof source === 'string' ? (choices[source] ?? []) : source;
}
