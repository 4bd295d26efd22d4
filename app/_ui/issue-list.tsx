import Link from 'next/link';
import { OctagonX, TriangleAlert } from 'lucide-react';
import type { Issue, Subject } from '@/lib/result';
import { recordPath } from './paths';
import styles from './issue-list.module.css';

interface IssueListProps {
  readonly issues: readonly Issue[];
  /** Turns the records named into links. */
  readonly seriesId?: string;
  /** Leave out links to this record: the page is about it already. */
  readonly except?: string;
}

/** Issues with sign and word, what is wrong, one fix, and links to the records named. */
export function IssueList({ issues, seriesId, except }: IssueListProps) {
  return (
    <ul className={styles.list}>
      {issues.map((issue, index) => (
        <IssueItem key={`${issue.code}:${index}`} issue={issue} {...(seriesId === undefined ? {} : { seriesId })} {...(except === undefined ? {} : { except })} />
      ))}
    </ul>
  );
}

interface RefusedProps extends IssueListProps {
  readonly className?: string | undefined;
}

/** The issues that refused what somebody has just asked for, read out at once; nothing while there are none. */
export function Refused({ className, issues, ...list }: RefusedProps) {
  if (issues.length === 0) return null;
  return (
    <div role="alert" className={className}>
      <IssueList issues={issues} {...list} />
    </div>
  );
}

function IssueItem({ issue, seriesId, except }: { issue: Issue; seriesId?: string; except?: string }) {
  const isStop = issue.severity === 'stop';
  return (
    <li className={`${styles.issue} ${isStop ? styles.stop : styles.warn}`}>
      <span className={styles.sign}>
        {isStop ? <OctagonX size={20} aria-hidden /> : <TriangleAlert size={20} aria-hidden />}
        {isStop ? 'Stop' : 'Note'}
      </span>
      <div className={styles.words}>
        <p>{issue.message}</p>
        {issue.fix ? <p className={styles.fix}>{issue.fix}</p> : null}
        {seriesId ? <SubjectLinks seriesId={seriesId} subjects={issue.subjects.filter((s) => s.id !== except)} /> : null}
      </div>
    </li>
  );
}

function SubjectLinks({ seriesId, subjects }: { seriesId: string; subjects: readonly Subject[] }) {
  const seen = new Map<string, Subject>();
  for (const subject of subjects) seen.set(`${subject.kind}:${subject.id}`, subject);
  const links = [...seen.values()].flatMap((subject) => {
    const href = recordPath(seriesId, subject.kind, subject.id);
    return href === null ? [] : [{ href, name: subject.name }];
  });
  if (links.length === 0) return null;
  return (
    <p className={styles.links}>
      {links.map(({ href, name }) => (
        <Link key={href} href={href}>
          Open {name}
        </Link>
      ))}
    </p>
  );
}
