import { CheckCheck, CircleCheck, TriangleAlert, OctagonX, type LucideIcon } from 'lucide-react';
import type { Standing } from '@/lib/views';
import styles from './episodes.module.css';

const SIGNS: Record<Standing['verdict'], { readonly icon: LucideIcon; readonly look: string | undefined }> = {
  done: { icon: CheckCheck, look: styles.soft },
  fits: { icon: CircleCheck, look: styles.good },
  tight: { icon: TriangleAlert, look: styles.warn },
  short: { icon: OctagonX, look: styles.bad },
};

/** How an episode stands for time: sign and word. */
export function StandingSign({ standing }: { readonly standing: Standing }) {
  const { icon: Icon, look } = SIGNS[standing.verdict];
  return (
    <span className={`${styles.standing} ${look ?? ''}`}>
      <Icon size={18} aria-hidden /> {standing.word}
    </span>
  );
}
