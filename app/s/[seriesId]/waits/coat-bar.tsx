import type { CuringCoat } from '@/lib/views';
import styles from './coat-bar.module.css';

const percent = (share: number): string => `${(share * 100).toFixed(1)}%`;

/** Posts nearer to each other than this share of the bar stand under one number. */
const NEAR = 0.035;

/** Where numbers stand over the bar: `1`, or `1 2` where two posts are too near for one each. */
function listLabels(stages: CuringCoat['stages']): readonly { readonly at: number; readonly text: string }[] {
  const labels: { at: number; text: string; last: number }[] = [];
  const marks = stages.map(({ at }, index) => ({ at, text: String(index + 1) })).toSorted((a, b) => a.at - b.at);
  for (const { at, text } of marks) {
    const before = labels.at(-1);
    if (before === undefined || at - before.last > NEAR) labels.push({ at, text, last: at });
    else labels[labels.length - 1] = { at: before.at, text: `${before.text} ${text}`, last: at };
  }
  return labels;
}

/** A coat from the moment it was laid to full cure: its stages as posts, the recoat window as a gate, now as a needle. */
export function CoatBar({ coat }: { readonly coat: CuringCoat }) {
  return (
    <div className={styles.whole}>
      <div className={styles.bar} aria-hidden>
        <span className={styles.past} style={{ width: percent(coat.now) }} />
        {coat.window === null ? null : <span className={styles.window} style={{ left: percent(coat.window.from), width: percent(Math.max(0.004, coat.window.to - coat.window.from)) }} />}
        {coat.stages.map((stage) => <span key={stage.stage} className={styles.post} style={{ left: percent(stage.at) }} />)}
        {listLabels(coat.stages).map(({ at, text }) => (
          <span key={text} className={styles.number} style={at > 0.5 ? { right: percent(Math.max(0, 1 - at - NEAR / 2)) } : { left: percent(at) }}>{text}</span>
        ))}
        <span className={styles.needle} style={{ left: percent(coat.now) }} />
      </div>
      <ol className={`plain ${styles.stages}`}>
        {coat.stages.map((stage, index) => (
          <li key={stage.stage} className={stage.isReached ? styles.reached : undefined}>
            <span className={styles.index}>{index + 1}</span> <span className={styles.word}>{stage.word}</span> {stage.moment ?? 'not in the time that is known'}{stage.isReached ? ', reached' : ''}
          </li>
        ))}
      </ol>
    </div>
  );
}
