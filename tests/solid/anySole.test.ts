import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultsOf, mirrored, volumeOf } from '../../src/geometry/mesh.ts';
import { endAngle, endOf, heightAt, startAngle, startOf } from '../../src/profile/groundFace.ts';
import { Infeasible } from '../../src/profile/infeasible.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { upperSurface } from '../../src/solid/soleShape.ts';
import { stlBytes } from '../../src/exports/stl.ts';
import { chosen } from '../support/everyone.ts';
import { anyOrder, chanceFrom, fittedCase } from '../support/population.ts';

test('any order that has a shape: tangent arcs, nothing thinner than asked, closed skins that survive the file, left and right alike', () => {
  let made = 0;
  fc.assert(fc.property(fc.nat({ max: chosen.length - 1 }), fc.nat(), fc.constantFrom(0.05, 0.2), (who, seed, gap) => {
    const chance = chanceFrom(seed), given = anyOrder(fittedCase(chosen[who]!, chance), chance);
    let sole: ReturnType<typeof soleFrom>;
    try { sole = soleFrom(given); } catch (error) { if (error instanceof Infeasible) return; throw error; }
    made++;
    const { shape, bodies, rocker } = sole, { pieces } = rocker.face;
    pieces.slice(1).forEach((piece, i) => {
      const [ax, az] = endOf(pieces[i]!), [bx, bz] = startOf(piece);
      expect(Math.hypot(ax - bx, az - bz)).toBeLessThan(1e-7);
      expect(Math.abs(endAngle(pieces[i]!) - startAngle(piece))).toBeLessThan(1e-7);
    });
    const solids = solidsOf(bodies, gap), least = Math.min(...Object.values(given.order.minima));
    for (const [name, mesh] of Object.entries(solids)) {
      expect([name, faultsOf(mesh)]).toEqual([name, []]);
      expect(volumeOf(mirrored(mesh))).toBeCloseTo(volumeOf(mesh), 4);
      expect(stlBytes(mesh, name).length).toBeGreaterThan(84);
    }
    const { positions } = solids.whole, top = upperSurface(shape, 0);
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = [positions[i]!, positions[i + 1]!, positions[i + 2]!];
      if (Math.abs(z - top(x, y)) < 1e-9) expect(z - heightAt(shape.face, rollX(shape.line, [x, y]))).toBeGreaterThan(least - 1e-3);
    }
  }), { seed: 20260311, numRuns: 120 });
  expect(made).toBeGreaterThan(60);
}, 120_000);
