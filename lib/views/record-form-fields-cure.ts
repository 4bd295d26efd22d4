/** What is asked about climate, cure and coating systems. Groups that few people fill in are folded away. */
import type { FieldSpec, FormSection } from './record-form-model';
import { nameField, options, WEEKDAYS } from './record-form-parts';

const number = (name: string, label: string, unit: string, help?: string): FieldSpec => ({ type: 'number', name, label, unit, ...(help === undefined ? {} : { help }) });
const maybe = (name: string, label: string, unit: string, help?: string): FieldSpec => ({ type: 'number', name, label, unit, isOptional: true, ...(help === undefined ? {} : { help }) });
const range = (name: string, label: string, unit: string): FieldSpec => ({
  type: 'group', name, label, fields: [maybe('low', 'From', unit), maybe('high', 'To', unit)],
});

const LAWS = options(['doubling', 'arrhenius', 'maturity', 'moisture', 'steady'], {
  doubling: 'doubles with warmth (the kelvins above)', arrhenius: 'Arrhenius: Q in kelvins', maturity: 'maturity: datum in °C',
  moisture: 'cures with moisture: % humidity at the reference', steady: 'does not follow the workshop (baked, or between metal)',
});

const SOURCED = options(
  ['stages', 'law', 'minimumTemperature', 'belowMinimum', 'maximumTemperature', 'humidity', 'dewMargin', 'recoatRows', 'potLife', 'thinner', 'lateWork', 'bake', 'depthPerRootDay'],
  {
    stages: 'drying times', law: 'rate', minimumTemperature: 'lowest temperature', belowMinimum: 'what cold does', maximumTemperature: 'highest temperature', dewMargin: 'dew margin',
    recoatRows: 'recoat table', potLife: 'pot life', lateWork: 'work after a missed window', depthPerRootDay: 'depth a day',
  },
);

const coldAndDamp: readonly FieldSpec[] = [
  { type: 'length', clock: 'elapsed', name: 'flashOff', label: 'Flash-off', help: 'Until the next wet pass.' },
  maybe('minimumUntilDry', 'Not below, until touch dry', '°C', 'Empty: the same as to lay it.'),
  {
    type: 'choice', codec: 'text', name: 'belowMinimum', label: 'What cold does',
    options: options(['pauses', 'never forms', 'surface fault'], { pauses: 'it waits and goes on in the warmth', 'never forms': 'the film never forms: strip it', 'surface fault': 'a fault on the surface: clean it' }),
  },
  number('maximumTemperature', 'Not above', '°C'),
  range('humidity', 'Humidity of the air', '%'),
  number('dewMargin', 'Surface above the dew point by', 'K', '3 K unless the data sheet says more.'),
  {
    type: 'choice', codec: 'text', name: 'lateWork', label: 'After a missed recoat window',
    options: options(['none', 'abrade', 'clean and tack coat', 'strip'], { none: 'nothing' }),
  },
];

const rare: readonly FieldSpec[] = [
  { type: 'group', name: 'law', label: 'How the rate follows the temperature', fields: [{ type: 'choice', codec: 'text', name: 'kind', label: 'Law', options: LAWS }, maybe('value', 'Its value', '')] },
  {
    type: 'list', name: 'recoatRows', label: 'Recoat table', item: 'row', isOptional: true, whenNone: 'None: the window of the drying times holds.',
    help: 'From cold to warm, by the hottest surface that is held for an hour between the coats.',
    fields: [number('from', 'Surface from', '°C'), number('to', 'to', '°C'), number('min', 'Opens after', 'h'), number('max', 'Closes after', 'h')],
  },
  {
    type: 'group', name: 'pot', label: 'How the pot life follows warmth',
    fields: [
      number('at', 'Pot life holds at', '°C'), number('halvesPer', 'Halves for every', 'K warmer'),
      { type: 'length', clock: 'elapsed', name: 'induction', label: 'Induction', help: 'To stand after mixing.' },
      { type: 'check', name: 'isInductionIncluded', label: 'The pot life holds the induction' },
    ],
  },
  range('thinner', 'Thinner by volume', '%'),
  { type: 'group', name: 'bake', label: 'Bake', fields: [maybe('metalTemperature', 'Metal at', '°C'), { type: 'length', clock: 'elapsed', name: 'hold', label: 'Hold', isOptional: true }] },
  maybe('depthPerRootDay', 'Depth after a day, cured by moisture', 'mm'),
  { type: 'check', name: 'isConfinedOnly', label: 'Cures only between metal faces that shut out air' },
  { type: 'lines', name: 'cautions', label: 'Cautions', isOptional: true },
  {
    type: 'list', name: 'sources', label: 'Source of each value', item: 'source', isOptional: true, whenNone: 'None: the pages say so beside each value.',
    fields: [
      { type: 'choice', codec: 'text', name: 'field', label: 'Value', options: SOURCED },
      { type: 'choice', codec: 'text', name: 'kind', label: 'Known from', options: options(['read', 'memory', 'none'], { read: 'read there', memory: 'memory', none: 'common practice, no source' }) },
      { type: 'text', name: 'text', label: 'Place', isOptional: true },
    ],
  },
];

