import { assert, constantFrom, integer, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength, writeLength } from '@/lib/views/record-form-length';

const DAYS_30 = 30 * 1440;

describe('A length of time', () => {
  it('is read back as it was written, in days or not', () => {
    assert(
      property(integer({ min: -DAYS_30, max: DAYS_30 }), constantFrom('elapsed' as const, 'worked' as const), (length, clock) => {
        expect(parseLength(writeLength(length, clock))).toBe(length === 0 ? 0 : length);
      }),
    );
  });

  it.each([
    ['90', 90], ['1 h 30', 90], ['1h30', 90], ['1:30', 90], ['1,5 h', 90], ['1.5 hours', 90], ['45 min', 45], ['2 d', 2880], ['1 d 4', 1680],
    ['1 week', 10_080], ['0', 0], ['-30', -30], ['  2 h  ', 120],
  ])('typed as %j is %i minutes', (text, expected) => {
    expect(parseLength(text)).toBe(expected);
  });

  it.each(['', ' ', 'soon', '1 h x', '30 min 1 h', 'h', '1::30', '1:75', '--3'])('is not read from %j', (text) => {
    expect(parseLength(text)).toBeNull();
  });
});
