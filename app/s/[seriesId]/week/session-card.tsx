import Link from 'next/link';
import { Camera, Flame, Hand, Hourglass, Package, PaintBucket, Sun, Thermometer, TriangleAlert, Volume2, Wrench, type LucideIcon } from 'lucide-react';
import { briefPath } from '@/app/_ui';
import type { ReadyItem, SessionCard as Card, WeekView } from '@/lib/views';
import { sheetId } from './block-sign';
import { RecordLink } from './record-link';
import styles from './session-card.module.css';

const READY: Record<ReadyItem['kind'], { readonly icon: LucideIcon; readonly word: string }> = {
  part: { icon: Package, word: 'Back' },
  drying: { icon: Hourglass, word: 'Dry' },
  heating: { icon: Thermometer, word: 'Warmth' },
  camera: { icon: Camera, word: 'Camera' },
  material: { icon: PaintBucket, word: 'Material' },
  equipment: { icon: Wrench, word: 'Equipment' },
  'lay out': { icon: Hand, word: 'Lay out' },
};

/** One line of what must be ready. */
function ReadyLine({ item, seriesId }: { readonly item: ReadyItem; readonly seriesId: string }) {
  const { icon: Icon, word } = READY[item.kind];
  return (
    <li className={`${styles.item} ${item.isAtRisk ? styles.risk : ''}`}>
      {item.isAtRisk ? <TriangleAlert size={18} aria-hidden /> : <Icon size={18} aria-hidden />}
      <span>
        <span className={styles.itemWord}>{word}{item.isAtRisk ? ', at risk' : ''}</span>{' '}
        <RecordLink seriesId={seriesId} to={item.subject}>{item.text}</RecordLink>
      </span>
    </li>
  );
}

function Conditions({ card }: { readonly card: Card }) {
  return (
    <ul className={`plain ${styles.conditions}`}>
      {card.isRecording ? <li><Camera size={16} aria-hidden /> recording</li> : null}
      {card.hasDaylight ? <li><Sun size={16} aria-hidden /> daylight</li> : null}
      {card.isNoiseAllowed ? <li><Volume2 size={16} aria-hidden /> noise allowed</li> : null}
      {card.heating ? <li><Flame size={16} aria-hidden /> {card.heating}</li> : null}
    </ul>
  );
}

interface SessionCardProps {
  readonly card: Card;
  readonly view: WeekView;
}

/** A session in words: when, who, how full, what is done in it and what must be ready. */
export function SessionCard({ card, view }: SessionCardProps) {
  const share = card.available > 0 ? Math.min(1, card.booked / card.available) : 0;
  return (
    <article className={`${styles.card} ${card.isPast ? styles.past : ''}`} id={`session-${card.id}`}>
      <header>
        <h3><RecordLink seriesId={view.seriesId} to={{ kind: 'session', id: card.id }}>{card.when}</RecordLink></h3>
        <p className={styles.who}>
          {card.crew.join(', ') || 'Nobody is in'} · {card.places.join(', ') || 'no place is open'}
        </p>
        <Conditions card={card} />
        {card.isPast ? null : <Link href={briefPath(view.seriesId, card.id)}>Session brief</Link>}
      </header>
      <div className={`${styles.gauge} ${card.isOverfull ? styles.overfull : ''}`} aria-hidden>
        <span className={styles.booked} style={{ width: `${100 * share}%` }} />
        <span className={styles.limit} style={{ left: card.available > 0 ? `${(100 * card.limit) / card.available}%` : '100%' }} />
      </div>
      <p className={styles.booking}>
        {card.isOverfull ? <TriangleAlert size={16} aria-hidden /> : null} {card.booking}
      </p>
      {card.work.length > 0 ? (
        <ul className={`plain ${styles.work}`}>
          {card.work.map(({ blockId, time }) => (
            <li key={`${blockId}:${time}`}>
              <button type="button" className={styles.job} popoverTarget={sheetId(blockId)}>
                <span className={styles.jobTime}>{time}</span> <span>{view.blocks[blockId]?.title}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p className={styles.none}>No work is planned in it.</p>
      )}
      {card.ready.length > 0 ? (
        <>
          <h4>Must be ready</h4>
          <ul className={`plain ${styles.ready}`}>
            {card.ready.map((item) => (
              <ReadyLine key={`${item.kind}:${item.text}`} item={item} seriesId={view.seriesId} />
            ))}
          </ul>
        </>
      ) : null}
    </article>
  );
}
