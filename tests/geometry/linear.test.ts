import { expect, test } from 'vitest';
import { addTo, emptyBanded, factorsOf, inverseOf, timesColumn } from '../../src/geometry/linear.ts';
import { chanceFrom } from '../support/random.ts';

const near = (found: readonly number[], wanted: readonly number[]): void => wanted.forEach((value, i) => expect(found[i]!).toBeCloseTo(value, 9));

test('an inverse undoes its matrix, with a zero on its diagonal too', () => {
  const matrix = [[0, 2, 1], [4, 1, -2], [3, 0, 5]];
  near(timesColumn(inverseOf(matrix), timesColumn(matrix, [7, -3, 2])), [7, -3, 2]);
});
test('what has no inverse is refused', () => expect(() => inverseOf([[1, 2], [2, 4]])).toThrow(RangeError));

test('a banded matrix is solved as the full one is', () => {
  const { between } = chanceFrom(3), n = 12, band = 3, banded = emptyBanded(n, band), full = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const put = (i: number, j: number, value: number): void => { addTo(banded, i, j, value); full[i]![j] = full[i]![j]! + value; if (i !== j) full[j]![i] = full[j]![i]! + value; };
  for (let i = 0; i < n; i++) { put(i, i, 10); for (let j = Math.max(0, i - band); j < i; j++) put(i, j, between(-1, 1)); }
  const wanted = Array.from({ length: n }, () => between(-5, 5)), solve = factorsOf(banded);
  near(solve(timesColumn(full, wanted)), wanted);
  near(timesColumn(inverseOf(full), timesColumn(full, wanted)), wanted);
});
test('one that is not positive definite is refused', () => {
  const banded = emptyBanded(2, 1);
  addTo(banded, 0, 0, 1); addTo(banded, 0, 1, 2); addTo(banded, 1, 1, 1);
  expect(() => factorsOf(banded)).toThrow('not positive definite');
});
