import Link from 'next/link';
import { OctagonX, TriangleAlert } from 'lucide-react';
import { taskHazardsPath } from '@/app/_ui';
import type { ExposureRow, VapourRow } from '@/lib/views';
import styles from './safety.module.css';

/** Noise, vibration and vapour by person and day. */
export function ExposureTable({ rows }: { readonly rows: readonly ExposureRow[] }) {
  if (rows.length === 0) return null;
  return (
    <ul className={`plain ${styles.exposures}`}>
      {rows.map((row) => (
        <li key={row.key}>
          <strong>
            {row.day}, {row.person}
          </strong>
          <span>Noise {row.noise}</span>
          <span>Vibration {row.vibration}</span>
          <span>Vapour {row.vapour}</span>
          <span className={row.tone === 'over' ? styles.stop : row.tone === 'below' ? styles.soft : styles.warn}>
            {row.tone === 'over' ? <OctagonX size={16} aria-hidden /> : row.tone === 'below' ? null : <TriangleAlert size={16} aria-hidden />} {row.advice}
          </span>
          {row.unknown === null ? null : <span className={styles.warn}>{row.unknown}</span>}
        </li>
      ))}
    </ul>
  );
}

/** Vapour of each spraying task. */
export function VapourList({ rows, seriesId }: { readonly rows: readonly VapourRow[]; readonly seriesId: string }) {
  if (rows.length === 0) return null;
  return (
    <ul className={`plain ${styles.exposures}`}>
      {rows.map((row) => (
        <li key={row.taskId}>
          <strong>
            <Link href={taskHazardsPath(seriesId, row.taskId)}>{row.name}</Link>
          </strong>
          <span className={row.isOver ? styles.warn : styles.soft}>
            {row.isOver ? <TriangleAlert size={16} aria-hidden /> : null} {row.text}
          </span>
        </li>
      ))}
    </ul>
  );
}
