/** Published figures on noise, vibration, vapour, risk and signs. Each source is named; what is from memory says so. */
import { describe, expect, it } from 'vitest';
import {
  assessRisk, buildUpPpm, captionSeconds, countNoise, countVibration, evaporatedPpm, highestOutside, insideMask, LIBRARY, listSigns, meanPpm, minutesToShare, neededFactor,
  NOISE_ACTION_LOWER, NOISE_ACTION_UPPER, NOISE_LIMIT, nioshMinutes, oshaAverage, oshaHours, readSign, RESPIRATORS, spokenSeconds, toMilligrams, toPpm, type Probability, type RiskLevel,
} from '@/lib/safety';
import { unwrap } from '@/lib/result';

describe('noise', () => {
  it.each([[80, 32], [85, 16], [90, 8], [92, 6.1], [95, 4], [97, 3], [100, 2], [105, 1], [110, 0.5], [115, 0.25]])('gives the hours of OSHA 1910.95 App. A, Table G-16a: %d dB(A) for %d h', (level, hours) => {
    expect(oshaHours(level)).toBeCloseTo(hours, 1);
  });

  it.each([[10, 73.4], [50, 85], [100, 90], [200, 95]])('turns the dose of OSHA 1910.95 App. A, Table A-1 into its level: %d %% is %d dB(A)', (dose, level) => {
    expect(oshaAverage(dose)).toBeCloseTo(level, 1);
  });

  it('adds the worked example by the formula of OSHA 1910.95 App. A: 90 dB 4 h, 95 dB 2 h, 85 dB 2 h', () => {
    const day = unwrap(countNoise([{ level: 90, minutes: 240 }, { level: 95, minutes: 120 }, { level: 85, minutes: 120 }]));
    expect(day.oshaDose).toBeCloseTo(112.5, 6);
    expect(oshaAverage(day.oshaDose)).toBeCloseTo(90.85, 2);
  });

  it.each([[85, 480], [88, 240], [91, 120], [94, 60], [97, 30], [100, 15]])('gives the minutes of the NIOSH criteria, 98-126: %d dB(A) for %d min', (level, minutes) => {
    expect(nioshMinutes(level)).toBeCloseTo(minutes, 6);
  });

  it('sets 100 dB(A) for half an hour at OSHA 25 %, NIOSH 200 % and a daily level of 87.96 dB(A) (computed)', () => {
    const day = unwrap(countNoise([{ level: 100, minutes: 30 }]));
    expect(day.oshaDose).toBeCloseTo(25, 6);
    expect(day.nioshDose).toBeCloseTo(200, 6);
    expect(day.dailyLevel).toBeCloseTo(87.96, 2);
  });
});

describe('noise, UK and EU values', () => {
  it('acts at 80 and 85 dB(A) and never above 87', () => {
    expect([NOISE_ACTION_LOWER, NOISE_ACTION_UPPER, NOISE_LIMIT]).toEqual([80, 85, 87]);
  });

  it('counts the three levels of the OSHA example by the NIOSH exchange rate as 436 % (computed: 240/151.2 + 120/47.6 + 120/480)', () => {
    const day = unwrap(countNoise([{ level: 90, minutes: 240 }, { level: 95, minutes: 120 }, { level: 85, minutes: 120 }]));
    expect(day.nioshDose).toBeCloseTo(100 * (240 / nioshMinutes(90) + 120 / nioshMinutes(95) + 120 / nioshMinutes(85)), 6);
    expect(day.nioshDose).toBeCloseTo(435.7, 0);
  });
});

describe('hand-arm vibration, HSE ready reckoner', () => {
  it.each([[5, 180, 150], [5, 120, 100], [5, 480, 400], [2.5, 480, 100], [10, 30, 100]])('%d m/s2 for %d min are %d points', (magnitude, minutes, points) => {
    expect(unwrap(countVibration([{ magnitude, minutes }])).points).toBeCloseTo(points, 6);
  });

  it('adds three tools: 4 m/s2 2.5 h, 3 m/s2 1 h, 20 m/s2 15 min are 298 points and A(8) 4.3', () => {
    const day = unwrap(countVibration([{ magnitude: 4, minutes: 150 }, { magnitude: 3, minutes: 60 }, { magnitude: 20, minutes: 15 }]));
    expect(day.points).toBeCloseTo(298, 6);
    expect(day.dailyValue).toBeCloseTo(4.3, 1);
  });

  it('meets 2.5 and 5 m/s2 at 100 and 400 points', () => {
    expect(unwrap(countVibration([{ magnitude: 2.5, minutes: 480 }])).dailyValue).toBeCloseTo(2.5, 6);
    expect(unwrap(countVibration([{ magnitude: 5, minutes: 480 }])).dailyValue).toBeCloseTo(5, 6);
  });
});