/** One group of the record, drawn in two sections: the second is folded away. */
export const MATERIAL_CURE_SECTIONS: readonly FormSection[] = [
  { title: 'Cold, damp, windows and sources', isRare: true, fields: [{ type: 'group', name: 'cure', label: 'From the data sheet', fields: [...coldAndDamp, ...rare] }] },
];

const roomAndHeater: readonly FieldSpec[] = [
  {
    type: 'group', name: 'room', label: 'Room',
    fields: [
      number('timeConstant', 'Time constant', 'h', 'Hours in which a difference to outside falls to 37 %.'), number('offset', 'Warmer than outside without heating by', 'K'),
      number('heatLoss', 'Heat loss', 'W/K'), number('volume', 'Volume', 'm³'), number('airChanges', 'Air changes', 'an hour'),
      number('moisture', 'Water from people and wet things', 'kg an hour'), number('surfaceLag', 'Surface lags behind the air by', 'h'),
    ],
  },
  {
    type: 'group', name: 'heater', label: 'Heater',
    fields: [
      number('kilowatts', 'Power', 'kW'),
      { type: 'choice', codec: 'text', name: 'kind', label: 'Kind', options: options(['electric', 'flued burner', 'flueless burner'], { 'flueless burner': 'flueless burner (gives off water)' }) },
      { type: 'choice', codec: 'text', name: 'fuel', label: 'Fuel', none: 'none', options: options(['propane', 'natural gas', 'paraffin']) },
      { type: 'check', name: 'isIgnitionSafe', label: 'Made for air that holds solvent', help: 'Nothing in it glows, sparks or burns in the room’s air (room-sealed, or a blower outside). Any other keeps solvent coats out of its hours.' },
    ],
  },
];

export const WORKSHOP_SECTIONS: readonly FormSection[] = [
  {
    title: 'The room and its heater', isRare: true,
    help: 'With weather recorded, these give the temperature of every hour. Readings of a logger can fit the first two on the Climate page.',
    fields: [{
      type: 'group', name: 'workshop', label: 'Workshop',
      fields: [
        ...roomAndHeater,
        number('pricePerKwh', 'A kWh of heat costs', 'money'),
        { type: 'text', name: 'currency', label: 'Money', help: 'EUR, GBP.' },
        {
          type: 'list', name: 'airs', label: 'Airs with a room or heater of their own', item: 'air', isOptional: true, whenNone: 'None: every air is like the room above.',
          fields: [{ type: 'text', name: 'airZone', label: 'Air', suggest: 'airZones' }, ...roomAndHeater],
        },
        { type: 'length', clock: 'elapsed', name: 'dustSettles', label: 'Dust settles in', help: '30 to 60 min is common practice, no source.' },
      ],
    }],
  },
];

export const TRADE_TERMS_SECTIONS: readonly FormSection[] = [
  {
    title: 'Holidays, batches and preparation', isRare: true,
    fields: [{
      type: 'group', name: 'terms', label: 'Terms',
      fields: [
        {
          type: 'choice', codec: 'text', name: 'country', label: 'Keeps the public holidays of', options: 'countries', none: 'no country',
          help: 'Closed on these days, besides the closed days above.',
        },
        { type: 'text', name: 'region', label: 'Region', isOptional: true, help: 'Name or code, where holidays differ within the country: England, ENG. Empty: those of the whole country.' },
        { type: 'choices', name: 'batchDays', label: 'Batches start on', options: WEEKDAYS, isNumeric: true, whenNone: 'Any open day.', isOptional: true },
        { type: 'choices', name: 'collectionDays', label: 'Collection on', options: WEEKDAYS, isNumeric: true, whenNone: 'Any open day.', isOptional: true },
        { type: 'group', name: 'minimum', label: 'Least it takes', fields: [maybe('amount', 'Amount', ''), { type: 'text', name: 'unit', label: 'Unit', isOptional: true, help: 'kg, pieces, m².' }] },
        { type: 'lines', name: 'preparations', label: 'Before drop-off', isOptional: true, help: 'One a line: vent holes drilled, threads masked.' },
        {
          type: 'group', name: 'returnWindow', label: 'Work after the return',
          fields: [maybe('hours', 'Within', 'h'), { type: 'text', name: 'afterwards', label: 'Later than that', isOptional: true, help: 'What is owed first: clean and profile.' }],
        },
      ],
    }],
  },
];

