import { Camera, OctagonAlert, Pin } from 'lucide-react';
import { BlockSign } from './block-sign';
import styles from './legend.module.css';

const KINDS = [
  { kind: 'task', word: 'Work' },
  { kind: 'before-shot', word: 'Film before' },
  { kind: 'cure', word: 'Drying: hands off' },
  { kind: 'shut', word: 'Air clearing: stay out' },
  { kind: 'away', word: 'Away at a trade' },
  { kind: 'drop-off', word: 'On the road' },
] as const;

/** What the plates and marks of the strip mean. */
export function Legend() {
  return (
    <ul className={`plain ${styles.legend}`} aria-label="Signs">
      {KINDS.map(({ kind, word }) => (
        <li key={kind}>
          <span className={`${styles.plate} ${styles[kind]}`}>
            <BlockSign kind={kind} size={14} />
          </span>
          {word}
        </li>
      ))}
      <li>
        <span className={styles.frame} /> Session
      </li>
      <li>
        <Camera size={16} aria-hidden /> Filmed
      </li>
      <li>
        <OctagonAlert size={16} aria-hidden /> Once only
      </li>
      <li>
        <Pin size={16} aria-hidden /> Pinned
      </li>
    </ul>
  );
}
