/** The short form the library is written in, and its raising to hazards. Nothing here is computed. */
import type { Caution, Control, ControlLevel, Deferral, Hazard, HazardSeverity, ProtectiveEquipment, Source, SourceStatus, Trigger } from '../model';

/** Day the sources marked `read` were last read for this library. */
const REVIEWED = '2026-11-25';

/** [level, text] or, for what should be seen in the footage, [level, text, 'shown']. */
type ControlDraft = readonly [level: 'E' | 'S' | 'N' | 'A', text: string, shown?: 'shown'];

export interface HazardDraft {
  readonly id: string;
  readonly name: string;
  readonly severity: HazardSeverity;
  readonly trigger: Trigger;
  readonly controls: readonly ControlDraft[];
  readonly equipment: readonly ProtectiveDraft[];
  readonly signs: readonly string[];
  readonly caution: Caution;
  readonly show: string;
  readonly deferral?: Deferral;
  readonly needsSecondPerson?: true;
  readonly sources: readonly (readonly [status: SourceStatus, text: string])[];
}

type ProtectiveDraft = Omit<ProtectiveEquipment, 'id'>;

const LEVELS: Readonly<Record<ControlDraft[0], ControlLevel>> = { E: 'eliminate', S: 'substitute', N: 'engineer', A: 'administer' };

export const EYES: ProtectiveDraft = { text: 'Eye protection', sign: 'M004', standard: 'EN 166 / EN ISO 16321-1 / ANSI Z87.1', standardStatus: 'memory' };
export const FACE: ProtectiveDraft = { text: 'Face shield over eye protection', sign: 'M013', standard: 'EN 166 / ANSI Z87.1', standardStatus: 'memory' };
export const EARS: ProtectiveDraft = { text: 'Ear protection', sign: 'M003', standard: 'EN 352', standardStatus: 'memory' };
export const DUST_MASK: ProtectiveDraft = { text: 'FFP3 or half mask with P3 filters', sign: 'M017', standard: 'EN 149 FFP3 / EN 143 P3 / N100', standardStatus: 'memory' };
export const VAPOUR_MASK: ProtectiveDraft = { text: 'Half mask with A2P3 filters (vapour and mist)', sign: 'M017', standard: 'EN 14387 A2P3 / OV + P100', standardStatus: 'memory' };
export const AIR_FED: ProtectiveDraft = { text: 'Air-fed hood or mask', sign: 'M017', standard: 'EN 14594', standardStatus: 'read' };
export const CUT_GLOVES: ProtectiveDraft = { text: 'Gloves against cuts and knocks', sign: 'M009', standard: 'EN 388', standardStatus: 'memory' };
export const CHEMICAL_GLOVES: ProtectiveDraft = { text: 'Gloves for the chemical in hand', sign: 'M009', standard: 'EN ISO 374', standardStatus: 'memory' };
export const HEAT_GLOVES: ProtectiveDraft = { text: 'Gloves against heat', sign: 'M009', standard: 'EN 407', standardStatus: 'memory' };
export const WELD_MASK: ProtectiveDraft = { text: 'Welding mask of the right shade', sign: 'M019', standard: 'EN 166 family / ANSI Z87.1', standardStatus: 'memory' };
export const WELD_CLOTHES: ProtectiveDraft = { text: 'Welding clothing', sign: 'M010', standard: 'EN ISO 11611', standardStatus: 'memory' };
export const SPLASH_CLOTHES: ProtectiveDraft = { text: 'Clothing against splashes', sign: 'M010', standard: 'EN 13034', standardStatus: 'memory' };
export const SHOES: ProtectiveDraft = { text: 'Safety footwear', sign: 'M008', standard: '', standardStatus: 'practice' };
export const HELMET: ProtectiveDraft = { text: 'Head protection', sign: 'M014', standard: '', standardStatus: 'practice' };
export const APRON: ProtectiveDraft = { text: 'Apron', sign: 'M026', standard: '', standardStatus: 'practice' };

/** A hazard of the library from its short form. */
export function raiseHazard(draft: HazardDraft): Hazard {
  const controls = draft.controls.map(([level, text, shown], index): Control => ({
    id: `${draft.id}:control-${index + 1}`, level: LEVELS[level], text, isShown: shown === 'shown',
  }));
  const sources = draft.sources.map(([status, text]): Source => ({ text, status, reviewed: status === 'memory' ? null : REVIEWED }));
  return {
    id: draft.id, name: draft.name, severity: draft.severity, trigger: draft.trigger, controls,
    equipment: draft.equipment.map((one, index) => ({ id: `${draft.id}:equipment-${index + 1}`, ...one })),
    signs: draft.signs, caution: draft.caution, show: draft.show, deferral: draft.deferral ?? null,
    needsSecondPerson: draft.needsSecondPerson ?? false, sources, origin: 'library', replaces: null,
  };
}
