import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../src/fitting/jsonText.ts';

// Slow judge: the language's own JSON.parse, on random values and on random damage to their text.

/** What JSON.parse makes of a text; undefined when it refuses. */
function judged(text: string): { readonly value: unknown } | undefined {
  try { return { value: JSON.parse(text) as unknown }; } catch { return undefined; }
}

const spaced = fc.tuple(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(0, 1, '\t')).map(([value, space]) => JSON.stringify(value, null, space));

describe('JSON text', () => {
  test('reads every value as JSON.parse does', () => {
    fc.assert(fc.property(spaced, (text) => {
      const reading = readJson(text);
      expect(reading.ok && JSON.stringify(reading.value)).toBe(JSON.stringify(JSON.parse(text)));
    }), { seed: 204, numRuns: 300 });
  });

  test('takes and refuses damaged text exactly as JSON.parse does', () => {
    const marks = fc.constantFrom('', ',', ':', '"', '{', '}', '[', ']', '-', '0', '.', 'e', '\\', ' ', 'null', 'NaN', '\n', '\u0001');
    let refused = 0;
    fc.assert(fc.property(spaced, fc.nat(), fc.nat(3), marks, (text, at, drop, mark) => {
      const place = at % (text.length + 1), damaged = text.slice(0, place) + mark + text.slice(place + drop);
      const own = readJson(damaged), judge = judged(damaged);
      expect(own.ok).toBe(judge !== undefined);
      if (!judge) refused += 1;
    }), { seed: 205, numRuns: 1500 });
    expect(refused).toBeGreaterThan(300);   // an empty comparison would prove nothing
  });

  test('names the line and column of a break, whatever ends the lines', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const reading = readJson(`{${end}  "a": 1,${end}  "b": x }`);
      expect(reading).toMatchObject({ ok: false, faults: [{ path: 'sheet', rule: expect.stringContaining('line 3, column 8') as string }] });
    }
  });

  test('finds fields given twice, at every depth, and keeps the last as JSON.parse does', () => {
    const reading = readJson('{"a": {"b": 1, "b": 2}, "c": [{"d": 1, "d": 3}], "a2": 1}');
    expect(reading).toMatchObject({ ok: true, value: { a: { b: 2 }, c: [{ d: 3 }] }, faults: [{ path: 'a.b' }, { path: 'c[0].d' }] });
    expect(readJson('{"a": {"b": 1}, "c": {"b": 1}}')).toMatchObject({ faults: [] });
  });
});
