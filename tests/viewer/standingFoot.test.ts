import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import { faultsOf } from '../../src/geometry/mesh.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { standingFoot, type DrawnFoot } from '../../viewer/desk/standingFoot.ts';
import { SAMPLES } from '../exports/jobs.ts';

/** The drawn foot of the page: derived from the MakeHuman base mesh, CC0; its ankle and joints as its makers placed them. */
const DRAWN = JSON.parse(readFileSync('viewer/foot/left.json', 'utf8')) as DrawnFoot;
const rockers = Object.entries(SAMPLES).flatMap(([name, fitting]) => {
  const made = design(fitting);
  return made.ok ? made.design.shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [[`${name}, ${shoe.side}`, shoe] as const] : [])) : [];
});

/** Where single places of the drawn foot come to stand. */
function placesOf(shoe: RockerShoe, ...places: readonly (readonly [number, number, number])[]): number[][] {
  const { positions } = standingFoot({ ...DRAWN, positions: [...DRAWN.positions, ...places.flat()], triangles: [] }, shoe), from = DRAWN.positions.length;
  return places.map((_, i) => [...positions.slice(from + 3 * i, from + 3 * i + 3)]);
}

describe('the foot that stands in the solid', () => {
  test.each(rockers)('%s: its ankle joint is the pivot of the profile', (_, shoe) => {
    const [[x, , z]] = placesOf(shoe, [DRAWN.ankle[0], 0, DRAWN.ankle[1]]) as [number[]], { pivot } = shoe.rocker.stance;
    expect(x).toBeCloseTo(pivot[0], 9);
    expect(z).toBeCloseTo(pivot[1] + shoe.rocker.build, 9);
  });

  test.each(rockers)('%s: its underside lies on the insole from the heel to the toes', (_, shoe) => {
    const along = [0, 0.2, 0.5, 0.8, 1].map((share) => share * DRAWN.length), { rocker: { upper, build }, last: { insole } } = shoe;
    for (const [x, , z] of placesOf(shoe, ...along.map((one) => [one, 0, 0] as const))) expect(z! - upper(x!, 0) - build).toBeCloseTo(insole, 9);
  });

  test.each(rockers)('%s: heel, ball and toes lie where the measures say, and it is as broad as the last', (_, shoe) => {
    const [heel, ball, toe] = placesOf(shoe, [0, 0, 0], [DRAWN.ballInner, 0, 0], [DRAWN.length, 0, 0]) as [number[], number[], number[]], { heelBack, ballWidth } = shoe.last, foot = shoe.fitting.foot!;
    expect([heel[0], ball[0], toe[0]].map((x) => x! + heelBack)).toEqual([expect.closeTo(0, 9), expect.closeTo(foot.ballInner.value, 9), expect.closeTo(foot.length.value, 9)]);
    const { positions } = standingFoot(DRAWN, shoe), across = [...positions].filter((_, i) => i % 3 === 1);
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo((ballWidth * (52.83 + 43.22)) / DRAWN.breadth, 1);
  });

  test('it is closed, as drawn and as it stands', () => {
    for (const [, shoe] of rockers) expect(faultsOf(standingFoot(DRAWN, shoe))).toEqual([]);
  });
});
