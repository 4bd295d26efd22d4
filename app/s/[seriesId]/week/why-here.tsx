'use client';

import { useState } from 'react';
import { Link2 } from 'lucide-react';
import { Button, IssueList, UntilReady } from '@/app/_ui';
import { askServer } from './ask-server';
import type { WhyReply } from './why-answer';
import styles from './block-sheet.module.css';

/** Asks for the whole chain behind a block and for changes that free it: each is tried on the plan, so it is not there at once. */
export function WhyHere({ blockId, seriesId }: { readonly blockId: string; readonly seriesId: string }) {
  const [reply, setReply] = useState<WhyReply | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const ask = async () => {
    setIsAsking(true);
    setReply(await askServer<WhyReply>(`/s/${encodeURIComponent(seriesId)}/week/why?block=${encodeURIComponent(blockId)}`));
    setIsAsking(false);
  };
  return (
    <>
      {reply === null ? (
        <UntilReady>
          <Button onClick={() => void ask()} aria-disabled={isAsking}>
            <Link2 size={18} aria-hidden /> {isAsking ? 'Trying changes…' : 'The whole chain, and what frees it'}
          </Button>
        </UntilReady>
      ) : null}
      <output className="visually-hidden">{reply?.ok ? 'The chain and what frees it are below.' : ''}</output>
      {reply?.ok ? <Explained answer={reply.answer} /> : null}
      {reply?.ok === false ? <IssueList issues={reply.issues} seriesId={seriesId} /> : null}
    </>
  );
}

function Explained({ answer }: { readonly answer: Extract<WhyReply, { ok: true }>['answer'] }) {
  return (
    <>
      <h4>Least changes that free it</h4>
      {answer.reliefs.length === 0 ? <p>None of the small changes that were tried lets it start earlier while all else stays.</p> : null}
      <ul className={styles.reasons}>
        {answer.reliefs.map((text) => (
          <li key={text} className={styles.change}>{text}</li>
        ))}
      </ul>
      <h4>The chain behind it</h4>
      <ol className={styles.reasons}>
        {answer.chain.map((step) => (
          <li key={`${step.when} ${step.title}`}>
            <strong>{step.when}</strong> {step.title}. {step.text ?? 'Nothing holds it.'}
          </li>
        ))}
      </ol>
    </>
  );
}
