import { expect, test } from 'vitest';
import { countWords } from '@/lib/estimate';

test('words are counted by letters and figures, not by dashes and spaces', () => {
  expect(countWords('  Wear gloves –  always, even for 5 minutes. ')).toBe(7);
  expect(countWords('')).toBe(0);
});
