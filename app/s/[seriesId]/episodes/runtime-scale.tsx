import type { RuntimeView } from '@/lib/views';
import styles from './episodes.module.css';

/** Minutes on screen on a rule: what is there, the wish, and the bounds. The words beside it say the same. */
export function RuntimeScale({ runtime }: { readonly runtime: RuntimeView }) {
  const reach = Math.max(runtime.max * 1.15, runtime.minutes);
  const at = (minutes: number): string => `${(100 * minutes) / reach}%`;
  return (
    <span className={styles.scale} aria-hidden>
      <span className={styles.allowed} style={{ left: at(runtime.min), right: `calc(100% - ${at(runtime.max)})` }} />
      <span className={`${styles.tape} ${runtime.isInside ? '' : styles.outside}`} style={{ width: at(runtime.minutes) }} />
      <span className={styles.wish} style={{ left: at(runtime.target) }} />
    </span>
  );
}