describe('vapour', () => {
  it.each([[10, 40], [100, 401], [500, 2004]])('%d ml of xylene in 50 m3 make %d ppm (computed from the gas law)', (millilitres, ppm) => {
    expect(evaporatedPpm({ millilitres, density: 0.87, molarMass: 106.17 }, 50_000)).toBeCloseTo(ppm, 0);
  });

  it('builds up to 171.90 ppm with G 1.4, Q 2500, t 11, V 75 000 (published worked example of general ventilation)', () => {
    expect(buildUpPpm(1.4, 2500, 75_000, 11)).toBeCloseTo(171.9, 1);
  });

  it('has half of the closed room as its mean where no air moves, and nearly G/Q where it moves for long (computed by the integral of the build-up)', () => {
    expect(meanPpm(1.4, 0, 75_000, 11)).toBeCloseTo(buildUpPpm(1.4, 0, 75_000, 11) / 2, 9);
    expect(meanPpm(1.4, 2500, 75_000, 1e6)).toBeCloseTo(560, 1);
    const steps = Array.from({ length: 1000 }, (_, k) => buildUpPpm(1.4, 2500, 75_000, ((k + 0.5) / 1000) * 11));
    expect(meanPpm(1.4, 2500, 75_000, 11)).toBeCloseTo(steps.reduce((sum, ppm) => sum + ppm, 0) / 1000, 3);
  });

  it.each([[6, 46], [12, 23], [60, 4.6]])('%d air changes an hour leave 1 %% after %d minutes (computed)', (airChanges, minutes) => {
    expect(minutesToShare(airChanges, 0.01)).toBeCloseTo(minutes, minutes < 10 ? 1 : 0);
  });

  it('takes 100 ppm of xylene for 434 to 435 mg/m3 at 25 °C (OSHA PEL as printed), and back', () => {
    const milligrams = toMilligrams(100, 106.17);
    expect(milligrams).toBeGreaterThan(434);
    expect(milligrams).toBeLessThan(435);
    expect(toPpm(milligrams, 106.17)).toBeCloseTo(100, 9);
  });
});

describe('risk matrix, MIL-STD-882E Table III (transcriptions)', () => {
  const rows: readonly (readonly [Probability, readonly RiskLevel[]])[] = [
    ['A', ['High', 'High', 'Serious', 'Medium']], ['B', ['High', 'High', 'Serious', 'Medium']], ['C', ['High', 'Serious', 'Medium', 'Low']],
    ['D', ['Serious', 'Medium', 'Medium', 'Low']], ['E', ['Medium', 'Medium', 'Medium', 'Low']],
  ];
  it.each(rows)('row %s', (probability, levels) => {
    expect((['I', 'II', 'III', 'IV'] as const).map((severity) => unwrap(assessRisk(severity, probability, 'worn')))).toEqual(levels);
  });

  it('gives F only where the hazard itself is gone, never for a warning, a habit, a guard or something worn', () => {
    expect(unwrap(assessRisk('I', 'F', 'eliminate'))).toBe('Eliminated');
    for (const done of ['substitute', 'engineer', 'administer', 'worn'] as const) expect(assessRisk('I', 'F', done).ok).toBe(false);
  });
});

describe('protection factors (the factors are from memory; the arithmetic is not)', () => {
  it('divides what is outside by the factor, and multiplies the limit by it', () => {
    expect(insideMask(400, 20)).toBe(20);
    expect(highestOutside(50, 10)).toBe(500);
    expect(unwrap(neededFactor(2004, 50))).toBeCloseTo(40.08, 6);
    expect(neededFactor(-1, 50).ok).toBe(false);
    expect(neededFactor(10, 0).ok).toBe(false);
  });

  it('marks every factor as unverified', () => {
    expect(RESPIRATORS.every(({ status }) => status === 'memory')).toBe(true);
  });
});

