/** Safety signs of ISO 7010: codes and meanings, from a third-party list of the standard. */
import { fail, issue, ok, type Result } from '@/lib/result';

const SIGNS: Readonly<Record<string, string>> = {
  M001: 'General mandatory action', M002: 'Read the manual', M003: 'Wear ear protection', M004: 'Wear eye protection', M005: 'Connect an earth',
  M006: 'Disconnect the mains plug', M007: 'Opaque eye protection', M008: 'Wear safety footwear', M009: 'Wear protective gloves',
  M010: 'Wear protective clothing', M011: 'Wash your hands', M013: 'Wear a face shield', M014: 'Wear head protection', M016: 'Wear a mask',
  M017: 'Wear respiratory protection', M019: 'Wear a welding mask', M021: 'Disconnect before maintenance or repair', M026: 'Wear a protective apron',
  M027: 'Check the guard', M046: 'Secure gas cylinders', M047: 'Wear self-contained breathing apparatus', M048: 'Carry a gas detector',
  M057: 'Keep the ventilation running',
  P002: 'No smoking', P003: 'No open flame, fire or ignition source', P008: 'No metal articles or watches', P015: 'No reaching in',
  P022: 'No eating or drinking', P024: 'Do not walk or stand here', P028: 'Do not wear gloves', P032: 'Do not use for face grinding',
  P034: 'Do not use with a hand-held grinder', P039: 'No hot work', P069: 'Not to be serviced by users', P075: 'Do not stare at the light source',
  P080: 'No unauthorised entry',
  W001: 'General warning', W004: 'Laser beam', W012: 'Electricity', W015: 'Overhead load', W016: 'Toxic material', W017: 'Hot surface',
  W019: 'Crushing', W021: 'Flammable material', W022: 'Sharp element', W023: 'Corrosive substance', W024: 'Crushing of hands',
  W025: 'Counter-rotating rollers', W026: 'Battery charging', W027: 'Optical radiation', W028: 'Oxidising substance', W029: 'Pressurised cylinder',
  W035: 'Falling objects', W041: 'Asphyxiating atmosphere', W042: 'Arc flash', W071: 'Substance hazardous to health', W087: 'Loud noise',
  E003: 'First aid', E011: 'Eyewash station', E020: 'Emergency stop', F001: 'Fire extinguisher', F016: 'Fire blanket',
};

const KINDS: Readonly<Record<string, Sign['kind']>> = { M: 'mandatory', P: 'prohibition', W: 'warning', E: 'escape and first aid', F: 'fire' };

export interface Sign {
  readonly code: string;
  readonly kind: 'mandatory' | 'prohibition' | 'warning' | 'escape and first aid' | 'fire';
  readonly meaning: string;
  /** `memory`: the meaning is not verified, and pages say so. */
  readonly status: 'read' | 'memory';
}

const FROM_MEMORY: readonly string[] = ['P069'];

/** Every sign kept here, by code. */
export function listSigns(): readonly Sign[] {
  return Object.keys(SIGNS).flatMap((code) => {
    const sign = readSign(code);
    return sign.ok ? [sign.value] : [];
  });
}

/**
 * The sign of a code. Fails with `sign-unknown`: only part of the standard is kept here.
 * @example readSign('M017') // { ok: true, value: { code: 'M017', kind: 'mandatory', meaning: 'Wear respiratory protection', status: 'read' } }
 */
export function readSign(code: string): Result<Sign> {
  const meaning = Object.hasOwn(SIGNS, code) ? SIGNS[code] : undefined;
  const kind = KINDS[code.charAt(0)];
  if (meaning === undefined || kind === undefined) {
    return fail([issue('sign-unknown', `There is no sign ${code === '' ? 'without a code' : code} in the list of ISO 7010 codes kept here.`, 'Take a code from the list, such as M017 for respiratory protection, or write W001 and say it in words.')]);
  }
  return ok({ code, kind, meaning, status: FROM_MEMORY.includes(code) ? 'memory' : 'read' });
}
