/** The library of generic materials, to be looked through and copied. */
import { formatLength } from '@/lib/calendar';
import { cautionsOf, MATERIAL_LIBRARY, unsourcedFields, type CoatMaterial, type SourcedField, type ValueSource } from '@/lib/cure';

export interface LibraryValue {
  readonly label: string;
  readonly value: string;
  /** Where it comes from, or that it has no source. */
  readonly source: string;
  readonly isSourced: boolean;
}

export interface LibraryMaterial {
  readonly id: string;
  readonly name: string;
  readonly sort: string;
  readonly values: readonly LibraryValue[];
  readonly unsourced: number;
  readonly cautions: readonly string[];
}

function saySource(source: ValueSource | undefined): string {
  if (source === undefined) return 'no source';
  return source.kind === 'memory' ? `from memory: ${source.text}` : source.text;
}

const degrees = (value: number): string => `${value} °C`;
const between = (low: number | null, high: number | null, unit: string): string =>
  low === null ? `at most ${high} ${unit}` : high === null ? `at least ${low} ${unit}` : `${low} to ${high} ${unit}`;

function sayStages({ stages, referenceTemperature }: CoatMaterial): string {
  const until = stages.recoatUntil === null ? 'no closing' : `to ${formatLength(stages.recoatUntil)}`;
  const flash = stages.flashOff > 0 ? `flash-off ${formatLength(stages.flashOff)}, ` : '';
  return `${flash}touch dry ${formatLength(stages.touchDry)}, recoat from ${formatLength(stages.recoatFrom)} ${until}, handle ${formatLength(stages.handle)}, cured ${formatLength(stages.fullCure)}; at ${degrees(referenceTemperature)}`;
}

function sayLaw({ law }: CoatMaterial): string {
  switch (law.kind) {
    case 'doubling': return `twice as fast for every ${law.per} K`;
    case 'arrhenius': return `Arrhenius, Q = ${law.activation} K`;
    case 'maturity': return `with the degrees above ${law.datum} °C`;
    case 'moisture': return `with the moisture of the air, ${law.humidity} % at the reference`;
    case 'steady': return 'does not follow the workshop';
  }
}

const LATE = { none: 'nothing', abrade: 'abrade', 'clean and tack coat': 'clean, then a tack coat', strip: 'strip' } as const;

function listValues(material: CoatMaterial): readonly (readonly [SourcedField, string, string | null])[] {
  const { humidity, potLife, thinner, bake, recoatRows } = material;
  return [
    ['stages', 'Drying', sayStages(material)],
    ['law', 'Rate', sayLaw(material)],
    ['minimumTemperature', 'Not below', `${degrees(material.minimumTemperature)}, until dry ${degrees(material.minimumUntilDry)}`],
    ['belowMinimum', 'In the cold', { pauses: 'waits and goes on', 'never forms': 'the film never forms', 'surface fault': 'a fault on the surface' }[material.belowMinimum]],
    ['maximumTemperature', 'Not above', degrees(material.maximumTemperature)],
    ['humidity', 'Humidity', humidity.low === null && humidity.high === null ? null : between(humidity.low, humidity.high, '%')],
    ['dewMargin', 'Above the dew point', material.dewMargin > 0 ? `${material.dewMargin} K` : null],
    ['recoatRows', 'Recoat table', recoatRows.length === 0 ? null : recoatRows.map((row) => `${row.from} to ${row.to} °C: ${row.min} to ${row.max} h`).join('; ')],
    ['potLife', 'Pot life', potLife === null ? null : `${formatLength(potLife.minutes)} at ${degrees(potLife.at)}, half for every ${potLife.halvesPer} K${potLife.induction > 0 ? `, induction ${formatLength(potLife.induction)}` : ''}`],
    ['thinner', 'Thinner', thinner === null ? null : `${thinner.low} to ${thinner.high} %`],
    ['lateWork', 'After a missed window', material.lateWork === 'none' ? null : LATE[material.lateWork]],
    ['bake', 'Bake', bake === null ? null : `${formatLength(bake.hold)} at ${degrees(bake.metalTemperature)} of the metal`],
    ['depthPerRootDay', 'Depth after a day', material.depthPerRootDay === null ? null : `${material.depthPerRootDay} mm`],
  ];
}

/** All materials of the library with every value beside its source. */
export function viewMaterialLibrary(): readonly LibraryMaterial[] {
  return MATERIAL_LIBRARY.map((material) => ({
    id: material.id, name: material.name, sort: material.sort,
    values: listValues(material).flatMap(([field, label, value]) => {
      if (value === null) return [];
      const source = material.sources[field];
      return [{ label, value, source: saySource(source), isSourced: source?.kind === 'read' }];
    }),
    unsourced: unsourcedFields(material).length, cautions: cautionsOf(material),
  }));
}