export const JOB_PROCESS_SECTIONS: readonly FormSection[] = [
  {
    title: 'Preparation and process', isRare: true,
    fields: [{
      type: 'group', name: 'process', label: 'Process',
      fields: [
        { type: 'list', name: 'preparations', label: 'Preparations', item: 'preparation', isOptional: true, whenNone: 'None.', fields: [{ type: 'text', name: 'name', label: 'What' }, { type: 'moment', name: 'doneAt', label: 'Done at', isOptional: true }] },
        maybe('amount', 'Amount', 'in the unit of the trade'),
        { type: 'moment', name: 'readyAt', label: 'Said to be ready at', isOptional: true, help: 'Learning counts to here, not to the day you had time to collect it.' },
        { type: 'moment', name: 'treatedAt', label: 'Out of the bath or oven at', isOptional: true },
        { type: 'check', name: 'isQuenched', label: 'Quenched or passivated' },
        {
          type: 'group', name: 'vents', label: 'Closed hollow section',
          fields: [maybe('width', 'Width', 'mm'), maybe('height', 'Height', 'mm'), maybe('diameter', 'Vent holes', 'mm'), { type: 'check', name: 'isDrilledAfter', label: 'Drilled only after galvanizing' }],
        },
      ],
    }],
  },
];

export const COATING_SYSTEM_SECTIONS: readonly FormSection[] = [
  {
    title: 'The coating system',
    fields: [
      nameField('“Wheel rims, brushed”.'),
      {
        type: 'list', name: 'layers', label: 'Layers', item: 'layer', whenNone: 'A system needs at least one.', help: 'In the order they go on.',
        fields: [
          { type: 'choice', codec: 'text', name: 'materialId', label: 'Material', options: 'materials' },
          number('coats', 'Coats', 'coats'),
          { type: 'length', clock: 'worked', name: 'work', label: 'Work of a coat' },
          { type: 'choice', codec: 'text', name: 'between', label: 'Between its coats', options: options(['recoat', 'wet on wet'], { recoat: 'wait for the recoat window', 'wet on wet': 'wet on wet, after the flash-off' }) },
          { type: 'check', name: 'isAbradedBefore', label: 'Abraded before it in any case' },
        ],
      },
      { type: 'length', clock: 'worked', name: 'abrading', label: 'Work of an abrasion' },
    ],
  },
];

const airZone: FieldSpec = { type: 'text', name: 'airZone', label: 'Air', suggest: 'airZones', help: 'The word that places with the same air share.' };

export const HEATING_RUN_SECTIONS: readonly FormSection[] = [
  { title: 'The heating run', fields: [nameField('“Night after the enamel”.'), airZone, { type: 'moment', name: 'start', label: 'From' }, { type: 'moment', name: 'end', label: 'To' }, number('setPoint', 'Heated to', '°C')] },
];

export const WEATHER_SECTIONS: readonly FormSection[] = [
  {
    title: 'The weather',
    fields: [
      nameField('“Usual lows and highs”, “Forecast of the week”.'),
      {
        type: 'list', name: 'days', label: 'Days', item: 'day', whenNone: 'No day yet.', help: 'Days between two rows lie on a line between them; where two tables have a day, the later table counts.',
        fields: [{ type: 'date', name: 'date', label: 'Day' }, number('low', 'Low', '°C'), number('high', 'High', '°C'), maybe('dewPoint', 'Dew point', '°C'), maybe('humidity', 'Mean humidity', '%')],
      },
    ],
  },
];

export const READINGS_SECTIONS: readonly FormSection[] = [{ title: 'The readings', fields: [nameField('Which logger, and where it lay.'), airZone] }];
