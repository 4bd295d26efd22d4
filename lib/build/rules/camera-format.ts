import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A camera counts whole frames, and leaves labels out at 29.97 and 59.94 frames a second only (SMPTE ST 12-1). */
export const checkCameras: Rule = ({ cameras }) =>
  cameras.flatMap((camera) => {
    const { numerator, denominator } = camera.rate;
    const subjects = subjectsOf(camera);
    if (![numerator, denominator].every((value) => Number.isInteger(value) && value >= 1)) {
      return [issue('camera-rate', `${startWith(camera)} records ${formatNumber(numerator)}/${formatNumber(denominator)} frames a second; both must be whole numbers from 1.`,
        'Choose its frame rate again.', { path: ['rate'], subjects })];
    }
    const hasDropFrame = denominator === 1001 && (numerator === 30_000 || numerator === 60_000);
    if (!camera.isDropFrame || hasDropFrame) return [];
    return [issue('camera-drop-frame', `${startWith(camera)} is said to count drop-frame at ${formatNumber(numerator / denominator)} frames a second; drop-frame exists at 29.97 and 59.94 only.`,
      'Take the drop-frame mark out, or correct the rate.', { path: ['isDropFrame'], subjects })];
  });
