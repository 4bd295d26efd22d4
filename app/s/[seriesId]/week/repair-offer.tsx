import { Wrench } from 'lucide-react';
import { loadDocument, openViewContext, viewRepair } from '@/lib/views';
import { MendButton } from './mend-button';
import styles from './plan-banner.module.css';

/** The least that would put a plan right that no longer fits the build: one line, one button. Nothing while it fits. */
export async function RepairOffer({ seriesId }: { readonly seriesId: string }) {
  const document = await loadDocument(seriesId);
  const repair = document === null ? null : await viewRepair(await openViewContext(), document);
  if (repair === null) return null;
  return (
    <div className={`${styles.banner} ${styles.offer} ${repair.isWorse ? styles.warn : ''}`}>
      <Wrench size={20} aria-hidden />
      <p>{repair.text}</p>
      {repair.canMend ? <MendButton seriesId={seriesId} /> : null}
    </div>
  );
}
