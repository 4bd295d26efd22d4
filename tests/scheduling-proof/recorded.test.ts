/**
 * Same seed and work, same answer: how the search gets there is written down move by move and compared exactly. A change
 * that is meant to alter the path records it anew, and the difference is read before it is kept:
 *
 *     RECORD=1 npx vitest run tests/scheduling-proof/recorded.test.ts
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { recordings, type Recording } from './recordings';

const isRecording = process.env.RECORD === '1';

for (const [part, cases] of Object.entries(recordings)) {
  const file = new URL(`../golden/proof-${part}.json`, import.meta.url);
  const known = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<string, Recording>) : {};
  const seen: Record<string, Recording> = {};

  describe(`the path of ${part}, as recorded,`, () => {
    it.each(Object.keys(cases))('is the same for %s', (name) => {
      const recording = cases[name]!();
      seen[name] = recording;
      // A run that writes proves nothing.
      if (isRecording) throw new Error('Recorded anew: read the difference, then run without RECORD.');
      expect(recording).toEqual(known[name]);
    });

    it('is compared for every case that is kept', () => {
      expect(Object.keys(known).toSorted()).toEqual(Object.keys(cases).toSorted());
    });

    afterAll(() => {
      if (isRecording) writeFileSync(file, `{\n${Object.entries(seen).map(([name, recording]) => `${JSON.stringify(name)}: ${JSON.stringify(recording)}`).join(',\n')}\n}\n`);
    });
  });
}
