import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultsOf, mirrored, volumeOf } from '../../src/geometry/mesh.ts';
import { endAngle, endOf, startAngle, startOf } from '../../src/profile/groundFace.ts';
import { Infeasible } from '../../src/profile/infeasible.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { stlBytes } from '../../src/exports/stl.ts';
import { leastSpare } from '../judges/leastSpare.ts';
import { chosen } from '../support/everyone.ts';
import { anyOrder, chanceFrom, fittedCase } from '../support/population.ts';
import { runs } from '../support/runs.ts';

test('any order that has a shape: tangent arcs, nothing thinner than asked, closed skins that survive the file, left and right alike', () => {
  let made = 0;
  fc.assert(fc.property(fc.nat({ max: chosen.length - 1 }), fc.nat(), fc.constantFrom(0.05, 0.2), (who, seed, gap) => {
    const chance = chanceFrom(seed), given = anyOrder(fittedCase(chosen[who]!, chance), chance);
    let sole: ReturnType<typeof soleFrom>;
    try { sole = soleFrom(given); } catch (error) { if (error instanceof Infeasible) return; throw error; }
    made++;
    const { bodies, rocker } = sole, { pieces } = rocker.face;
    pieces.slice(1).forEach((piece, i) => {
      const [ax, az] = endOf(pieces[i]!), [bx, bz] = startOf(piece);
      expect(Math.hypot(ax - bx, az - bz)).toBeLessThan(1e-7);
      expect(Math.abs(endAngle(pieces[i]!) - startAngle(piece))).toBeLessThan(1e-7);
    });
    expect(leastSpare(given, rocker)).toBeGreaterThan(-1e-6);
    const solids = solidsOf(bodies, gap);
    for (const [name, mesh] of Object.entries(solids)) {
      expect([name, faultsOf(mesh)]).toEqual([name, []]);
      expect(volumeOf(mirrored(mesh))).toBeCloseTo(volumeOf(mesh), 4);
      expect(stlBytes(mesh, name).length).toBeGreaterThan(84);
    }
  }), { seed: 20260311, numRuns: runs(40, 1200) });
  expect(made).toBeGreaterThan(20);
}, 120_000);
