import { PinOff } from 'lucide-react';
import { ActionButton } from '@/app/_actions/action-button';
import type { PlansView } from '@/lib/views';
import { RecordLink } from '../week/record-link';
import { unpinTaskAction } from '../week/actions';
import styles from './page.module.css';

/** Starts fixed by hand that the accepted plan does not have, each with a button to let it go. */
export function LoosePins({ view: { accepted, draft, loosePins, seriesId } }: { readonly view: PlansView }) {
  if (accepted === null || loosePins.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="pins-head">
      <h2 id="pins-head">Fixed by hand, not so in plan {accepted.number}</h2>
      <p className={styles.soft}>{draft === null ? 'The next plan keeps to these starts.' : `These stay fixed when plan ${draft.number} is discarded, and every later plan keeps to them.`}</p>
      <ul className={`plain ${styles.pins}`}>
        {loosePins.map((pin) => (
          <li key={pin.taskId}>
            <span><RecordLink seriesId={seriesId} to={{ kind: 'task', id: pin.taskId }}>{pin.name}</RecordLink> starts {pin.when}</span>
            <ActionButton seriesId={seriesId} run={unpinTaskAction.bind(null, seriesId, pin.taskId, pin.revision)}>
              <PinOff size={18} aria-hidden /> Take the pin off<span className="visually-hidden">: {pin.name}</span>
            </ActionButton>
          </li>
        ))}
      </ul>
    </section>
  );
}
