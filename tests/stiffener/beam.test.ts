import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beamOf, bentAt, type BeamStretch, type Held } from '../../src/stiffener/beam.ts';
import { cantileverJudge } from '../judges/sandwichBeam.ts';

const evenly = (length: number, n: number): number[] => Array.from({ length: n + 1 }, (_, i) => (i * length) / n);
const CLAMPED: readonly Held[] = [{ node: 0, what: ['height', 'slope', 'turn'] }];
const same = (n: number, stretch: BeamStretch): BeamStretch[] => Array.from({ length: n }, () => stretch);
/** A beam without any tie to speak of. */
const plain = (stiffness: number): BeamStretch => ({ own: stiffness, tied: 0, tie: stiffness * 1e-9 });
const deflection = (length: number, n: number, stretch: BeamStretch, force: number): number => beamOf(evenly(length, n), same(n, stretch), CLAMPED)([{ node: n, force }]).height[n]!;
const near = (value: number, wanted: number, share: number): void => expect(Math.abs(value / wanted - 1), `${value} for ${wanted}`).toBeLessThan(share);

describe('beams of the books', () => {
  test('cantilever 1 × 1, L 10, E 4000, 0.1 at the tip: 0.1; spread 0.1 for each length: 0.375 (test notes of Albany, recomputed)', () => {
    const EI = 4000 / 12;
    near(deflection(10, 10, plain(EI), 0.1), 0.1, 1e-6);
    const n = 400, spread = Array.from({ length: n + 1 }, (_, node) => ({ node, force: (0.1 * 10 / n) * (node === 0 || node === n ? 0.5 : 1) }));
    near(beamOf(evenly(10, n), same(n, plain(EI)), CLAMPED)(spread).height[n]!, 0.375, 1e-4);
  });
  test('Timoshenko cantilever (test header of MOOSE): E 2.60072400269, k G A 0.85 · 1.00027846257 · 0.554256, I 0.0141889, L 4: 586.6', () => {
    const EI = 2.60072400269 * 0.0141889, kGA = 0.85 * 1.00027846257 * 0.554256;
    near(deflection(4, 80, { own: EI * 1e-7, tied: EI, tie: kGA }, 1), 586.6, 1e-3);
  });
  test('simple beam loaded in its middle, P L³/48 E I, with shear P L/4 k G A more; both ends fixed P L³/192 E I', () => {
    const n = 100, ends: Held[] = [{ node: 0, what: ['height'] }, { node: n, what: ['height'] }], fixed: Held[] = [0, n].map((node) => ({ node, what: ['height', 'slope', 'turn'] as const }));
    const middle = (stretch: BeamStretch, held: readonly Held[]): number => beamOf(evenly(200, n), same(n, stretch), held)([{ node: n / 2, force: 10 }]).height[n / 2]!;
    near(middle(plain(1e6), ends), (10 * 200 ** 3) / 48e6, 1e-6);
    near(middle({ own: 1, tied: 1e6, tie: 5000 }, ends), (10 * 200 ** 3) / 48e6 + (10 * 200) / (4 * 5000), 1e-3);
    near(middle(plain(1e6), fixed), (10 * 200 ** 3) / 192e6, 1e-6);
  });
  test('sandwich of 6.28, 80 wide, 120 between supports, 200 N: bending 0.017 mm, shear 1.98 mm, and thin faces take off little', () => {
    const n = 60, EI = 5257.5e3 * 80, own = 2 * 50_000 * 80 * 0.5 ** 3 / 12, S = 1.8 * 80 * 20.5 ** 2 / 20, ends: Held[] = [{ node: 0, what: ['height'] }, { node: n, what: ['height'] }];
    const middle = (of: number): number => beamOf(evenly(120, n), same(n, { own: of, tied: EI - of, tie: S }), ends)([{ node: n / 2, force: 200 }]).height[n / 2]!;
    near(middle(1), 0.017 + 1.98, 5e-3);
    expect(middle(own)).toBeLessThan(middle(1));
  });
  test('with much tie it is a plain beam of both, with none each face bends for itself', () => {
    near(deflection(70, 35, { own: 3e5, tied: 2e7, tie: 1e12 }, 100), (100 * 70 ** 3) / (3 * 2.03e7), 1e-3);
    near(deflection(70, 35, { own: 3e5, tied: 2e7, tie: 1e-3 }, 100), (100 * 70 ** 3) / (3 * 3e5), 1e-3);
  });
});

