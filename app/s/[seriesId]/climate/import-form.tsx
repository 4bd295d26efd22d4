'use client';

import { useRef, useState, useTransition, type FormEvent } from 'react';
import { Button, Field, IssueList, SelectField, TextField, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { Choice } from '@/lib/views';
import { importReadingsAction, type ImportOutcome } from './actions';
import styles from './page.module.css';

interface ImportFormProps {
  readonly seriesId: string;
  readonly airZone: string;
  readonly airZones: readonly Choice[];
  /** Of the series; the logger's may differ. */
  readonly zone: string;
  readonly zones: readonly Choice[];
}

const UNITS = [{ value: 'auto', label: 'as the file says' }, { value: 'C', label: '°C' }, { value: 'F', label: '°F' }];
const ORDERS = [{ value: 'auto', label: 'as the dates show' }, { value: 'day first', label: 'day first' }, { value: 'month first', label: 'month first' }];
/** More would not be read; the count says how many there are. */
const MOST_SHOWN = 30;

/** The place of a row's issue, `Row 4, column temperature: `; what the message says itself is not said twice. */
function placeOf({ path, message }: Issue): string {
  const [row, column] = path;
  if (typeof row !== 'number') return '';
  const isTold = message.startsWith(`Row ${row}`);
  if (isTold) return column === undefined ? '' : `Column ${column}. `;
  return column === undefined ? `Row ${row}. ` : `Row ${row}, column ${column}. `;
}

/** Imports the file of a logger. What was typed and chosen stays when the file cannot be read. */
export function ImportForm({ seriesId, airZone, airZones, zone, zones }: ImportFormProps) {
  const { sayChange } = useNotices();
  const file = useRef<HTMLInputElement>(null);
  const [values, setValues] = useState({ name: 'Logger', airZone, zone, unit: 'auto', dateOrder: 'auto' });
  const [answer, setAnswer] = useState<ImportOutcome | null>(null);
  const [isPending, start] = useTransition();
  const set = (name: keyof typeof values) => (value: string) => setValues((before) => ({ ...before, [name]: value }));
  const issues = answer === null || answer.ok ? [] : answer.issues;
  const errorsAt = (name: string) => issues.filter(({ path }) => path[0] === name).map(({ message, fix }) => `${message} ${fix}`);

  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isPending) return;
    start(async () => {
      const text = (await file.current?.files?.[0]?.text()) ?? '';
      const outcome = await importReadingsAction(seriesId, { ...values, text });
      setAnswer(outcome);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };

  return (
    <form onSubmit={submit} noValidate aria-labelledby="import-head">
      <UntilReady className={styles.import}>
        <h3 id="import-head">Import readings</h3>
        <p>A text file with a row for each reading: time, temperature and, if there is one, humidity. Good rows are kept, every other row is named.</p>
        <Field id="import-text" label="File of the logger" errors={[...errorsAt('text'), ...issues.filter(({ path }) => typeof path[0] !== 'string').map((one) => `${placeOf(one)}${one.message} ${one.fix}`)]}>
          {(control) => <input {...control} ref={file} type="file" accept=".csv,.txt,.tsv,text/csv,text/plain" className={styles.file} />}
        </Field>
        <div className={styles.fields}>
          <TextField id="import-name" label="Name" value={values.name} onChange={set('name')} errors={errorsAt('name')} />
          <SelectField id="import-air" label="Air it lay in" value={values.airZone} onChange={set('airZone')} options={airZones} errors={errorsAt('airZone')} />
          <SelectField id="import-zone" label="Time zone of its clock" value={values.zone} onChange={set('zone')} options={zones} errors={errorsAt('zone')} />
          <SelectField id="import-unit" label="Temperatures in" value={values.unit} onChange={set('unit')} options={UNITS} errors={errorsAt('unit')} />
          <SelectField id="import-order" label="Dates are written" value={values.dateOrder} onChange={set('dateOrder')} options={ORDERS} errors={errorsAt('dateOrder')} />
        </div>
        <div>
          <Button type="submit" look="main" aria-disabled={isPending}>{isPending ? 'Importing' : 'Import'}</Button>
        </div>
        <div aria-live="polite" className={styles.outcome}>{answer?.found ? <Found found={answer.found} /> : null}</div>
      </UntilReady>
    </form>
  );
}

function Found({ found }: { readonly found: NonNullable<ImportOutcome['found']> }) {
  const { rows, kept, issues } = found;
  const shown = issues.slice(0, MOST_SHOWN).map((one) => ({ ...one, message: `${placeOf(one)}${one.message}` }));
  return (
    <>
      <p><strong>{kept} of {rows} rows kept.</strong> {issues.length === 0 ? 'Nothing was wrong with them.' : `${issues.length} ${issues.length === 1 ? 'thing' : 'things'} to look at:`}</p>
      {shown.length > 0 ? <IssueList issues={shown} /> : null}
      {issues.length > MOST_SHOWN ? <p>And {issues.length - MOST_SHOWN} more.</p> : null}
    </>
  );
}
