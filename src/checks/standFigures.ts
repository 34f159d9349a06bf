import { FOAMS } from '../materials/materials.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { carriedBy } from '../roll/carried.ts';
import type { Softness } from '../roll/layer.ts';
import { bulgeOf, midTurns } from '../roll/midArc.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import type { RollBody } from '../roll/rollBody.ts';
import { standingUnder } from '../roll/standing.ts';
import { swayOf } from '../roll/sway.ts';
import { plain, type Plain } from './figure.ts';

type Figures = readonly Plain[];

/** How a shoe stands still, in the order a maker reads it. @param mass kg; what squash needs is left out where nobody weighed the client */
export function standFigures(shoe: RockerShoe, mass: number | undefined): Figures {
  const body = rollBodyOf(shoe);
  return [...room(shoe, body), ...(mass === undefined ? [] : squashed(shoe, body, mass))];
}

/** How far the weight can go before the shoe rolls off its mid arc. */
function room(shoe: RockerShoe, body: RollBody): Figures {
  const turns = midTurns(shoe, body), { mid: { back, front } } = swayOf(body, carriedBy(shoe), turns);
  return [
    plain('swayArcBack', 'Standing, the weight can go back to the rear end of the mid arc', back, 'mm'),
    plain('swayArcFront', 'Standing, the weight can go forward to the front end of the mid arc', front, 'mm'),
    plain('bulgeMid', 'Mid arc bulges below the line between its ends', bulgeOf(body, turns), 'mm'),
  ];
}

/** What squash leaves to stand on: both ends of what is sold under the name of the foam. */
function squashed(shoe: RockerShoe, body: RollBody, mass: number): Figures {
  const under = standingUnder(shoe, body, mass), { foam } = shoe.order, [softest, hardest] = FOAMS[foam].modulus;
  const ends = ENDS.map(([key, softness]) => ({ key, one: under(softness, 1), two: under(softness, 2), words: `${foam} at its ${softness}, ${softness === 'softest' ? softest : hardest} MPa` }));
  return [
    ...ends.map(({ key, one, words }) => plain(`squash${key}`, `Sole squashes under the standing point, on one foot (${words})`, one.depth, 'mm')),
    ...ends.map(({ key, two, words }) => plain(`steady${key}`, `Push of two soles back against a tilt / what a stiff body of this weight needs to stay up (1.00: neutral, like a wheel; ${words})`, two.holdsAll / two.needs, '')),
  ];
}
const ENDS = [['Soft', 'softest'], ['Hard', 'hardest']] as const satisfies readonly (readonly [string, Softness])[];