describe('a sandwich of changing section', () => {
  const held = (x: number): number => 1 + 0.6 * Math.sin(x / 11);
  test.each([
    ['EVA', 3e5, 2e7, 750], ['leather board', 3e5, 2e7, 16_500], ['12 mm of foam', 3e5, 2.3e8, 2_100], ['thick faces', 4e6, 2e7, 3_000],
  ])('%s: as finite differences of its faces\' force have it, 20 000 steps, deflection within 0.05 % and curve within 0.5 %', (_, own, tied, tie) => {
    const of = { own: (x: number) => own * held(x), tied: (x: number) => tied * (1.5 - x / 140) ** 2, tie: (x: number) => tie * (1.5 - x / 140) }, n = 70, nodes = evenly(70, n);
    const stretches = nodes.slice(1).map((to, i): BeamStretch => { const x = (to + nodes[i]!) / 2; return { own: of.own(x), tied: of.tied(x), tie: of.tie(x) }; });
    const bent = beamOf(nodes, stretches, CLAMPED)([{ node: n, force: 143 }]), judge = cantileverJudge(of, 70, 143);
    near(bent.height[n]!, judge.deflection, 5e-4);
    for (const stretch of [5, 20, 40]) {
      const { own: found } = bentAt(bent, nodes, stretch, 0), after = bentAt(bent, nodes, stretch - 1, 1).own;
      near((found + after) / 2, judge.curve(nodes[stretch]!), 5e-3);
    }
  });
  test.each([['thinner to the tip', -1], ['thicker to the tip', 1]])('faces that lean, the core %s: as finite differences have it, within 0.1 %%', (_, sign) => {
    const d = (x: number): number => 5 + (sign * 3 * (x - 35)) / 35, own = 3e5, of = { own: () => own, tied: (x: number) => 1.4e6 * d(x) ** 2, tie: (x: number) => (6 * 80 * d(x) ** 2) / (d(x) - 0.75), apart: d };
    const n = 70, nodes = evenly(70, n), lean = (x: number): number => (sign * 3) / 35 / d(x);
    const stretches = nodes.slice(1).map((to, i): BeamStretch => { const x = (to + nodes[i]!) / 2; return { own, tied: of.tied(x), tie: of.tie(x), lean: lean(x) }; }), tip = (all: readonly BeamStretch[]): number => beamOf(nodes, all, CLAMPED)([{ node: n, force: 143 }]).height[n]!;
    near(tip(stretches), cantileverJudge(of, 70, 143).deflection, 1e-3);
    // Without the lean it would be off by far more.
    expect(Math.abs(tip(stretches.map((one) => ({ ...one, lean: 0 }))) / cantileverJudge(of, 70, 143).deflection - 1)).toBeGreaterThan(0.02);
  });
  test('plain first-order shear would overstate the bend of a thin soft core by more than a quarter', () => {
    const own = 3.15e5, tied = 2.03e7, tie = 430, lever = 70;
    const alone = lever ** 3 / (3 * (own + tied)) + lever / tie;
    expect(alone / deflection(lever, 70, { own, tied, tie }, 1)).toBeGreaterThan(1.25);
  });
  test('the moment is carried by both: own and tied curves times their stiffness add up to the force times its arm', () => {
    fc.assert(fc.property(fc.double({ min: 1e5, max: 1e7, noNaN: true }), fc.double({ min: 1e6, max: 1e8, noNaN: true }), fc.double({ min: 300, max: 3e4, noNaN: true }), (own, tied, tie) => {
      const n = 70, nodes = evenly(70, n), bent = beamOf(nodes, same(n, { own, tied, tie }), CLAMPED)([{ node: n, force: 100 }]);
      for (const i of [10, 35, 60]) {
        const a = bentAt(bent, nodes, i, 0), b = bentAt(bent, nodes, i, 1);
        near(own * (a.own + b.own) / 2 + tied * (a.tied + b.tied) / 2, 100 * (70 - nodes[i]! - 0.5), 1e-4);
      }
    }), { numRuns: 40 });
  });
  test('any stiffness more, anywhere, bends less', () => {
    const part = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(fc.property(fc.array(fc.tuple(part, part, part), { minLength: 20, maxLength: 20 }), fc.nat(19), fc.constantFrom('own', 'tied', 'tie'), (parts, where, what) => {
      const stretches = parts.map(([a, b, c]): BeamStretch => ({ own: 3e5 * a, tied: 2e7 * b, tie: 2000 * c })), more = stretches.map((one, i) => (i === where ? { ...one, [what]: one[what] * 1.5 } : one));
      const tip = (of: readonly BeamStretch[]): number => beamOf(evenly(70, 20), of, CLAMPED)([{ node: 20, force: 100 }]).height[20]!;
      expect(tip(more)).toBeLessThanOrEqual(tip(stretches) * (1 + 1e-12));
    }), { numRuns: 60 });
  });
  test('a beam that nothing holds is refused', () => expect(() => beamOf([0, 1, 2], same(2, plain(10)), [])).toThrow(RangeError));
});
