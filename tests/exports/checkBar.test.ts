import { expect, test } from 'vitest';
import { checkBar } from '../../src/exports/checkBar.ts';

test('a line that proves the print is 100 mm long, with its ticks square to its very ends', () => {
  for (const [way, k] of [['level', 0], ['upright', 1]] as const) {
    const lines = checkBar([12, 9], way).map((mark) => { if (mark.kind !== 'line' || mark.path[0]?.kind !== 'line') throw new Error('a stroke is one line'); return mark.path[0]; });
    const [line, ...ticks] = lines.map(({ from, to }) => [from, to] as const), [from, to] = line!;
    expect(from).toEqual([12, 9]);
    expect(to[k] - from[k]).toBe(100);
    expect(to[1 - k]).toBe(from[1 - k]);
    expect(ticks.map(([a, b]) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])).toEqual([from, to]);
    for (const [a, b] of ticks) expect([a[k], b[1 - k]! - a[1 - k]!]).toEqual([b[k], 3]);
  }
});
