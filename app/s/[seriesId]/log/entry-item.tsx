'use client';

import Link from 'next/link';
import { useState } from 'react';
import { BookOpen, CircleCheck, CircleX, Eye, HardDrive, MessageSquareQuote, NotebookPen, Shirt, TriangleAlert, Video } from 'lucide-react';
import { Button, FieldErrors, logPath, recordPath, TextField, UntilReady } from '@/app/_ui';
import type { EntryView } from '@/lib/views';
import { correctEntryAction, importTakesAction, withdrawEntryAction } from './actions';
import styles from './log.module.css';
import { useLogAction } from './use-log-action';

const ICONS = { take: Video, state: Eye, look: Shirt, note: NotebookPen, fault: TriangleAlert, voice: MessageSquareQuote, departure: BookOpen, card: HardDrive, waiver: CircleCheck } as const;

interface EntryItemProps {
  readonly seriesId: string;
  readonly entry: EntryView;
  /** Day to show beside the time, in a search over all days. */
  readonly day?: string;
}

/** One entry with its photos, and the way to correct it or take it back. */
export function EntryItem({ seriesId, entry, day }: EntryItemProps) {
  const Icon = entry.verdict === 'no good' ? CircleX : ICONS[entry.kind];
  const taskHref = entry.task === null ? null : recordPath(seriesId, 'task', entry.task.id);
  return (
    <li className={styles.entry} data-kind={entry.kind}>
      <time dateTime={entry.isoAt} className={styles.time}>{day === undefined ? entry.time : <Link href={`${logPath(seriesId)}?day=${day}`}>{day} {entry.time}</Link>}</time>
      <div className={styles.words}>
        <h3 className={styles.entryTitle}><Icon size={20} aria-hidden /><span className={styles.kind}>{entry.kindWord}</span> {entry.title}</h3>
        {entry.task !== null && taskHref !== null ? <p><Link href={taskHref}>{entry.task.name}</Link></p> : null}
        {entry.lines.length > 0 ? <ul className={styles.lines}>{entry.lines.map((line) => <li key={line}>{line}</li>)}</ul> : null}
        {entry.photoIds.length > 0 ? (
          <ul className={styles.photos}>
            {entry.photoIds.map((id, index) => (
              <li key={id}>
                <a href={`${logPath(seriesId)}/photos/${encodeURIComponent(id)}`}>
                  {/* Kept at this size beside the database: nothing is left to optimise. */}
                  <img src={`${logPath(seriesId)}/photos/${encodeURIComponent(id)}?size=small`} alt={`${entry.title}, ${index + 1}`} loading="lazy" width={160} height={120} />
                </a>
              </li>
            ))}
          </ul>
        ) : null}
        <p className={styles.by}>{entry.author}, {entry.device}{entry.replaces ? ', corrected; the entry as it was is kept' : ''}</p>
        <Correct seriesId={seriesId} entry={entry} />
      </div>
    </li>
  );
}

function Correct({ seriesId, entry }: { readonly seriesId: string; readonly entry: EntryView }) {
  const [text, setText] = useState(entry.text);
  const [isGood, setGood] = useState(entry.verdict === 'good');
  const { isPending, errors, run } = useLogAction(seriesId);
  const id = `correct-${entry.id}`;
  const verdict = entry.verdict === null ? {} : { verdict: isGood ? 'good' : entry.verdict === 'good' ? 'no good' : entry.verdict };
  return (
    <details className={styles.correct}>
      <summary>Correct or take back</summary>
      <UntilReady className={styles.form}>
        <TextField id={id} label="Words" value={text} onChange={setText} errors={errors} />
        {entry.verdict === null ? null : <label className={styles.tick}><input type="checkbox" checked={isGood} onChange={(event) => setGood(event.target.checked)} /> The take is good</label>}
        <div className={styles.buttons}>
          <Button aria-disabled={isPending} onClick={() => run(() => correctEntryAction(seriesId, entry.id, entry.author, { text, ...verdict }))}>Put in its place</Button>
          <Button look="stop" aria-disabled={isPending} onClick={() => run(() => withdrawEntryAction(seriesId, entry.id, entry.author))}>Take back</Button>
        </div>
      </UntilReady>
    </details>
  );
}

/** Files in: a table of takes. */
export function TakeImport({ seriesId, author }: { readonly seriesId: string; readonly author: string }) {
  const [file, setFile] = useState<File | null>(null);
  const { isPending, errors, run } = useLogAction(seriesId);
  return (
    <UntilReady className={styles.form}>
      <label htmlFor="import-takes" className={styles.importLabel}>Take in a table of takes (CSV)</label>
      <input id="import-takes" type="file" accept=".csv,text/csv" aria-describedby={errors.length > 0 ? 'import-takes-error' : undefined} onChange={(event) => setFile(event.target.files?.[0] ?? null)} />
      <FieldErrors id="import-takes" errors={errors.slice(0, 20)} />
      <Button aria-disabled={isPending || file === null} onClick={() => (file === null ? undefined : run(async () => importTakesAction(seriesId, await file.text(), author)))}>Take it in</Button>
    </UntilReady>
  );
}
