import type { Trade } from '@/lib/build';
import { minutes } from '@/lib/units';
import type { TradeModel } from '../generated/models';
import { readJson } from '../column';
import { plainTable } from '../table';
import { termsShape } from './cure-values';
import { dateSpans, weeklyHours } from './values';

export const trades = plainTable<Trade, TradeModel>({
  kind: 'trade',
  model: (db) => db.trade,
  toRow: ({ craft, openHours, closed, trip, contact, terms }, common) => ({
    ...common,
    craft,
    openHoursJson: JSON.stringify(openHours),
    closedJson: JSON.stringify(closed),
    trip,
    contact,
    termsJson: terms === undefined ? null : JSON.stringify(terms),
  }),
  fromRow: ({ id, revision, position, name, craft, openHoursJson, closedJson, trip, contact, termsJson }) => ({
    kind: 'trade',
    id,
    revision,
    order: position,
    name,
    craft,
    openHours: readJson(weeklyHours, openHoursJson, { table: 'Trade', row: id, column: 'openHoursJson' }),
    closed: readJson(dateSpans, closedJson, { table: 'Trade', row: id, column: 'closedJson' }),
    trip: minutes(trip),
    contact,
    ...(termsJson === null ? {} : { terms: readJson(termsShape, termsJson, { table: 'Trade', row: id, column: 'termsJson' }) }),
  }),
});
