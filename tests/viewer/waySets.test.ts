import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { packInShort } from '../../src/checks/packWords.ts';
import { deg } from '../../src/checks/say.ts';
import { designWith } from '../../src/designWith.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { inDegrees } from '../../src/geometry/units.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { waysShown } from '../../viewer/desk/waysShown.ts';
import { withValue, type Json, type Sheet } from '../../viewer/keep/sheet.ts';

const gardener = JSON.parse(readFileSync('samples/market-gardener/sheet.json', 'utf8')) as Sheet, path = 'right.order.stiffener';
function packOn(sheet: Sheet): Pack {
  const reading = readSheet(JSON.stringify(sheet));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const designing = designWith(() => [], reading.fitting, 'careful');
  if (!designing.ok) throw new Error('no shape');
  const shoe = designing.design.shoes.find((one) => one.kind === 'rocker'), pack = shoe?.kind === 'rocker' ? packFor(shoe, reading.fitting) : undefined;
  if (!pack) throw new Error('no pack');
  return pack;
}

describe('a way that is taken', () => {
  const cases: readonly (readonly [string, Json])[] = [['kept to', { wanted: 'rigid', cloth: 'carbon unidirectional 300', thicknessAtMost: 9 }], ['short of what is asked', { wanted: 'rigid', cloth: 'carbon unidirectional 300', thicknessAtMost: 3, edges: 6 }]];
  test.each(cases)('is the very pack that was shown: %s', (_, order) => {
    const sheet = withValue(gardener, path, order), [shown] = waysShown({ sheet: JSON.stringify(sheet), lengths: 'mm' });
    const { ways, sets } = shown!;
    expect([sets[0], sets.length]).toEqual([undefined, ways.length]);
    expect(sets.slice(1).every((one) => one !== undefined && one.length > 0) && sets.length > 2).toBe(true);
    for (const [i, { way, numbers }] of ways.entries()) {
      if (i === 0) continue;
      const put = packOn((sets[i] ?? []).reduce((now, [field, value]) => withValue(now, `${path}.${field}`, value), sheet));
      expect(way.slice(way.indexOf(': ') + 2)).toBe(packInShort(put, 'mm'));
      // A row tells of the foam as it is under the pack that is found; without a core there is more of it.
      if (put.underFoam) expect(inDegrees(put.assessed.bench.bend)).toBeLessThan(Number.parseFloat(numbers.find((one) => one.endsWith('°'))!));
      else expect(numbers).toContain(deg(inDegrees(put.assessed.bench.bend), 2));
    }
  }, 60_000);
});
