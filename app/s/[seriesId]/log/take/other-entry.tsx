'use client';

import { useState } from 'react';
import type { PhoneView } from '@/lib/views';
import { PhoneSelect, PhoneText } from './phone-fields';
import styles from './recorder.module.css';

const KINDS = [
  { id: 'state', name: 'State of a part' }, { id: 'look', name: 'Clothes, light and lens' }, { id: 'note', name: 'Note' }, { id: 'fault', name: 'Fault' }, { id: 'voice', name: 'Spoken line' },
  { id: 'departure', name: 'Departure from the manual' }, { id: 'card', name: 'Card copied or wiped' },
];
const LOOK = { clothes: 'Clothes', equipment: 'Protective equipment', light: 'Light', whiteBalance: 'White balance', lens: 'Lens', tools: 'Where the tools lie' } as const;
const DEPARTURE = { manualValue: 'Value of the manual', ownValue: 'Own value', reason: 'Reason', warning: 'Warning to viewers' } as const;
const CARD = ['copied', 'copy verified', 'reformatted'].map((id) => ({ id, name: id }));

type Log = (kind: string, fields: Readonly<Record<string, unknown>>, words: string) => Promise<boolean>;
type Values = Readonly<Record<string, string>>;

/** What is sent for a kind of entry; null while something is missing. */
function fieldsOf(kind: string, values: Values, view: PhoneView): { readonly fields: Readonly<Record<string, unknown>>; readonly words: string } | null {
  const of = (key: string): string => values[key] ?? '';
  if (kind === 'state') {
    const part = view.parts.find(({ id }) => id === of('part'));
    if (part === undefined || (of('state') === '' && of('where') === '')) return null;
    const [whereKind = '', whereId = ''] = of('where').split(':');
    const whereabouts = of('where') === '' ? null : { kind: whereKind, id: whereId || null };
    return { fields: { text: of('text'), observed: [{ partId: part.id, stateId: of('state') || null, whereabouts }] }, words: `state of ${part.name}` };
  }
  if (kind === 'look') {
    const look = Object.fromEntries(Object.keys(LOOK).map((key) => [key, of(key)]));
    return Object.values(look).every((value) => value === '') ? null : { fields: { text: '', look }, words: 'look' };
  }
  if (kind === 'departure') {
    const departure = { ...Object.fromEntries(Object.keys(DEPARTURE).map((key) => [key, of(key)])), isSpoken: of('isSpoken') !== '', isCaptioned: of('isCaptioned') !== '' };
    return of('manualValue') === '' && of('ownValue') === '' ? null : { fields: { text: '', departure }, words: 'departure from the manual' };
  }
  if (kind === 'card') return of('card') === '' || of('what') === '' ? null : { fields: { text: of('text'), card: { card: of('card'), what: of('what') } }, words: `card ${of('card')} ${of('what')}` };
  return of('text') === '' ? null : { fields: { text: of('text') }, words: KINDS.find(({ id }) => id === kind)?.name.toLowerCase() ?? kind };
}

/** Everything but takes: chosen, filled in, kept. */
export function OtherEntry({ view, log }: { readonly view: PhoneView; readonly log: Log }) {
  const [kind, setKind] = useState('state');
  const [values, setValues] = useState<Values>({});
  const [isMissing, setMissing] = useState(false);
  const text = (key: string, label: string, isLong = false) => <PhoneText key={key} label={label} value={values[key] ?? ''} onChange={(value) => setValues({ ...values, [key]: value })} isLong={isLong} />;
  const choice = (key: string, label: string, options: readonly { readonly id: string; readonly name: string }[], none: string) => (
    <PhoneSelect key={key} label={label} value={values[key] ?? ''} onChange={(value) => setValues({ ...values, [key]: value })} options={options} none={none} />
  );
  const tick = (key: string, label: string) => (
    <label key={key} className={styles.check}><input type="checkbox" checked={(values[key] ?? '') !== ''} onChange={(event) => setValues({ ...values, [key]: event.target.checked ? 'yes' : '' })} />{label}</label>
  );
  const submit = async () => {
    const made = fieldsOf(kind, values, view);
    setMissing(made === null);
    if (made !== null && (await log(kind, made.fields, made.words))) setValues({});
  };
  const where = [...view.places.map(({ id, name }) => ({ id: `place:${id}`, name })), ...view.trades.map(({ id, name }) => ({ id: `trade:${id}`, name: `Away at ${name}` })), { id: 'store:', name: 'In store' }];
  return (
    <details className={styles.more}>
      <summary>Log something else</summary>
      <div className={styles.fields}>
        <PhoneSelect label="What" value={kind} onChange={(next) => { setKind(next === '' ? 'note' : next); setMissing(false); }} options={KINDS} none="Note" />
        {kind === 'state' ? [choice('part', 'Part', view.parts, 'Choose a part'), choice('state', 'State', view.parts.find(({ id }) => id === values['part'])?.states ?? [], 'Not looked at'), choice('where', 'Where it is', where, 'Not said'), text('text', 'Note')] : null}
        {kind === 'look' ? Object.entries(LOOK).map(([key, label]) => text(key, label)) : null}
        {kind === 'departure' ? [...Object.entries(DEPARTURE).map(([key, label]) => text(key, label)), tick('isSpoken', 'Spoken in the take'), tick('isCaptioned', 'In the captions')] : null}
        {kind === 'card' ? [text('card', 'Card'), choice('what', 'What happened', CARD, 'Choose')] : null}
        {['note', 'fault', 'voice'].includes(kind) ? text('text', kind === 'voice' ? 'Words as spoken' : 'What it is', true) : null}
        {isMissing ? <p role="alert" className={styles.missing}>Fill in what it is about first.</p> : null}
        <button type="button" className={styles.small} onClick={() => void submit()}>Log it</button>
      </div>
    </details>
  );
}
