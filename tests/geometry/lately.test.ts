import { expect, test } from 'vitest';
import { lately } from '../../src/geometry/lately.ts';

/** A function that notes how often it is asked. */
function counted(kept: number): { readonly asked: number[]; readonly square: (of: { readonly x: number }) => { readonly y: number } } {
  const asked: number[] = [];
  return { asked, square: lately(kept, ({ x }: { readonly x: number }) => { asked.push(x); if (x < 0) throw new RangeError('less than nothing'); return { y: x * x }; }) };
}

test('what was asked lately is answered with the very same, what was asked before that anew', () => {
  const { asked, square } = counted(2), first = square({ x: 3 });
  expect([square({ x: 3 }) === first, first.y, asked]).toEqual([true, 9, [3]]);
  square({ x: 4 });
  square({ x: 3 });
  square({ x: 5 });
  expect(asked).toEqual([3, 4, 5]);
  square({ x: 3 });
  square({ x: 4 });
  expect(asked).toEqual([3, 4, 5, 4]);
});

test('what throws is tried again, and forgets nothing', () => {
  const { asked, square } = counted(1);
  square({ x: 2 });
  for (let i = 0; i < 2; i++) expect(() => square({ x: -1 })).toThrow('less than nothing');
  square({ x: 2 });
  expect(asked).toEqual([2, -1, -1]);
});

test('an answer that is nothing is remembered too', () => {
  let times = 0;
  const nothing = lately(1, (_: number): undefined => { times++; return undefined; });
  nothing(1);
  nothing(1);
  expect(times).toBe(1);
});
