import type { Camera } from '@/lib/build';
import type { CameraModel } from '../generated/models';
import { plainTable } from '../table';

export const cameras = plainTable<Camera, CameraModel>({
  kind: 'camera',
  model: (db) => db.camera,
  toRow: ({ rate, isDropFrame, clockOffset }, common) => ({ ...common, rateNumerator: rate.numerator, rateDenominator: rate.denominator, isDropFrame, clockOffset }),
  fromRow: ({ id, revision, position, name, rateNumerator, rateDenominator, isDropFrame, clockOffset }) => ({
    kind: 'camera', id, revision, order: position, name, rate: { numerator: rateNumerator, denominator: rateDenominator }, isDropFrame, clockOffset,
  }),
});
