import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import { FOAMS } from '../materials/materials.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { carriedBy } from '../roll/carried.ts';
import type { Softness, Stood } from '../roll/layer.ts';
import { midTurns } from '../roll/midArc.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { contactAt, type RollBody } from '../roll/rollBody.ts';
import { SLOPES, standingOn, type OnSlope } from '../roll/slopes.ts';
import { standingUnder } from '../roll/standing.ts';
import { swayOf, type Reach, type Sway } from '../roll/sway.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import { estimatesBehind } from './restsOn.ts';
import { mm, rounded } from './say.ts';
import { flatRoom } from './standing.ts';
import { caseOf } from './thickness.ts';

/** What of a sole touches the level floor under one foot, its foam as soft or as hard as is sold; places along the walking line at rest. */
export interface Touching { readonly softness: Softness; readonly words: string; readonly from: Mm; readonly to: Mm; readonly length: Mm; readonly depth: Mm }

/** What a standing flat does: room before the shoe rolls, and how hard two soles push back against a tilt, as a share of what a stiff body needs. */
export interface FlatBought {
  readonly flat: Mm;
  /** Whether the shoe has it; else it is what could be ordered. */
  readonly ordered: boolean;
  readonly room: Reach;
  /** Softest and hardest foam; nothing where nobody was weighed. */
  readonly holds: { readonly with: readonly [number, number]; readonly without: readonly [number, number] } | undefined;
}

/** How one rocker stands, all that a picture of it needs. */
export interface StandSeen {
  readonly side: Side;
  readonly estimated: boolean;
  /** Right under the hip, and both ends of the mid arc, along the walking line at rest. */
  readonly under: Mm;
  readonly mid: readonly [rear: Mm, front: Mm];
  readonly sway: Sway;
  /** Nothing where nobody was weighed. */
  readonly touching: readonly Touching[];
  readonly slopes: readonly OnSlope[];
  /** Nothing where the shoe has no flat and no room for one. */
  readonly bought: FlatBought | undefined;
}

/** Works out how a rocker stands; puts the shoe without its flat, or with one, together once, so it waits while a hand drags. */
export function standSeen(shoe: RockerShoe, { wearer: { mass } }: Fitting): StandSeen {
  const body = rollBodyOf(shoe), carried = carriedBy(shoe), turns = midTurns(shoe, body);
  return {
    side: shoe.side, estimated: estimatesBehind(shoe, ['standingPoint', 'swayArcBack', 'swayArcFront']).length > 0, under: carried.hip[0],
    mid: [contactAt(body, turns.from)[0], contactAt(body, turns.to)[0]], sway: swayOf(body, carried, turns),
    touching: mass ? touchingOf(shoe, body, mass.value) : [], slopes: SLOPES.map((slope) => standingOn(body, carried, slope)), bought: boughtBy(shoe, body, mass?.value),
  };
}

const ENDS = ['softest', 'hardest'] as const satisfies readonly Softness[];

function touchingOf(shoe: RockerShoe, body: RollBody, mass: number): readonly Touching[] {
  const under = standingUnder(shoe, body, mass), { foam } = shoe.order;
  return ENDS.map((softness, i) => {
    const { from, to, length, depth } = under(softness, 1);
    return { softness, words: `${foam} at its ${softness}, ${FOAMS[foam].modulus[i]} MPa`, from, to, length, depth };
  });
}

function boughtBy(shoe: RockerShoe, body: RollBody, mass: number | undefined): FlatBought | undefined {
  const { mid } = shoe.rocker, own = mid.frontX - mid.rearX, ordered = own > 0, flat = ordered ? own : flatRoom(shoe);
  if (flat === undefined) return undefined;
  const given = caseOf(shoe), changed = { ...given.order, standingFlat: ordered ? 0 : flat }, sole = orInfeasible(() => soleFrom({ ...given, order: changed }));
  if (sole instanceof Infeasible) return undefined;
  const other: Stood = { ...sole, order: changed }, otherBody = rollBodyOf(sole), as = (stood: Stood, on: RollBody): readonly [number, number] => (mass === undefined ? [0, 0] : holdsOf(stood, on, mass));
  const pair = { own: as(shoe, body), other: as(other, otherBody) };
  return {
    flat, ordered, room: ordered ? swayOf(body, carriedBy(shoe), midTurns(shoe, body)).flat : { back: flat / 2, front: flat / 2 },
    holds: mass === undefined ? undefined : ordered ? { with: pair.own, without: pair.other } : { with: pair.other, without: pair.own },
  };
}

function holdsOf(stood: Stood, body: RollBody, mass: number): readonly [number, number] {
  const under = standingUnder(stood, body, mass), of = (softness: Softness): number => { const { holdsAll, needs } = under(softness, 2); return holdsAll / needs; };
  return [of('softest'), of('hardest')];
}

/** What the flat buys, in sentences. */
export function boughtWords({ flat, ordered, room, holds }: FlatBought): readonly string[] {
  return [
    `${ordered ? 'The' : 'A'} standing flat of ${mm(flat)}${ordered ? '' : ' (order.standingFlat), which this shoe has not,'} ${ordered ? 'lets' : 'would let'} the weight go ${mm(room.back)} back and ${mm(room.front)} forward before the shoe rolls; without it, it rolls at once.`,
    ...(holds ? [`On two feet the soles push back against a tilt ${spanOf(holds.with)} times as hard as a stiff body of this weight needs to stay up; without the flat ${spanOf(holds.without)} times.`] : []),
  ];
}

export function spanOf(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)].map((value) => rounded(value, 2));
  return least === most ? `${least}` : `${least} to ${most}`;
}
