import { expect, test } from 'vitest';
import { solveRocker } from '../../src/profile/rocker.ts';
import { shapes } from '../support/cases.ts';

test('at a glance a sole is never thicker than it has to be, and a tenth of a millimetre too thin at most', () => {
  for (const [name, given] of Object.entries(shapes)) {
    const short = solveRocker(given).build - solveRocker(given, 'glance').build;
    expect([name, short >= -1e-7, short < 0.1]).toEqual([name, true, true]);
  }
});
