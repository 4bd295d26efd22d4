import { Clapperboard, Hammer, Hourglass, PackageOpen, PaintRoller, Truck, Undo2, Wind, type LucideIcon } from 'lucide-react';
import type { BlockView } from '@/lib/views';

const SIGNS: Record<BlockView['kind'], LucideIcon> = {
  task: Hammer,
  'before-shot': Clapperboard,
  'late-work': PaintRoller,
  'drop-off': Truck,
  collection: Undo2,
  away: PackageOpen,
  cure: Hourglass,
  shut: Wind,
};

/** The icon of a kind of block; the word always stands beside it or in the button's name. */
export function BlockSign({ kind, size = 16 }: { readonly kind: BlockView['kind']; readonly size?: number }) {
  const Icon = SIGNS[kind];
  return <Icon size={size} aria-hidden />;
}

/** Id of the sheet that a block opens. */
export function sheetId(blockId: string): string {
  return `sheet-${blockId.replaceAll(/[^\w-]/g, '-')}`;
}
