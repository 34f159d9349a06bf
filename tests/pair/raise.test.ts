import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../src/geometry/mesh.ts';
import { pointAlong } from '../../src/geometry/path.ts';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { angleAt, heightAt, offsetInward } from '../../src/profile/groundFace.ts';
import { raiseUnder, type Raise, type RaiseMade } from '../../src/pair/raise.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import type { SheetMatch } from '../../src/fitting/fitting.ts';
import type { Last } from '../../src/last/last.ts';
import { plainLast } from '../support/cases.ts';

const order: SheetMatch = {
  kind: 'match', seatHeightNow: { value: 28, origin: 'measured' }, ballHeightNow: { value: 14, origin: 'measured' },
  taper: { heelInner: 0, heelOuter: 0, foreInner: 0, foreOuter: 0 }, edgeBeyond: { heel: 0, ball: 0, toe: 0 },
  outsole: { thickness: 3, material: 'microcellular rubber' }, foam: 'firm EVA',
};

/** Slow judge: foam over the outsole, all round the edge and along the middle. */
function leastFoam({ shape }: RaiseMade): number {
  const inner = offsetInward(shape.face, shape.outsole);
  const foamAt = ([x, y]: readonly [number, number]): number => shape.upper(x, y) + shape.build - heightAt(inner, x);
  return Math.min(...Array.from({ length: 2000 }, (_, i) => foamAt(pointAlong(shape.edge, (i * shape.edge.length) / 2000))));
}

const slopeAtTip = ({ shape }: RaiseMade): number => inDegrees(angleAt(shape.face, shape.last.length));

describe('a tip that is left open', () => {
  test.each([[14, 12], [30, 30], [60, 60], [110, 90]])('of a raise of %d at the seat and %d at the ball is mild and keeps foam', (seat, ball) => {
    const raising = raiseUnder(plainLast, order, { seat, ball });
    if (raising.kind !== 'made') throw new Error(JSON.stringify(raising));
    expect(slopeAtTip(raising.made)).toBeLessThanOrEqual(25.001);
    expect(leastFoam(raising.made)).toBeGreaterThan(1.99);
    for (const mesh of Object.values(solidsOf(raising.made.bodies, 0.1))) expect(faultsOf(mesh)).toEqual([]);
  });
  test('stays at 5 mm where that is mild enough', () => {
    expect(raiseUnder(plainLast, { ...order, outsole: { thickness: 2, material: 'solid rubber' } }, { seat: 12, ball: 8 })).toMatchObject({ kind: 'made', made: { tip: 5 } });
  });
});

test('a thin tip on a tall raise is refused with a tip that works', () => {
  const raising = raiseUnder(plainLast, { ...order, tip: 5 }, { seat: 90, ball: 90 });
  if (raising.kind !== 'refused' || raising.trouble.why !== 'tip does not do') throw new Error(JSON.stringify(raising));
  expect(raiseUnder(plainLast, { ...order, tip: raising.trouble.works }, { seat: 90, ball: 90 })).toMatchObject({ kind: 'made' });
});

test.each([
  ['pointed', 15, 30, [10, 15, 20, 25, 30]], ['pointed', 10, 50, [10, 20, 35, 50]], ['pointed', 15, 50, [10, 18, 25]], ['round', 25, 40, [10, 25, 40]],
] as const)('walls that would meet at a tall tip do not keep a lower one from being made: %s toe, %d° taper, %d mm', (toeShape, lean, height, tips) => {
  const last = { ...plainLast, toeShape }, raise = { seat: height, ball: height }, none = { heelInner: 0, heelOuter: 0 };
  const asked: SheetMatch = { ...order, outsole: { thickness: 2, material: 'solid rubber' }, taper: { ...none, foreInner: degrees(lean), foreOuter: degrees(lean) } };
  for (const tip of tips) expect([tip, raiseUnder(last, { ...asked, tip }, raise)]).toMatchObject([tip, { kind: 'made', made: { tip } }]);
  const open = raiseUnder(last, asked, raise);
  expect(open).toMatchObject({ kind: 'made' });
  for (const mesh of open.kind === 'made' ? Object.values(solidsOf(open.made.bodies, 0.2)) : []) expect(faultsOf(mesh)).toEqual([]);
});

test('any raise is made whole, or refused for a reason that holds', () => {
  const mm = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: min * 2, max: max * 2 }).map((halves) => halves / 2);
  const lasts = fc.record({ tread: mm(170, 215), toeSpring: mm(0, 25), inflare: mm(-6, 14), toeShape: fc.constantFrom('round', 'pointed', 'square', 'oblique') })
    .map((changes): Last => ({ ...plainLast, ...changes }));
  const orders = fc.record({
    tip: fc.option(mm(4, 40), { nil: undefined }), beyond: mm(0, 6), outsole: mm(1, 6), lean: fc.integer({ min: -10, max: 10 }),
  }).map(({ tip, beyond, outsole, lean }): SheetMatch => ({
    ...order, ...(tip === undefined ? {} : { tip }), edgeBeyond: { heel: beyond, ball: beyond, toe: beyond },
    outsole: { thickness: outsole, material: 'solid rubber' }, taper: { heelInner: degrees(lean), heelOuter: degrees(lean), foreInner: 0, foreOuter: degrees(-lean) },
  }));
  const raises = fc.record({ seat: mm(-10, 120), ball: mm(-10, 120) }).map(({ seat, ball }): Raise => ({ seat, ball: Math.min(seat + 20, Math.max(ball, seat - 40)) }));
  const kinds = { level: 0, made: 0, refused: 0 };
  fc.assert(fc.property(lasts, orders, raises, (last, asked, raise) => {
    const raising = raiseUnder(last, asked, raise);
    kinds[raising.kind]++;
    if (raising.kind === 'made') {
      expect(leastFoam(raising.made)).toBeGreaterThan(0.5 - 1e-6);
      for (const mesh of Object.values(solidsOf(raising.made.bodies, 0.3))) expect(faultsOf(mesh)).toEqual([]);
    }
    if (raising.kind === 'refused' && raising.trouble.why === 'tip does not do')
      expect(raiseUnder(last, { ...asked, tip: raising.trouble.works }, raise).kind).toBe('made');
    if (raising.kind === 'refused' && raising.trouble.why === 'too little') {
      const more = raising.trouble.missing + 1e-6, { tip: _, ...open } = asked;
      expect(more).toBeGreaterThan(0);
      expect(raiseUnder(last, open, { seat: raise.seat + more, ball: raise.ball + more }).kind).toBe('made');
    }
  }), { seed: 20260311, numRuns: 150 });
  expect(Math.min(kinds.made, kinds.refused)).toBeGreaterThan(20);
}, 60_000);
