'use client';

import type { KeyboardEvent } from 'react';
import { ArrowDown, ArrowUp } from 'lucide-react';
import { Button } from '@/app/_ui';
import styles from './move-controls.module.css';

interface MoveControlsProps {
  /** The segment's name. */
  readonly name: string;
  readonly place: number;
  readonly count: number;
  readonly isPending: boolean;
  readonly otherEpisodes: readonly { readonly id: string; readonly name: string }[];
  /** It can be taken out of its episode. */
  readonly hasNone?: boolean;
  readonly onPlace: (place: number) => void;
  readonly onLeave: (episodeId: string | null) => void;
}

/** Earlier, later, elsewhere. With the keyboard: the arrow keys on either button move it too. */
export function MoveControls({ name, place, count, isPending, otherEpisodes, hasNone = true, onPlace, onLeave }: MoveControlsProps) {
  const step = (by: number) => {
    if (place + by >= 0 && place + by < count) onPlace(place + by);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    step(event.key === 'ArrowUp' ? -1 : 1);
  };
  return (
    <div className={styles.controls}>
      <Button look="quiet" onClick={() => step(-1)} onKeyDown={onKeyDown} aria-label={`Move ${name} earlier`} aria-disabled={place === 0 || isPending}><ArrowUp size={18} aria-hidden /></Button>
      <Button look="quiet" onClick={() => step(1)} onKeyDown={onKeyDown} aria-label={`Move ${name} later`} aria-disabled={place === count - 1 || isPending}><ArrowDown size={18} aria-hidden /></Button>
      <select className={styles.select} value="" aria-label={`Move ${name} to another episode`} onChange={(event) => onLeave(event.target.value === 'none' ? null : event.target.value)}>
        <option value="" disabled>Move to …</option>
        {hasNone ? <option value="none">no episode</option> : null}
        {otherEpisodes.map((episode) => <option key={episode.id} value={episode.id}>{episode.name}</option>)}
      </select>
    </div>
  );
}
