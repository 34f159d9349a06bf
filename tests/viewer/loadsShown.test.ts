import { expect, test } from 'vitest';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { loadsShown } from '../../viewer/desk/loadsShown.ts';
import { packOnSheet } from '../stiffener/onSheet.ts';

test.each([['flat', {}], ['cambered', { camber: 3 }], ['bonded', { bond: 0.5 }]])('%s: what is hung on the bench is drawn as far down as its gauges are told to show', (_, more) => {
  const { pack } = packOnSheet({ wanted: 'slight flex', plies: Array.from({ length: 5 }, () => ({ pack: 'below' })), ...more }), test = benchTestOf(pack)!;
  for (const hanging of [test.finished, test.bare]) {
    const { shape } = loadsShown(pack, 'mm', '').find(({ of }) => of === hanging.of)!, down = (x: number): number => shape.reduce((near, one) => (Math.abs(one[0] - x) < Math.abs(near[0] - x) ? one : near))[2];
    expect(down(hanging.loadAt) / hanging.droop).toBeCloseTo(1, 2);
    expect(down(hanging.clampAt)).toBeCloseTo(0, 6);
  }
});
