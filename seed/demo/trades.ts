/** Outside trades, the jobs they are given, and what they quote in working days. */
import type { HoursDraft, JobDraft, TradeDraft } from './draft';

const weekdays = (from: string, to: string): HoursDraft => [[1, from, to], [2, from, to], [3, from, to], [4, from, to], [5, from, to]];

export const trades: readonly TradeDraft[] = [
  { id: 'trade-galvanizer', name: 'Zinc bath by the canal', craft: 'galvanizer', hours: weekdays('07:30', '15:30'), closed: [{ fromDay: 77, toDay: 79, why: 'bath skimmed' }], trip: 120, contact: 'Yard office; bring the drawing of the vent holes' },
  { id: 'trade-powder', name: 'Powder shop at the old laundry', craft: 'powder coater', hours: weekdays('08:00', '16:30'), closed: [{ fromDay: 63, toDay: 64, why: 'oven inspected' }], trip: 90, contact: 'Counter; mark every face to be masked' },
  { id: 'trade-plater', name: 'Plating works under the viaduct', craft: 'electroplater', hours: [...weekdays('08:30', '16:00')].filter(([day]) => day !== 3), closed: [], trip: 90, contact: 'Counter; polishes first, ask for the weight list' },
  { id: 'trade-machinist', name: 'Engine machinist at the lock', craft: 'machinist', hours: weekdays('08:30', '17:00'), closed: [{ fromDay: 49, toDay: 50, why: 'away at a course' }], trip: 75, contact: 'Leave the piston with the barrel; clearance on the label' },
  { id: 'trade-wheels', name: 'Wheel builder on the hill', craft: 'wheel builder', hours: [[2, '09:00', '17:00'], [3, '09:00', '17:00'], [4, '09:00', '17:00'], [5, '09:00', '17:00']], closed: [], trip: 120, contact: 'By appointment; offset sheet with each hub' },
  { id: 'trade-tyres', name: 'Tyre bay at the ring road', craft: 'tyre fitter', hours: [...weekdays('08:30', '17:30'), [6, '08:30', '12:30']], closed: [], trip: 75, contact: 'Say that the rims are painted: soft levers, rim guards' },
  { id: 'trade-upholsterer', name: 'Trim room above the bakery', craft: 'upholsterer', hours: [[1, '10:00', '16:00'], [2, '10:00', '16:00'], [4, '10:00', '16:00'], [5, '10:00', '16:00']], closed: [{ fromDay: 42, toDay: 43, why: 'trade fair' }], trip: 60, contact: 'Bring the old cover as the pattern' },
  { id: 'trade-signs', name: 'Sign writer in the boat shed', craft: 'sign writer', hours: [[2, '10:00', '17:00'], [3, '10:00', '17:00'], [4, '10:00', '17:00'], [5, '10:00', '15:00']], closed: [], trip: 90, contact: 'Wants the photographs with the scale in them' },
  { id: 'trade-paint-shop', name: 'Spray booth at the bus garage', craft: 'paint shop', hours: weekdays('08:00', '17:00'), closed: [], trip: 75, contact: 'Two-pack is sprayed there, in an air-fed booth, never in the arch' },
  { id: 'trade-brakes', name: 'Brake reliner in the goods yard', craft: 'brake reliner', hours: weekdays('08:30', '16:30'), closed: [], trip: 60, contact: 'Shoes wet, double-bagged, labelled as old lining' },
  { id: 'trade-magneto', name: 'Magneto rewinder at the signal box', craft: 'magneto rewinder', hours: [[1, '09:00', '15:00'], [3, '09:00', '15:00'], [5, '09:00', '15:00']], closed: [], trip: 90, contact: 'Counter; say which way it turns' },
];

