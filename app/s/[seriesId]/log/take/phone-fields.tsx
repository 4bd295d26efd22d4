'use client';

import { useId } from 'react';
import styles from './recorder.module.css';

interface Words {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

export function PhoneSelect({ label, value, onChange, options, none }: Words & { readonly options: readonly { readonly id: string; readonly name: string }[]; readonly none: string }) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        <option value="">{none}</option>
        {options.map((option) => <option key={option.id} value={option.id}>{option.name}</option>)}
      </select>
    </div>
  );
}

export function PhoneText({ label, value, onChange, isLong = false }: Words & { readonly isLong?: boolean }) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      {isLong ? <textarea id={id} rows={3} value={value} onChange={(event) => onChange(event.target.value)} /> : <input id={id} value={value} autoComplete="off" onChange={(event) => onChange(event.target.value)} />}
    </div>
  );
}
