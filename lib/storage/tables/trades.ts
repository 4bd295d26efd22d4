import type { Trade } from '@/lib/build';
import { minutes } from '@/lib/units';
import type { TradeModel } from '../generated/models';
import { readJson } from '../column';
import { plainTable } from '../table';
import { dateSpans, weeklyHours } from './values';

export const trades = plainTable<Trade, TradeModel>({
  kind: 'trade',
  model: (db) => db.trade,
  toRow: ({ craft, openHours, closed, trip, contact }, common) => ({
    ...common,
    craft,
    openHoursJson: JSON.stringify(openHours),
    closedJson: JSON.stringify(closed),
    trip,
    contact,
  }),
  fromRow: ({ id, revision, position, name, craft, openHoursJson, closedJson, trip, contact }) => ({
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
  }),
});
