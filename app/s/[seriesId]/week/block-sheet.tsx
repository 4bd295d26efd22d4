import { OctagonAlert, X } from 'lucide-react';
import type { ReactNode } from 'react';
import type { BlockPart, BlockReason, BlockView } from '@/lib/views';
import { pickActed } from './acted-block';
import { BlockActions } from './block-actions';
import { BlockSign, sheetId } from './block-sign';
import { RecordLink } from './record-link';
import { WhyHere } from './why-here';
import styles from './block-sheet.module.css';

interface BlockSheetProps {
  readonly block: BlockView;
  readonly seriesId: string;
}

const isWaiting = (kind: BlockView['kind']): boolean => kind === 'cure' || kind === 'away' || kind === 'shut';

/** What a block is and why it stands where it does; opened by every button that names it, closed by Escape. */
export function BlockSheet({ block, seriesId }: BlockSheetProps) {
  const id = sheetId(block.id);
  return (
    <dialog id={id} popover="auto" aria-labelledby={`${id}-title`} className={styles.sheet}>
      <header className={styles.head}>
        <p className={`${styles.kind} ${styles[block.kind]}`}>
          <BlockSign kind={block.kind} size={18} /> {block.kindWord}
          {block.isDone ? ' · done' : ''}
          {block.isPinned ? ' · pinned' : ''}
        </p>
        <button type="button" className={styles.close} popoverTarget={id} popoverTargetAction="hide" aria-label="Close" autoFocus>
          <X size={22} aria-hidden />
        </button>
        <h2 id={`${id}-title`}>{block.title}</h2>
        <p className={styles.when}>
          {block.when} <span className={styles.soft}>({block.length})</span>
        </p>
      </header>
      {block.isIrreversible && block.kind === 'task' ? (
        <p className={styles.once}>
          <OctagonAlert size={20} aria-hidden /> Once only: it cannot be done or filmed a second time.
        </p>
      ) : null}
      <BlockActions block={pickActed(block)} seriesId={seriesId} />
      <Reasons reasons={block.because} isWait={isWaiting(block.kind)} />
      {isWaiting(block.kind) || block.isDone ? null : <WhyHere blockId={block.id} seriesId={seriesId} />}
      <Facts block={block} seriesId={seriesId} />
      <p>
        <RecordLink seriesId={seriesId} to={block.subject}>Open the {block.subject.kind === 'task' ? 'task' : 'outside job'} “{block.subject.name}”</RecordLink>
      </p>
    </dialog>
  );
}

function Reasons({ reasons, isWait }: { readonly reasons: readonly BlockReason[]; readonly isWait: boolean }) {
  if (isWait && reasons.length === 0) return null;
  return (
    <section className={styles.part}>
      <h3>Why here</h3>
      {reasons.length === 0 ? <p>Nothing holds it back: this is the first place it could have.</p> : null}
      <ol className={styles.reasons}>
        {reasons.map((reason) => (
          <li key={reason.text}>
            <p>{reason.text}</p>
            {reason.change ? <p className={styles.change}>To free it: {reason.change}</p> : null}
          </li>
        ))}
      </ol>
    </section>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className={styles.fact}>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

const hasAny = (list: readonly unknown[]): boolean => list.length > 0;

function describePart(part: BlockPart): string {
  if (part.to !== null) return `${part.from ?? 'any state'} → ${part.to}`;
  return part.from === null ? 'in any state' : `stays ${part.from}`;
}

/** Longer than most: one line a fact, each only where there is one. */
function Facts({ block, seriesId }: BlockSheetProps) {
  return (
    <dl className={styles.facts}>
      {hasAny(block.crew) ? <Fact name="Who">{block.crew.join(', ')}</Fact> : null}
      {block.place ? <Fact name="Where">{block.place}</Fact> : null}
      {hasAny(block.parts) ? (
        <Fact name="Parts">
          <ul className="plain">
            {block.parts.map((part) => (
              <li key={part.id}>
                <strong>{part.name}</strong> {describePart(part)}
              </li>
            ))}
          </ul>
        </Fact>
      ) : null}
      {hasAny(block.stages) ? (
        <Fact name="Stages">
          <ul className="plain">
            {block.stages.map((stage) => (
              <li key={stage.label}>
                {stage.label} <strong>{stage.when}</strong>
              </li>
            ))}
          </ul>
        </Fact>
      ) : null}
      {hasAny(block.shots) ? (
        <Fact name="To film">
          <ul className="plain">
            {block.shots.map((shot) => (
              <li key={`${shot.purpose}:${shot.name}`}>
                {shot.name} <span className={styles.soft}>({shot.purpose}, {shot.minutes} min{shot.mustHave ? ', must have' : ''}{shot.risk === null ? '' : `; ${shot.risk}`})</span>
              </li>
            ))}
          </ul>
        </Fact>
      ) : null}
      {block.coverage ? <Fact name="Coverage">{block.coverage}</Fact> : null}
      {hasAny(block.layOut) ? <Fact name="Lay out">{block.layOut.join(', ')}</Fact> : null}
      {hasAny(block.equipment) ? <Fact name="Equipment">{block.equipment.join(', ')}</Fact> : null}
      {hasAny(block.materials) ? <Fact name="Material">{block.materials.join(', ')}</Fact> : null}
      {hasAny(block.cautions) ? (
        <Fact name="Cautions">
          <ul className={`plain ${styles.cautions}`}>
            {block.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Fact>
      ) : null}
      {block.manualReference ? <Fact name="Manual">{block.manualReference}</Fact> : null}
      {block.episode ? <Fact name="Episode"><RecordLink seriesId={seriesId} to={block.episode}>{block.episode.name}</RecordLink></Fact> : null}
    </dl>
  );
}
