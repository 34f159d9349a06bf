import { expect } from 'vitest';
import { endAngle, endOf, startAngle, startOf } from '../../src/profile/groundFace.ts';
import { Infeasible } from '../../src/profile/infeasible.ts';
import { remediesFor, withRemedy } from '../../src/profile/remedy.ts';
import { soleFrom, type SolvedSole } from '../../src/solid/fromRocker.ts';
import { people } from './people.ts';
import { anyOrder, chanceFrom, fittedCase } from './population.ts';

/** ANSUR II (2012 US Army survey, Gordon et al. 2014): all 6,068 people with `npm run population`, every hundredth otherwise. */
export const everyone = people();
const all = process.env.POPULATION === 'all';
export const chosen = everyone.filter((_, i) => all || i % 100 === 0);

/**
 * Puts every chosen person into a run of other orders: a design each, or a refusal with a value that was put in and works.
 * A hundredth of the people take turns at a quarter of the orders each.
 */
export function tryOrders(from: number, to: number): void {
  const count = { designs: 0, refused: 0, mendedByPair: 0 };
  for (const [i, person] of chosen.entries()) {
    const chance = chanceFrom(1_000_000 + i * 100 + from), fitted = fittedCase(person, chance);
    for (let k = from; k < to; k++) {
      const given = anyOrder(fitted, chance);
      if (!all && (i + k) % 4 !== 0) continue;
      try { requireSound(soleFrom(given), `${person.id}, order ${k}`); count.designs++; }
      catch (error) {
        if (!(error instanceof Infeasible)) throw error;
        count.refused++;
        const [remedy] = remediesFor(given, error, soleFrom);
        if (!remedy) throw new Error(`${person.id}, order ${k}: no remedy for ${error.message} ${JSON.stringify(given.order)}`);
        if (remedy.length > 1) count.mendedByPair++;
        requireSound(soleFrom(withRemedy(given, remedy)), `${person.id}, order ${k}, mended`);
      }
    }
  }
  // Both ways must have been walked, or this has proved nothing.
  expect(count.designs).toBeGreaterThan(chosen.length);
  expect(count.refused).toBeGreaterThan(chosen.length / 3);
  if (all) console.log(count);
}

/**
 * Tangent at every joint, as thick as asked (to 5 µm: where the strike point all but reaches the back edge, the minimum
 * there changes between two places looked at), and every number finite.
 */
export function requireSound({ rocker, given }: Pick<SolvedSole, 'rocker' | 'given'>, who: string): void {
  const { face, thinnest, build, governs, upper } = rocker, { last, order: { seatAtLeast } } = given;
  const joints = face.pieces.slice(1).map((piece, i) => {
    const before = face.pieces[i]!, [ax, az] = endOf(before), [bx, bz] = startOf(piece);
    return Math.hypot(ax - bx, az - bz) + Math.abs(endAngle(before) - startAngle(piece));
  });
  const seat = build + upper(last.seatLength / 2, 0), asked = seatAtLeast?.height ?? -Infinity;
  const sound = joints.every((gap) => gap < 1e-7) && thinnest.spare > -1e-9 && Number.isFinite(build)
    && seat > asked - 1e-9 && (governs === 'order' ? seat < asked + 1e-9 : thinnest.spare < 1e-4);
  if (!sound) throw new Error(`${who}: joints ${joints}, spare ${thinnest.spare}, build ${build}`);
}
