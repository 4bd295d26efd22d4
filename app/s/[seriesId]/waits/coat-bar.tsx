import type { CuringCoat } from '@/lib/views';
import styles from './coat-bar.module.css';

const percent = (share: number): string => `${(share * 100).toFixed(1)}%`;

/** A coat from the moment it was laid to full cure: its stages as posts, the recoat window as a gate, now as a needle. */
export function CoatBar({ coat }: { readonly coat: CuringCoat }) {
  return (
    <div className={styles.whole}>
      <div className={styles.bar} aria-hidden>
        <span className={styles.past} style={{ width: percent(coat.now) }} />
        {coat.window === null ? null : <span className={styles.window} style={{ left: percent(coat.window.from), width: percent(Math.max(0.004, coat.window.to - coat.window.from)) }} />}
        {coat.stages.map((stage, index) => (
          <span key={stage.stage} className={styles.post} style={{ left: percent(stage.at) }}>
            <span className={styles.number}>{index + 1}</span>
          </span>
        ))}
        <span className={styles.needle} style={{ left: percent(coat.now) }} />
      </div>
      <ol className={styles.stages}>
        {coat.stages.map((stage) => (
          <li key={stage.stage} className={stage.isReached ? styles.reached : undefined}>
            <span className={styles.word}>{stage.word}</span> {stage.moment ?? 'not in the time that is known'}{stage.isReached ? ', reached' : ''}
          </li>
        ))}
      </ol>
    </div>
  );
}
