import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { LinkButton, newRecordPath, PageBody, PageHead, recordPath, safetyPath } from '@/app/_ui';
import { loadDocument, viewHazards, type HazardCard } from '@/lib/views';
import { AddHazards } from './own-hazards';
import styles from '../safety.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Library of hazards' };

export default async function HazardsPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const cards = viewHazards(document);
  const own = cards.filter(({ isOwn }) => isOwn).length;
  return (
    <PageBody>
      <PageHead
        title="Library of hazards"
        above={<Link href={safetyPath(seriesId)}>Safety</Link>}
        lead={`${cards.length} hazards${own > 0 ? `, ${own} of them your own` : ''}. The maker's instructions, local codes and licensed practice come first. What nobody has read in a source is marked unverified.`}
        actions={
          <LinkButton look="main" href={newRecordPath(seriesId, 'hazard')}>
            Add a hazard
          </LinkButton>
        }
      />
      <AddHazards seriesId={seriesId} templates={cards.map(({ id, name, asText }) => ({ id, name, asText }))} />
      {cards.map((card) => (
        <Card key={card.id} card={card} seriesId={seriesId} />
      ))}
    </PageBody>
  );
}

function Card({ card, seriesId }: { readonly card: HazardCard; readonly seriesId: string }) {
  return (
    <details className={styles.card} id={`hazard-${card.id}`}>
      <summary>
        <strong>{card.name}</strong> <span className={styles.soft}>severity {card.severity}</span> {card.isOwn ? <span className={styles.warn}>your own</span> : null}
      </summary>
      <dl className={styles.facts}>
        <dt>Set off by</dt>
        <dd>{card.setOffBy.join('; or ')}</dd>
        <dt>Controls</dt>
        <dd>
          <ol>
            {card.controls.map(({ level, text, isShown }) => (
              <li key={text}>
                <span className={styles.kind}>{level}</span> {text}
                {isShown ? <span className={styles.soft}> (to be seen)</span> : null}
              </li>
            ))}
          </ol>
        </dd>
        <dt>Worn</dt>
        <dd>{card.equipment.length === 0 ? 'nothing protects here' : card.equipment.map(({ text, sign, standard }) => [text, sign, standard].filter(Boolean).join(', ')).join('; ')}</dd>
        <dt>Signs (ISO 7010)</dt>
        <dd>{card.signs.map(({ code, meaning }) => `${code} ${meaning}`).join(' · ')}</dd>
        <dt>On screen</dt>
        <dd>“{card.screen}”</dd>
        <dt>Said</dt>
        <dd>
          “{card.spoken}” <span className={styles.soft}>{card.reading}</span>
        </dd>
        <dt>To be seen</dt>
        <dd>{card.show}</dd>
        {card.deferral === null ? null : (
          <>
            <dt>Leave it when</dt>
            <dd>{card.deferral}</dd>
          </>
        )}
        <dt>Sources</dt>
        <dd>
          <ul>
            {card.sources.map(({ text, status, isUnverified }) => (
              <li key={text}>
                {text} <span className={isUnverified ? styles.warn : styles.soft}>({status})</span>
              </li>
            ))}
          </ul>
        </dd>
      </dl>
      <p className={styles.cardLinks}>
        {card.own === null ? (
          <LinkButton href={`${newRecordPath(seriesId, 'hazard')}?like=${encodeURIComponent(card.id)}`}>Copy it and make it fit where you live</LinkButton>
        ) : (
          <LinkButton href={recordPath(seriesId, 'hazard', card.own.id) ?? ''}>Change or remove</LinkButton>
        )}
      </p>
    </details>
  );
}
