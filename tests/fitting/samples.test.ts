import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inDegrees } from '../../src/geometry/units.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { unusualMeasures } from '../../src/fitting/unusual.ts';
import { SIDES } from '../../src/fitting/words.ts';
import { fittingOf, type Json } from './sheets.ts';

// The people are invented; each body keeps the proportions of one row of ANSUR II (2012 US Army survey, Gordon et al. 2014), rounded.
// Lean of the leg: 2 to 6 degrees is good (common practice; healthy people stand with the hip 62 ± 13 mm ahead of the ankle, Woodhull 1985).

const NAMES = ['baker', 'bookbinder', 'choir-conductor', 'ferry-pilot', 'market-gardener'];
const textOf = (name: string): string => readFileSync(`samples/${name}/sheet.json`, 'utf8');

describe('samples', () => {
  test('the five of the harbour town are here', () => {
    expect(readdirSync('samples')).toEqual(expect.arrayContaining(NAMES));
  });

  test.each(NAMES)('%s reads, and nothing about the body is unusual', (name) => {
    const reading = readSheet(textOf(name));
    expect(reading).toMatchObject({ ok: true });
    expect(reading.ok && unusualMeasures(reading.fitting)).toEqual([]);
  });

  test.each(NAMES)('%s stands with a lean of 2 to 6 degrees', (name) => {
    const { shoes } = fittingOf(JSON.parse(textOf(name)) as Json);
    const leans = SIDES.flatMap((side) => {
      const { foot, last } = shoes[side]!;
      if (!foot) return [];
      const tilt = Math.asin(last.pitch.value / Math.hypot(last.pitch.value, last.tread.value - last.seatLength.value / 2));
      const leg = foot.hipHeight.value - foot.pivotHeight.value;
      return [inDegrees(foot.stance.kind === 'locked' ? foot.stance.ankleAngle.value + tilt : Math.asin(foot.stance.hipAhead.value / leg))];
    });
    expect(leans.length).toBeGreaterThan(0);
    for (const lean of leans) expect(lean > 2 && lean < 6).toBe(true);
  });

  test('the pointed foot of the ferry pilot is found at about −4 degrees', () => {
    const { stance } = fittingOf(JSON.parse(textOf('ferry-pilot')) as Json).shoes.right!.foot!;
    expect(stance.kind === 'locked' && inDegrees(stance.ankleAngle.value)).toBeCloseTo(-4, 0);
  });
});
