import { CircleCheck, CircleHelp, OctagonX, TriangleAlert, type LucideIcon } from 'lucide-react';
import type { Answer } from '@/lib/views';
import { RecordLink } from '../week/record-link';
import styles from './progress.module.css';

const SIGNS: Readonly<Record<Answer['tone'], { readonly icon: LucideIcon; readonly word: string }>> = {
  good: { icon: CircleCheck, word: 'Good' }, warn: { icon: TriangleAlert, word: 'Watch' }, stop: { icon: OctagonX, word: 'Trouble' }, plain: { icon: CircleHelp, word: '' },
};

/** The four questions with their answers. */
export function Answers({ answers, seriesId }: { readonly answers: readonly Answer[]; readonly seriesId: string }) {
  return (
    <dl className={styles.answers}>
      {answers.map(({ about, answer, detail, question, tone }) => {
        const { icon: Icon, word } = SIGNS[tone];
        return (
          <div key={question} className={styles[tone]}>
            <dt>{tone === 'plain' ? null : <Icon size={18} aria-hidden />} {question} {word === '' ? null : <span className="visually-hidden">{word}:</span>}</dt>
            <dd>
              <strong>{about === null ? answer : <RecordLink seriesId={seriesId} to={about}>{answer}</RecordLink>}</strong>
              <span>{detail}</span>
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
