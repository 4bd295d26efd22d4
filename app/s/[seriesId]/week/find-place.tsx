'use client';

import { useState } from 'react';
import { MapPinPlus } from 'lucide-react';
import { Button, IssueList, UntilReady } from '@/app/_ui';
import { askServer } from './ask-server';
import type { PlaceReply } from './place-answer';
import styles from './find-place.module.css';

interface Props {
  readonly seriesId: string;
  readonly subject: { readonly kind: string; readonly id: string };
  /** Told to who cannot see which work the button belongs to. */
  readonly title: string;
  readonly plan: 'accepted' | 'draft';
}

/** Asks what would give a place to work that a plan leaves out: each change is tried on the plan, so it is not there at once. */
export function FindPlace({ plan, seriesId, subject, title }: Props) {
  const [reply, setReply] = useState<PlaceReply | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const ask = async () => {
    setIsAsking(true);
    const query = new URLSearchParams({ kind: subject.kind, id: subject.id, plan });
    setReply(await askServer<PlaceReply>(`/s/${encodeURIComponent(seriesId)}/week/place?${query.toString()}`));
    setIsAsking(false);
  };
  return (
    <div className={styles.place}>
      {reply === null ? (
        <UntilReady>
          <Button onClick={() => void ask()} aria-disabled={isAsking}>
            <MapPinPlus size={18} aria-hidden /> {isAsking ? 'Trying changes…' : 'What would give it a place'}<span className="visually-hidden">: {title}</span>
          </Button>
        </UntilReady>
      ) : null}
      <div aria-live="polite">
        {reply?.ok ? <Answer reply={reply} title={title} /> : null}
      </div>
      {reply?.ok === false ? <IssueList issues={reply.issues} seriesId={seriesId} /> : null}
    </div>
  );
}

function Answer({ reply, title }: { readonly reply: Extract<PlaceReply, { ok: true }>; readonly title: string }) {
  if (reply.problem !== null) return <p className={styles.none}>{reply.problem}</p>;
  if (reply.reliefs.length === 0) return <p className={styles.none}>None of the {reply.tried} changes that were tried gives it a place while all else stays.</p>;
  const [least, ...others] = reply.reliefs;
  return (
    <>
      <p className={styles.least}><span className="visually-hidden">{title}. </span><strong>Least change:</strong> {least}</p>
      {others.map((text) => (
        <p key={text} className={styles.other}>Or: {text}</p>
      ))}
    </>
  );
}
