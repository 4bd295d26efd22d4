'use client';

import Link from 'next/link';
import { useState } from 'react';
import { BookCheck, Check, CircleDashed, FileCheck, RotateCcw, type LucideIcon } from 'lucide-react';
import { Button, recordPath, SelectField, taskHazardsPath, UntilReady } from '@/app/_ui';
import type { EpisodeSafetyView, ItemGroup, ItemView } from '@/lib/views';
import { SignForm } from './sign-form';
import styles from './safety.module.css';

/** The lines of an episode by hazard. Who signs is chosen once for all of them. */
export function Checklist({ view }: { readonly view: EpisodeSafetyView }) {
  const [personId, setPersonId] = useState('');
  const [openId, setOpenId] = useState<string | null>(null);
  return (
    <section className={styles.section} aria-labelledby="lines-head">
      <h2 id="lines-head">The checklist</h2>
      <UntilReady>
        <SelectField id="signer" label="Who signs" none="Nobody yet" value={personId} onChange={setPersonId} options={view.people} help="Look at the footage, then sign each line with the take and timecode." />
      </UntilReady>
      {view.groups.map((group) => (
        <Group key={group.id} group={group} view={view}>
          {group.items.map((item) => (
            <Line
              key={item.id}
              item={item}
              seriesId={view.seriesId}
              isOpen={openId === item.id}
              toggle={() => setOpenId(openId === item.id ? null : item.id)}
              form={<SignForm view={view} item={item} personId={personId} done={() => setOpenId(null)} />}
            />
          ))}
        </Group>
      ))}
    </section>
  );
}

function Group({ group, view, children }: { readonly group: ItemGroup; readonly view: EpisodeSafetyView; readonly children: React.ReactNode }) {
  return (
    <section className={styles.group} aria-labelledby={`group-${group.id}`}>
      <h3 id={`group-${group.id}`}>
        {group.title} {group.severity === null ? null : <span className={styles.soft}>severity {group.severity}</span>}
        {group.open > 0 ? <span className={styles.openCount}> {group.open} open</span> : null}
      </h3>
      {group.show === null ? null : <p className={styles.soft}>To be seen: {group.show}</p>}
      {group.tasks.length === 0 ? null : (
        <p className={styles.soft}>
          In{' '}
          {group.tasks.map(({ value, label }, index) => (
            <span key={value}>
              {index > 0 ? ', ' : ''}
              <Link href={taskHazardsPath(view.seriesId, value)}>{label}</Link>
            </span>
          ))}
        </p>
      )}
      {group.signs.length === 0 ? null : <p className={styles.signs}>{group.signs.map(({ code, meaning }) => `${code} ${meaning}`).join(' · ')}</p>}
      <ul className={`plain ${styles.lines}`}>{children}</ul>
    </section>
  );
}

const SIGNS: Readonly<Record<ItemView['state'], LucideIcon>> = { open: CircleDashed, evidenced: Check, excepted: FileCheck, recorded: BookCheck, reopened: RotateCcw };

interface LineProps {
  readonly item: ItemView;
  readonly seriesId: string;
  readonly isOpen: boolean;
  readonly toggle: () => void;
  readonly form: React.ReactNode;
}

function Line({ item, seriesId, isOpen, toggle, form }: LineProps) {
  const record = item.record === null ? null : recordPath(seriesId, item.record.kind, item.record.id);
  const Icon = SIGNS[item.state];
  const tone = item.state === 'evidenced' || item.state === 'excepted' || item.state === 'recorded' ? styles.good : item.isNeeded ? styles.stop : styles.soft;
  return (
    <li id={item.anchor} className={styles.line}>
      <span className={`${styles.state} ${tone}`}>
        <Icon size={18} aria-hidden /> {item.state === 'open' && !item.isNeeded ? 'May be shown' : item.stateWord}
      </span>
      <div className={styles.words}>
        <p>
          <span className={styles.kind}>{item.kindWord}</span> {item.text}
        </p>
        {item.issues.map(({ message, fix }) => (
          <p key={message} className={styles.stop}>
            {message} {fix}
          </p>
        ))}
        {item.why === null ? null : <p className={styles.stop}>Open again: {item.why}.</p>}
        {item.recorded === null ? null : <p className={styles.soft}>{item.recorded}</p>}
        {item.signed === null ? null : <p className={styles.soft}>{item.signed}</p>}
        {record === null || item.record === null ? null : (
          <p>
            <Link href={record}>The record: {item.record.name}</Link>
          </p>
        )}
        {isOpen ? form : null}
      </div>
      {item.state === 'recorded' ? null : (
        <Button look={item.isNeeded && (item.state === 'open' || item.state === 'reopened') ? 'plain' : 'quiet'} onClick={toggle} aria-expanded={isOpen} aria-label={`${isOpen ? 'Close' : 'Sign'}: ${item.kindWord}, ${item.text}`}>
          {isOpen ? 'Close' : 'Sign'}
        </Button>
      )}
    </li>
  );
}
