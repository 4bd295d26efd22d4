import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { breakLines, checkHazard, LIBRARY, readSign, STANDING_WORDS } from '@/lib/safety';

const [piston] = LIBRARY;
if (piston === undefined) throw new Error('The library is empty');

describe('the library of hazards', () => {
  it('passes the check that users own hazards must pass', () => {
    for (const hazard of LIBRARY) expect(checkHazard(hazard), hazard.id).toEqual([]);
  });

  it('names a source for each hazard, and a day for each that was read', () => {
    for (const { sources } of LIBRARY) {
      expect(sources.length).toBeGreaterThan(0);
      for (const { status, reviewed } of sources) expect(reviewed === null).toBe(status === 'memory');
    }
  });

  it('fits every caution on two lines of the screen', () => {
    for (const { caution } of LIBRARY) expect(breakLines(caution.screen).length).toBeLessThanOrEqual(2);
  });

  it('uses only known signs, and has none for asbestos but W071 with words', () => {
    for (const { signs, equipment } of LIBRARY) {
      for (const code of [...signs, ...equipment.flatMap(({ sign }) => sign ?? [])]) expect(readSign(code).ok).toBe(true);
    }
    expect(LIBRARY.find(({ id }) => id === 'asbestos')?.signs).toContain('W071');
  });

  it('never says that anything is safe, and says on every page what comes first', () => {
    expect(JSON.stringify(LIBRARY)).not.toMatch(/\bsafe(ly)?\b/i);
    expect(STANDING_WORDS).toContain("maker's instructions");
  });

  it('is not contradicted by any word of the program: no page or message calls anything safe', () => {
    const files = ['app', 'lib'].flatMap((root) => readdirSync(root, { recursive: true, encoding: 'utf8' }).map((name) => `${root}/${name}`))
      .filter((name) => /\.tsx?$/.test(name) && !name.startsWith('lib/storage/generated'));
    expect(files.length).toBeGreaterThan(500);
    const said = files.flatMap((name) => readFileSync(name, 'utf8').split('\n').filter((line) => /\bsafe(ly)?\b/i.test(line) && !/^\s*(\*|\/\/|\/\*)/.test(line)).map((line) => `${name}: ${line.trim()}`));
    expect(said).toEqual([]);
  });
});

const codes = (change: Partial<typeof piston>): readonly string[] => checkHazard({ ...piston, ...change }).map(({ code }) => code);

describe('a hazard that somebody wrote', () => {

  it('is refused without a source, with an empty one, or with a read one that has no day', () => {
    expect(codes({ sources: [] })).toEqual(['hazard-without-source']);
    expect(codes({ sources: [{ text: ' ', status: 'practice', reviewed: null }] })).toEqual(['hazard-without-source']);
    expect(codes({ sources: [{ text: 'a book', status: 'read', reviewed: null }] })).toEqual(['source-not-dated']);
    expect(codes({ sources: [{ text: 'a book', status: 'memory', reviewed: null }] })).toEqual([]);
  });

  it('is refused with an unknown sign, no trigger, no control, too long a caution; all at once', () => {
    expect(codes({ signs: ['W999'] })).toEqual(['sign-unknown']);
    expect(codes({ signs: [''] })).toEqual(['sign-unknown']);
    expect(codes({ trigger: [[]] })).toEqual(['hazard-without-trigger']);
    expect(codes({ controls: [] })).toEqual(['hazard-without-control']);
    expect(codes({ replaces: 'nothing-like-it' })).toEqual(['replaced-unknown']);
    const long = 'word '.repeat(40).trim();
    expect(codes({ sources: [], signs: ['Q1'], trigger: [], caution: { screen: long, spoken: long } })).toEqual([
      'hazard-without-source', 'hazard-without-trigger', 'sign-unknown', 'caption-too-long', 'spoken-too-long',
    ]);
  });
});
