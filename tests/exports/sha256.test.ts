import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sha256 } from '../../src/exports/sha256.ts';

const letters = (text: string): Uint8Array => new TextEncoder().encode(text);

// Examples published with FIPS 180-4 (NIST, "Examples with intermediate values", SHA-256).
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
])('the published example %j', (text, expected) => expect(sha256(letters(text))).toBe(expected));

test('a million letters a, the long published example', () =>
  expect(sha256(new Uint8Array(1_000_000).fill(0x61))).toBe('cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'));

test('every length around the block, and any bytes, as another program counts them', () => {
  const judge = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
  for (let length = 0; length <= 130; length++) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 31 + length) & 255);
    expect(sha256(bytes)).toBe(judge(bytes));
  }
  fc.assert(fc.property(fc.uint8Array({ maxLength: 500 }), (bytes) => { expect(sha256(bytes)).toBe(judge(bytes)); }), { seed: 20250301, numRuns: 60 });
});

test('a part of a larger buffer counts alone', () => {
  const whole = letters('xxabcxx');
  expect(sha256(whole.subarray(2, 5))).toBe(sha256(letters('abc')));
});
