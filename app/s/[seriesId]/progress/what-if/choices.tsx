import Link from 'next/link';
import { LinkButton } from '@/app/_ui';
import type { WhatIfChoice, WhatIfView } from '@/lib/views';
import styles from '../progress.module.css';

/** Address that shows these what-ifs, `kind:target` pieces. */
export type PathOf = (pieces: readonly string[]) => string;

/** Others that it could have happened to, shown for the last what-if. */
const MOST_TARGETS = 12;

/** What is chosen, as pieces of an address. */
export const piecesOf = (view: WhatIfView): string[] => view.chosen.map(({ kind, target }) => (target === '' ? kind : `${kind}:${target}`));

interface ChoicesProps {
  readonly view: WhatIfView;
  readonly pathOf: PathOf;
}

/** The ten ways in which a week breaks, one tap each; a second tap adds to the first. */
export function Choices({ pathOf, view }: ChoicesProps) {
  return (
    <ul className={`plain ${styles.choices}`}>
      {view.choices.map((choice) => <li key={choice.kind}><Choice choice={choice} view={view} pathOf={pathOf} /></li>)}
    </ul>
  );
}

function Choice({ choice, pathOf, view }: ChoicesProps & { readonly choice: WhatIfChoice }) {
  const first = choice.targets[0];
  if (first === undefined) return <span className={styles.cannot}>{choice.title} <span>{choice.nothing}</span></span>;
  const isChosen = view.chosen.some((one) => one.kind === choice.kind);
  const piece = first.id === '' ? choice.kind : `${choice.kind}:${first.id}`;
  return (
    <LinkButton prefetch={false} aria-current={isChosen ? 'true' : undefined} href={pathOf(isChosen ? piecesOf(view) : [...piecesOf(view), piece])}>
      {choice.title}{isChosen ? ' (chosen)' : ''}
    </LinkButton>
  );
}

/** How much of it, and whom else it may have happened to: about the last one chosen. */
export function Precisely({ pathOf, view }: ChoicesProps) {
  const last = view.chosen.at(-1);
  if (last === undefined) return null;
  const before = piecesOf(view).slice(0, -1);
  const others = (view.choices.find((choice) => choice.kind === last.kind)?.targets ?? []).filter(({ id }) => id !== last.target && last.sizes.every((size) => size.id !== id));
  return (
    <>
      {last.sizes.length === 0 ? null : (
        <ul className={`plain ${styles.choices}`} aria-label="How late">
          {last.sizes.map((size) => (
            <li key={size.id}><LinkButton look="quiet" prefetch={false} aria-current={size.id === last.target ? 'true' : undefined} href={pathOf([...before, `${last.kind}:${size.id}`])}>{size.name}</LinkButton></li>
          ))}
        </ul>
      )}
      {others.length === 0 ? null : (
        <details>
          <summary>{last.title}: {last.targetName}. Or was it another?</summary>
          <ul className={`plain ${styles.choices}`}>
            {others.slice(0, MOST_TARGETS).map((target) => (
              <li key={target.id}><LinkButton look="quiet" prefetch={false} href={pathOf([...before, `${last.kind}:${target.id}`])}>{target.name}</LinkButton></li>
            ))}
          </ul>
        </details>
      )}
      <p><Link href={pathOf([])} prefetch={false}>Start over</Link></p>
    </>
  );
}
