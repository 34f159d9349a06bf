import type { Foot } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { partsOf, type MatchShoe, type Pair, type RockerShoe, type Shoe } from '../pair/shoe.ts';
import { footNumbers, standInShoe } from '../profile/stance.ts';
import { carriedBy, type Carried } from '../roll/carried.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { ordinaryBody } from '../roll/ordinary.ts';
import type { RollBody } from '../roll/rollBody.ts';
import { drivenRolls, type Ankle } from './drive.ts';
import { differencesOf, type StepDifferences } from './differences.ts';
import { stepFigures, type StepFigures } from './figures.ts';
import { FLAT_WITHIN, type WalkOn } from './frame.ts';
import { ordinaryShape, type OrdinaryShape } from './ordinaryShape.ts';
import { STANCE_PART } from './phases.ts';
import { curveOf } from './stanceCurve.ts';

/** One shoe of the pair as it is walked on, and an ordinary shoe of the same heights under the same leg. */
export interface ShoeWalk {
  readonly side: Side;
  readonly kind: Shoe['kind'];
  readonly ankle: Ankle;
  readonly own: WalkOn;
  /** Of a matched shoe, which rolls like an ordinary one, the same. */
  readonly ordinary: WalkOn;
  /** What an ordinary shoe looks like from the side. */
  readonly shape: OrdinaryShape;
  /** The other foot's measures stand in for those of this one. */
  readonly borrowed: boolean;
  readonly figures: StepFigures;
  readonly ordinaryFigures: StepFigures;
}

/** The pair walking, left before right. */
export interface Walking {
  readonly shoes: readonly ShoeWalk[];
  /** How far the body comes in a cycle of two steps, the mean of what both stances carry it. */
  readonly stride: Mm;
  /** Of a pair: how the left step differs from the right one. */
  readonly differences: StepDifferences | undefined;
}

/** How a pair walks; worked out once for each pair. Never throws. */
export function walkingOf(pair: Pair): Walking {
  const known = walked.get(pair) ?? work(pair);
  walked.set(pair, known);
  return known;
}
const walked = new WeakMap<Pair, Walking>();

function work({ shoes, fitting }: Pair): Walking {
  const rocker = shoes.find((shoe): shoe is RockerShoe => shoe.kind === 'rocker');
  const walks = shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [ofRocker(shoe)] : rocker ? ofMatch(shoe, rocker, legOf(shoe, rocker, fitting)) : []));
  const carried = walks.map(({ figures }) => figures.hipForward);
  return { shoes: walks, stride: carried.reduce((sum, one) => sum + one, 0) / carried.length / STANCE_PART, differences: differencesOf(walks.map(({ figures }) => figures)) };
}

function ofRocker(shoe: RockerShoe): ShoeWalk {
  const { own, ordinary, ankle } = walkOnRocker(shoe), { rim } = shoe.bodies.whole;
  return told(shoe, ankle, own, ordinary, ordinaryShape(shoe, [rim.start, own.carried.ball[0], rim.end]), false);
}

/** A leg on its rocker, and on an ordinary shoe in its place. */
export function walkOnRocker(shoe: Omit<RockerShoe, 'solids'>): Pick<ShoeWalk, 'own' | 'ordinary' | 'ankle'> {
  const { foot } = shoe.fitting, { leg, lean } = shoe.rocker.stance, carried = carriedBy(shoe), curve = curveOf(foot?.walk);
  const ankle: Ankle = foot?.ankleLocked ? { kind: 'locked', lean, range: foot.ankleRange?.value ?? 0 } : { kind: 'free' };
  const on = (body: RollBody, flatWithin: Rad): WalkOn => ({ body, carried, leg, curve, rolls: drivenRolls(curve, ankle), flatWithin });
  return { ankle, own: on(rollBodyOf(shoe), 0), ordinary: on(ordinaryBody(carried, shoe.bodies.whole.rim.start), FLAT_WITHIN) };
}

/** A matched shoe has no foot of its own on the sheet: the other one's stands in it, with a free ankle, on a leg that reaches the same hip. */
function ofMatch(shoe: MatchShoe, rocker: RockerShoe, leg: Mm): ShoeWalk[] {
  const { fitting: { foot } } = shoe, stands = foot ?? rocker.fitting.foot;
  if (!stands) return [];
  const carried = carriedIn(shoe, stands, leg), ankle: Ankle = { kind: 'free' };
  const rim = partsOf(shoe)?.bodies.whole.rim ?? { start: 0, end: shoe.last.length };
  const body = ordinaryBody(carried, rim.start), curve = curveOf(foot?.walk), on: WalkOn = { body, carried, leg, curve, rolls: drivenRolls(curve, ankle), flatWithin: FLAT_WITHIN };
  return [told(shoe, ankle, on, on, ordinaryShape(shoe, [rim.start, carried.ball[0], rim.end]), foot === undefined)];
}

function told({ side, kind }: Shoe, ankle: Ankle, own: WalkOn, ordinary: WalkOn, shape: OrdinaryShape, borrowed: boolean): ShoeWalk {
  const figures = stepFigures(own);
  return { side, kind, ankle, own, ordinary, shape, borrowed, figures, ordinaryFigures: own === ordinary ? figures : stepFigures(ordinary) };
}

/** The shorter leg is shorter by what is to be corrected. */
function legOf({ side }: MatchShoe, { rocker: { stance: { leg } } }: RockerShoe, { wearer: { legDifference: { correct, shorter } } }: Pair['fitting']): Mm {
  return shorter === undefined ? leg : leg + (shorter === side ? -correct : correct);
}

function carriedIn({ last, stands }: MatchShoe, foot: Foot, leg: Mm): Carried {
  const { stance, ...numbers } = footNumbers(foot), hipAhead = stance.kind === 'free' ? stance.hipAhead : 0;
  const { pivot: [x, up], hipUp } = standInShoe({ ...numbers, hipHeight: numbers.pivotHeight + leg, stance: { kind: 'free', hipAhead } }, { ...last, pitch: stands.seat - stands.ball });
  const pivot = [x, up + stands.ball - last.insole] as const;
  return { pivot, hip: [x + hipAhead, pivot[1] + hipUp], ball: [last.tread, stands.ball] };
}