export const jobs: readonly JobDraft[] = [
  { id: 'job-bright-work', name: 'Replate handlebar, controls and exhaust', trade: 'trade-plater', episode: null, parts: [['part-handlebar', 'off', 'replated'], ['part-controls', 'off', 'replated'], ['part-exhaust', 'off', 'replated']], quote: [12, 15, 20], crew: 1, droppedOff: { day: -4, at: '10:30' }, promisedDay: 18 },
  { id: 'job-magneto', name: 'Rewind the magneto', trade: 'trade-magneto', episode: null, parts: [['part-magneto', 'off', 'rewound']], quote: [6, 9, 14], crew: 1 },
  { id: 'job-seat', name: 'Re-cover the saddle', trade: 'trade-upholsterer', episode: null, parts: [['part-saddle', 'off', 'covered']], quote: [8, 10, 15], crew: 1 },
  { id: 'job-tank', name: 'Spray the tank in two-pack, air-fed booth', trade: 'trade-paint-shop', episode: null, parts: [['part-tank', 'pressure-tested', 'painted']], quote: [8, 10, 15], crew: 1 },
  { id: 'job-frame-powder', name: 'Blast and powder coat frame, arm, yokes, stand and hubs', trade: 'trade-powder', episode: 'ep-powder', parts: [['part-frame', 'repaired', 'powder-coated'], ['part-swinging-arm', 'bare', 'powder-coated'], ['part-yokes', 'bare', 'powder-coated'], ['part-stand', 'off', 'powder-coated'], ['part-front-hub', 'bare', 'powder-coated'], ['part-rear-hub', 'bare', 'powder-coated'], ['part-sidecar-hub', 'bare', 'powder-coated']], quote: [6, 8, 12], crew: 2 },
  { id: 'job-galvanize', name: 'Hot-dip galvanize sidecar chassis and trailing arm', trade: 'trade-galvanizer', episode: 'ep-zinc', parts: [['part-chassis', 'vented', 'galvanized'], ['part-trailing-arm', 'bare', 'galvanized']], quote: [4, 6, 10], crew: 2 },
  { id: 'job-couplings', name: 'Zinc plate coupling struts and eye bolts', trade: 'trade-plater', episode: null, parts: [['part-couplings', 'cleaned', 'zinc-plated']], quote: [5, 8, 12], crew: 1 },
  { id: 'job-bore', name: 'Bore and hone the barrel to the new piston', trade: 'trade-machinist', episode: 'ep-oversize', parts: [['part-barrel', 'measured', 'bored'], ['part-piston', 'new', 'matched']], quote: [5, 7, 12], crew: 1 },
  { id: 'job-crank', name: 'New big end, crankshaft trued', trade: 'trade-machinist', episode: null, parts: [['part-crankshaft', 'measured', 'trued']], quote: [8, 12, 18], crew: 1 },
  { id: 'job-head', name: 'Cut valve seats, fit guides', trade: 'trade-machinist', episode: null, parts: [['part-head', 'bare', 'seats-cut']], quote: [5, 7, 12], crew: 1 },
  { id: 'job-shoes', name: 'Reline rear and sidecar brake shoes', trade: 'trade-brakes', episode: null, parts: [['part-shoes', 'off', 'relined']], quote: [4, 5, 8], crew: 1 },
  { id: 'job-wheels', name: 'Lace and true three wheels', trade: 'trade-wheels', episode: 'ep-tyres', parts: [['part-front-rim', 'painted', 'laced'], ['part-rear-rim', 'painted', 'laced'], ['part-sidecar-rim', 'painted', 'laced'], ['part-front-hub', 'bearings-in', 'laced'], ['part-rear-hub', 'bearings-in', 'laced'], ['part-sidecar-hub', 'bearings-in', 'laced'], ['part-spokes', 'new', 'laced']], quote: [5, 7, 11], crew: 1 },
  { id: 'job-tyres', name: 'Fit tyres to the painted rims', trade: 'trade-tyres', episode: 'ep-tyres', parts: [['part-front-rim', 'laced', 'tyred'], ['part-rear-rim', 'laced', 'tyred'], ['part-sidecar-rim', 'laced', 'tyred'], ['part-tyres', 'new', 'fitted']], quote: [1, 1, 2], crew: 1 },
  { id: 'job-sign', name: 'Letter the box by hand from the photographs', trade: 'trade-signs', episode: 'ep-sign', parts: [['part-body', 'enamelled', 'lettered'], ['part-door', 'enamelled', 'lettered']], quote: [3, 5, 8], crew: 2 },
];
