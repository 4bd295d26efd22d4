/** Materials and coating systems of a series as the cure clock knows them, and materials of the library as records. */
import { DEFAULT_CURE, NO_VAPOUR, type CoatingSystem as SystemRecord, type FieldsOf, type FieldSource, type Material } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import type { CoatMaterial, SourcedField, ValueSource } from './coat-material';
import type { RateLaw } from './rate';
import type { CoatingSystem } from './system';

function lawOf(material: Material, cure: NonNullable<Material['cure']>): RateLaw {
  const { kind, value } = cure.law;
  switch (kind) {
    case 'arrhenius': return { kind, activation: value ?? 0 };
    case 'maturity': return { kind, datum: value ?? 0 };
    case 'moisture': return { kind, humidity: value ?? 50 };
    case 'steady': return { kind };
    case 'doubling': return { kind, per: material.doublingPer };
  }
}

function sourcesOf(sources: readonly FieldSource[]): Partial<Record<SourcedField, ValueSource>> {
  return Object.fromEntries(sources.map(({ field, kind, text }) => [field, { kind, text }]));
}

function readMaterial(material: Material): CoatMaterial {
  const cure = material.cure ?? DEFAULT_CURE;
  const { potLife } = material;
  const { low, high } = cure.thinner;
  const { metalTemperature, hold } = cure.bake;
  return {
    id: material.id, name: material.name, sort: material.sort,
    stages: { ...material.stages, flashOff: cure.flashOff },
    referenceTemperature: material.referenceTemperature,
    law: lawOf(material, cure),
    minimumTemperature: material.minimumTemperature,
    minimumUntilDry: cure.minimumUntilDry ?? material.minimumTemperature,
    belowMinimum: cure.belowMinimum,
    maximumTemperature: cure.maximumTemperature,
    humidity: cure.humidity, dewMargin: cure.dewMargin, recoatRows: cure.recoatRows,
    potLife: potLife === null ? null : { minutes: potLife, ...cure.pot },
    thinner: low === null && high === null ? null : { low: low ?? 0, high: high ?? low ?? 0 },
    lateWork: cure.lateWork,
    bake: metalTemperature === null ? null : { metalTemperature, hold: hold ?? 0 },
    depthPerRootDay: cure.depthPerRootDay, isConfinedOnly: cure.isConfinedOnly,
    hasSolvent: material.hasSolvent, hasIsocyanate: material.hasIsocyanate,
    cautions: cure.cautions, sources: sourcesOf(cure.sources),
  };
}

const known = new WeakMap<Material, CoatMaterial>();

/** A material of the series for the clock. The same record gives the same object, so that clocks are shared. */
export function coatMaterialOf(material: Material): CoatMaterial {
  const found = known.get(material) ?? readMaterial(material);
  known.set(material, found);
  return found;
}

const SOURCE_WORDS = { read: '', memory: 'from memory: ', none: 'no source: ' } as const;

/** What a person would fill in to have a material of the library. Its one-line source sums up those of its values. */
export function fieldsOfLibrary(coat: CoatMaterial): FieldsOf<'material'> {
  const { law, potLife, stages } = coat;
  const value = law.kind === 'arrhenius' ? law.activation : law.kind === 'maturity' ? law.datum : law.kind === 'moisture' ? law.humidity : null;
  const stageSource = coat.sources.stages;
  return {
    name: coat.name, sort: coat.sort,
    stages: {
      touchDry: minutes(stages.touchDry), recoatFrom: minutes(stages.recoatFrom), recoatUntil: stages.recoatUntil === null ? null : minutes(stages.recoatUntil),
      handle: minutes(stages.handle), fullCure: minutes(stages.fullCure),
    },
    referenceTemperature: celsius(coat.referenceTemperature), minimumTemperature: celsius(coat.minimumTemperature),
    doublingPer: law.kind === 'doubling' ? law.per : 10,
    potLife: potLife === null ? null : minutes(potLife.minutes),
    hasSolvent: coat.hasSolvent, hasIsocyanate: coat.hasIsocyanate, vapour: NO_VAPOUR,
    source: stageSource === undefined ? '' : `${SOURCE_WORDS[stageSource.kind]}${stageSource.text}`,
    cure: {
      flashOff: minutes(stages.flashOff), law: { kind: law.kind, value },
      minimumUntilDry: coat.minimumUntilDry === coat.minimumTemperature ? null : celsius(coat.minimumUntilDry),
      belowMinimum: coat.belowMinimum, maximumTemperature: celsius(coat.maximumTemperature), humidity: coat.humidity, dewMargin: coat.dewMargin,
      recoatRows: coat.recoatRows,
      pot: {
        at: celsius(potLife?.at ?? 20), halvesPer: potLife?.halvesPer ?? 10, induction: minutes(potLife?.induction ?? 0), isInductionIncluded: potLife?.isInductionIncluded ?? false,
      },
      thinner: { low: coat.thinner?.low ?? null, high: coat.thinner?.high ?? null },
      lateWork: coat.lateWork,
      bake: { metalTemperature: coat.bake === null ? null : celsius(coat.bake.metalTemperature), hold: coat.bake === null ? null : minutes(coat.bake.hold) },
      depthPerRootDay: coat.depthPerRootDay, isConfinedOnly: coat.isConfinedOnly, cautions: coat.cautions,
      sources: Object.entries(coat.sources).map(([field, source]): FieldSource => ({ field: field as SourcedField, kind: source.kind, text: source.text })),
    },
  };
}

/** A coating system of the series, ready to be unfolded. */
export function systemOf(record: SystemRecord): CoatingSystem {
  return { id: record.id, name: record.name, steps: record.layers, lateWorkMinutes: record.abrading };
}
