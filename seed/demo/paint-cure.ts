import { DEFAULT_CURE, type MaterialCure } from '@/lib/build';
import { celsius } from '@/lib/units';

/** What the demo assumes of every material: it pauses under 4 °C (MIL-HDBK-1110, 7.4.1: not if 4.4 °C is expected), and is abraded late. */
export const paintCure: MaterialCure = { ...DEFAULT_CURE, minimumUntilDry: celsius(4) };
