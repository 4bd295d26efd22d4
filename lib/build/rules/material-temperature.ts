import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** The rate of drying grows with temperature, and the reference is one at which the film forms. */
export const checkMaterialTemperatures: Rule = (document) =>
  document.materials.flatMap((material) => {
    const subjects = subjectsOf(material);
    const rate = material.doublingPer > 0 ? [] : [
      issue('doubling-not-positive', `${startWith(material)} doubles its rate every ${formatNumber(material.doublingPer)} K; it must be more than 0 K.`,
        'Type 10 K when the data sheet says nothing.', { path: ['doublingPer'], subjects }),
    ];
    if (material.minimumTemperature <= material.referenceTemperature) return rate;
    return [...rate, issue('minimum-above-reference',
      `${startWith(material)} has times for ${formatNumber(material.referenceTemperature)} °C, but forms no film below ${formatNumber(material.minimumTemperature)} °C.`,
      `Type a lowest temperature of ${formatNumber(material.referenceTemperature)} °C or less.`, { path: ['minimumTemperature'], subjects })];
  });