describe('ISO 7010 (third-party list)', () => {
  const printed = [
    'M001 General|M002 manual|M003 ear|M004 eye|M005 earth|M006 plug|M007 Opaque|M008 footwear|M009 gloves|M010 clothing|M011 hands|M013 face shield|M014 head|M016 mask|M017 respiratory|M019 welding mask',
    'M021 Disconnect|M026 apron|M027 guard|M046 cylinders|M047 self-contained|M048 gas detector|M057 ventilation',
    'P002 smoking|P003 flame|P008 metal|P015 reaching|P022 drinking|P024 stand|P028 gloves|P032 face grinding|P034 hand-held grinder|P039 hot work|P075 light source|P080 unauthorised',
    'W001 General|W004 Laser|W012 Electricity|W015 Overhead|W016 Toxic|W017 Hot|W019 Crushing|W021 Flammable|W022 Sharp|W023 Corrosive|W024 hands|W025 rollers|W026 Battery|W027 Optical|W028 Oxidising|W029 cylinder',
    'W035 Falling|W041 Asphyxiating|W042 Arc flash|W071 hazardous to health|W087 Loud|E003 First aid|E011 Eyewash|E020 Emergency stop|F001 extinguisher|F016 blanket',
  ].flatMap((row) => row.split('|'));

  it('has every code of the list with its meaning, and marks any other as from memory', () => {
    for (const line of printed) expect(unwrap(readSign(line.slice(0, 4))).meaning).toContain(line.slice(5));
    expect(listSigns().filter(({ code }) => !printed.some((line) => line.startsWith(code))).map(({ code, status }) => `${code} ${status}`)).toEqual(['P069 memory']);
  });

  it('takes an air-fed hood for M017 and not M047, and has no sign for asbestos but W071', () => {
    const worn = LIBRARY.flatMap(({ equipment }) => equipment);
    expect(worn.filter(({ text }) => text.includes('Air-fed')).map(({ sign }) => sign)).toEqual(expect.arrayContaining(['M017']));
    expect(worn.some(({ sign, text }) => text.includes('Air-fed') && sign !== 'M017')).toBe(false);
    expect(listSigns().some(({ meaning }) => /asbestos/i.test(meaning))).toBe(false);
  });

  it('refuses unknown codes', () => {
    for (const code of ['M999', '', 'm017', 'X001', 'toString']) expect(readSign(code).ok).toBe(false);
  });
});

/** [hazard, whether it was read, a figure of its source] as in the sources named. */
const PRINTED: readonly (readonly [id: string, status: 'read' | 'memory', figure: string])[] = [
  ['air-cleaning', 'read', '30 psi'], ['asbestos', 'read', '0.1 fibres/cm3 over 8 h, 1.0 over 30 min'], ['asbestos', 'read', '0.01 fibres/cm3 from 2025-12-21'],
  ['isocyanate', 'read', '0.02 mg/m3 over 8 h, 0.07 over 15 min'], ['isocyanate', 'read', 'up to 30 minutes'], ['isocyanate', 'read', '2023-08-24'],
  ['solvent-spray', 'read', '100 ppm (435 mg/m3), IDLH 900 ppm'], ['solvent-spray', 'memory', '50 ppm over 8 h, 100 ppm over 15 min'],
  ['spray-ignition', 'read', '20 ft'], ['lead-paint', 'read', 'PEL 50, action level 30'], ['welding', 'read', 'stick 60-160 A 8, 160-250 A 10; MIG 60-500 A 10; TIG 50-150 A 8, 150-500 A 10'],
  ['hot-work', 'read', '35 ft, fire watch at least 30 minutes'], ['hot-work', 'memory', '60 minutes'], ['abrasive-wheel', 'read', '1/8 in'], ['lifting-gear', 'memory', 'every 12 months, 6 for lifting people'],
  ['manual-handling', 'read', '51 lb'], ['manual-handling', 'memory', '25 kg and 16 kg'], ['lead-acid', 'read', '4 %'], ['mains', 'read', '30 mA'],
  ['exhaust', 'read', '20 ppm over 8 h, 100 ppm over 15 min'], ['combustible-dust', 'read', '1/32 in of dust over 5 %'], ['fluid-injection', 'read', '100 bar'], ['gas-cylinders', 'read', '20 ft or a 5 ft wall'],
];

describe('figures of the hazard library', () => {
  it.each(PRINTED)('%s has, %s, “%s”', (id, status, figure) => {
    const sources = LIBRARY.find((hazard) => hazard.id === id)?.sources ?? [];
    expect(sources.filter(({ text }) => text.includes(figure)).map((source) => source.status)).toEqual([status]);
  });
});

describe('reading and speaking (BBC subtitle guidelines)', () => {
  it('lets 43 characters in 7 words stand 3.87 s, 51 in 8 words 4.40 s, and nothing less than 3 s (computed)', () => {
    const [seven, eight] = ['one two thr fou fiv six abcdefghijklmnopqrs', 'one two thr fou fiv six sev abcdefghijklmnopqrstuvw'];
    expect([seven?.length, eight?.length]).toEqual([43, 51]);
    expect(captionSeconds(seven ?? '')).toBeCloseTo(3.87, 2);
    expect(captionSeconds(eight ?? '')).toBeCloseTo(4.4, 2);
    expect(captionSeconds('Stop')).toBe(3);
  });

  it('takes 12 s for 30 words at 150 words a minute', () => {
    expect(spokenSeconds('word '.repeat(30))).toBeCloseTo(12, 6);
  });
});
