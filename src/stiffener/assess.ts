import type { Mm, Rad } from '../geometry/units.ts';
import { faultsOf } from './faults.ts';
import { BENCH_MOMENT, leverOn, loadAhead, stumbleAt, walkingAhead, type RollLoad } from './loads.ts';
import { gradeOf, type Grade } from './grades.ts';
import { judged, type Judgement } from './judged.ts';
import type { Read } from './ply.ts';
import { asOne } from './section.ts';
import { bentCuts, heldSole, soleBeam, type Loaded, type SoleBeam } from './sole.ts';
import type { Plate, Stiffener } from './stiffener.ts';
import { coreReserves, firstPly, largestStrain, lesser, yieldReserve, type FirstPly, type Placed } from './strained.ts';

export interface Asked {
  /** Kg. */
  readonly mass: number;
  readonly wanted: Exclude<Grade, 'flexible'>;
  /** The most it is to bend at the ball; that of the grade where left out. */
  readonly bendAtMost?: Rad;
  /** How many times further the pack bent on the bench than it was reckoned to; 1 where left out. What is told counts it in. */
  readonly softer?: number;
  /** How far ahead of the tread line the bench load and, without a roll, the walking load act; `leverOn` the plate where left out. */
  readonly lever?: Mm;
  /** Moments of the roll that push ahead of the ball (`rollLoads`); without them `walkingMoment` at the lever. */
  readonly walking?: readonly RollLoad[];
  /** N·m for each kg, where no roll tells it; WALKING_MOMENT where left out. */
  readonly walkingMoment?: number;
  /** Body weights that a stumble puts on the tip; STUMBLE_WEIGHTS where left out. */
  readonly stumbleWeights?: number;
  /** Moments that push under the waist, with the foot bearing at heel and ball only: told, not graded. */
  readonly waist?: readonly RollLoad[];
}

/** One load and what it does. Reserves are how many times the load may grow; infinite where nothing of the kind can happen. */
export interface Case {
  readonly load: RollLoad;
  readonly bend: Rad;
  /** How far the tip moves from where the sole at the ball points to, mm. */
  readonly tip: Mm;
  /** J. */
  readonly energy: number;
  readonly strain: number;
  /** Where along the plate the strain is largest. */
  readonly strainAt: Mm;
  readonly firstPly: FirstPly;
  readonly wrinkling: Placed;
  readonly coreShear: Placed;
  readonly yields: Placed;
}

/** One place along the plate, for a plot. Stiffness of both faces as one, N·m²; bench deflection against the ball, mm; walking strain and moment, N·m. */
export interface AlongSole { readonly x: Mm; readonly width: Mm; readonly stiffness: number; readonly deflection: Mm; readonly strain: number; readonly moment: number }

export interface Assessed {
  readonly grade: Grade;
  readonly lever: Mm;
  /** Clamped up to the tread line, as on the bench. */
  readonly bench: Case;
  /** The worst moment of walking, the foot bearing at heel and ball. */
  readonly walking: Case;
  /** The whole weight and more on the tip, once. */
  readonly stumble: Case;
  /** Both, if a bottom whose camber nobody measured is dished as most are. */
  readonly ifDished?: Strained;
  readonly waist?: Case;
  readonly along: readonly AlongSole[];
  readonly judgements: readonly Judgement[];
}

/** What a stiffener does in a shoe, or all that is wrong with what was given. Linear: beyond about 15° of bend it tells more than there would be. */
export function assess(stiffener: Stiffener, plate: Plate, asked: Asked): Read<Assessed> {
  const faults = faultsOf(stiffener, plate, asked);
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: reckon(stiffener, plate, asked) };
}

/** What strains and breaks a pack. */
export interface Strained { readonly walking: Case; readonly stumble: Case }

/** Of a pack that is looked at in passing. */
export interface Glanced extends Strained { readonly bench: Pick<Case, 'bend'>; readonly ifDished?: Strained }

/** As much of it as tells a pack that will do from one that will not: the bend on the bench, and both loads that strain it. The numbers are those of `assess`, but that a camber weakens nothing yet. */
export function glanced(stiffener: Stiffener, plate: Plate, asked: Asked): Glanced {
  const loads = loadsOn(plate, asked), beam = beamUnder(stiffener, plate, loads), { softer = 1 } = asked;
  return { bench: { bend: heldSole(beam, 'bench')(loads.bench).bend * softer }, ...strainedBy(beam, loads, softer) };
}

/** The same with what a camber weakens: the numbers of `assess`. */
export function lookedAt(glance: Glanced, stiffener: Stiffener, plate: Plate, asked: Asked): Glanced {
  const loads = loadsOn(plate, asked), { softer = 1 } = asked;
  return { ...glance, ...weakest(stiffener, glance, (other) => strainedBy(beamUnder(other, plate, loads), loads, softer)) };
}

/** What a stiffener is looked at under; of the waist one load or none. */
interface Loads { readonly lever: Mm; readonly bench: RollLoad; readonly stumble: RollLoad; readonly walks: readonly RollLoad[]; readonly waists: readonly RollLoad[] }

function loadsOn(plate: Plate, { mass, walking: roll = [], waist: under = [], lever = leverOn(plate), walkingMoment, stumbleWeights }: Asked): Loads {
  const { ball, to } = plate;
  return {
    lever, bench: loadAhead(ball, lever, BENCH_MOMENT, mass), stumble: stumbleAt(ball, to, mass, stumbleWeights),
    walks: roll.length > 0 ? worstOf(roll) : [walkingAhead(plate, lever, mass, walkingMoment)], waists: under.length > 0 ? [worstUnder(under, plate)] : [],
  };
}

/** One beam for all loads, cut at each of their places: a glance tells the very numbers that `assess` does. */
const beamUnder = (stiffener: Stiffener, plate: Plate, { bench, stumble, walks, waists }: Loads): SoleBeam =>
  soleBeam(stiffener, plate, [bench, stumble, ...walks, ...waists].map(({ at }) => at));

function reckon(stiffener: Stiffener, plate: Plate, asked: Asked): Assessed {
  const { softer = 1 } = asked, loads = loadsOn(plate, asked), { lever, bench, walks, waists } = loads;
  const beam = beamUnder(stiffener, plate, loads), worn = heldSole(beam, 'foot'), onBench = heldSole(beam, 'bench')(bench), walked = walks.map(worn);
  const told = (loaded: Loaded): Case => softened(caseOf(beam, loaded), softer), waist = waists.map((load) => told(worn(load)))[0], onTheBench = told(onBench);
  const strained = weakest(stiffener, { walking: walked.map(told).reduce(worse), stumble: told(worn(loads.stumble)) }, (other) => strainedBy(beamUnder(other, plate, loads), loads, softer));
  const found = { lever, grade: gradeOf(onTheBench.bend), bench: onTheBench, ...strained, ...(waist ? { waist } : {}) };
  return { ...found, along: alongSole(beam, onBench, walked).map((one) => softenedAlong(one, softer)), judgements: judged(found, asked) };
}

function strainedBy(beam: SoleBeam, { walks, stumble }: Loads, softer: number): Strained {
  const worn = heldSole(beam, 'foot'), told = (load: RollLoad): Case => softened(caseOf(beam, worn(load)), softer);
  return { walking: walks.map(told).reduce(worse), stumble: told(stumble) };
}

/**
 * How much of a typed camber holds nobody knows, and round a core plies are strained the more the more they are dished: what strains and
 * breaks a plate is the worst of none of it, of the half that counts for the bend, and of all. What one that nobody measured would do is told apart.
 */
function weakest({ camber, ...flat }: Stiffener, counted: Strained, by: (other: Stiffener) => Strained): Strained & Pick<Glanced, 'ifDished'> {
  if (!camber || camber.counted === 'whole') return counted;
  const whole = weaker(counted, by({ ...flat, camber: { ...camber, counted: 'whole' } }));
  return camber.counted === 'half' ? weaker(whole, by(flat)) : { ...counted, ifDished: whole };
}

const weaker = (one: Strained, other: Strained): Strained => ({ walking: asWeakAs(one.walking, other.walking), stumble: asWeakAs(one.stumble, other.stumble) });

/** As it bends, and as weak as the other where that is weaker. */
const asWeakAs = (counted: Case, other: Case): Case => ({ ...worse(counted, other), load: counted.load, bend: counted.bend, tip: counted.tip, energy: counted.energy });

/** A pack that bent less on the bench than it was reckoned to is not taken to be stronger. */
const weakerBy = (softer: number): number => Math.max(softer, 1);

/** A pack that bent further on the bench than it was reckoned to bends so under every load, and is strained by as much more; what its core carries stays. */
function softened(found: Case, softer: number): Case {
  const times = weakerBy(softer), less = <T extends Placed>(one: T): T => ({ ...one, times: one.times / times });
  return { ...found, bend: found.bend * softer, tip: found.tip * softer, energy: found.energy * softer, strain: found.strain * times, firstPly: less(found.firstPly), wrinkling: less(found.wrinkling), yields: less(found.yields) };
}

const softenedAlong = (one: AlongSole, softer: number): AlongSole => ({ ...one, stiffness: one.stiffness / softer, deflection: one.deflection * softer, strain: one.strain * weakerBy(softer) });

/** The moments of a roll that ask most: the greatest moment about the ball, and the greatest push. */
function worstOf(loads: readonly RollLoad[]): RollLoad[] {
  const most = (of: (load: RollLoad) => number): RollLoad => loads.reduce((best, one) => (of(one) > of(best) ? one : best));
  return [...new Set([most(({ moment }) => moment), most(({ force, shears = force }) => shears)])];
}

/** Under the waist: the greatest moment of a beam borne at heel and ball. */
function worstUnder(loads: readonly RollLoad[], { heel, ball }: Plate): RollLoad {
  const moment = ({ at, force }: RollLoad): number => force * (at - heel) * (ball - at);
  return loads.reduce((best, one) => (moment(one) > moment(best) ? one : best));
}

/** Of two cases the one nearer to what it may bear; bend and strain are the larger of both. */
function worse(a: Case, b: Case): Case {
  const strained = Math.abs(b.strain) > Math.abs(a.strain) ? b : a;
  return {
    ...strained, bend: Math.max(a.bend, b.bend), tip: Math.max(a.tip, b.tip), energy: Math.max(a.energy, b.energy),
    firstPly: lesser(a.firstPly, b.firstPly),
    wrinkling: lesser(a.wrinkling, b.wrinkling), coreShear: lesser(a.coreShear, b.coreShear), yields: lesser(a.yields, b.yields),
  };
}

function caseOf(beam: SoleBeam, loaded: Loaded): Case {
  const cuts = bentCuts(beam, loaded), strains = cuts.map(({ section, bent }) => largestStrain(section, bent)), reserves = cuts.map(({ section, bent }) => coreReserves(section, bent));
  const most = strains.reduce((best, { value }, i) => (Math.abs(value) > Math.abs(strains[best]!.value) ? i : best), 0);
  const placed = (times: (i: number) => number): Placed => cuts.reduce<Placed>((least, { x }, i) => lesser(least, { times: times(i), at: x }), { times: Infinity, at: beam.plate.ball });
  const { load, bend, tip, energy } = loaded, { force, shears = force } = load;
  return {
    load, bend, tip, energy: energy / 1000, strain: strains[most]!.value, strainAt: cuts[most]!.x, firstPly: firstPly(cuts),
    wrinkling: placed((i) => reserves[i]!.wrinkling), coreShear: placed((i) => (reserves[i]!.shear * force) / shears), yields: placed((i) => yieldReserve(cuts[i]!.section, cuts[i]!.bent)),
  };
}

function alongSole(beam: SoleBeam, bench: Loaded, walked: readonly Loaded[]): AlongSole[] {
  const { nodes, sections, plate: { ball, heel } } = beam, cuts = walked.map((loaded) => ({ loaded, cuts: bentCuts(beam, loaded) })), { height } = bench.bent;
  const most = (values: readonly number[]): number => values.reduce((best, value) => (Math.abs(value) > Math.abs(best) ? value : best), 0);
  return sections.map((section, i) => {
    const x = (nodes[i]! + nodes[i + 1]!) / 2;
    // Of the two ends of stretch i the rear one.
    const strains = cuts.map((one) => largestStrain(section, one.cuts[2 * i]!.bent).value), moments = cuts.map(({ loaded }) => momentAt(loaded.load, ball, heel, x));
    return { x, width: section.width, stiffness: asOne(section) / 1e6, deflection: (height[i]! + height[i + 1]!) / 2, strain: most(strains), moment: most(moments) / 1000 };
  });
}

/** Bending moment of a push ahead of the ball, the foot bearing at heel and ball, N·mm. */
function momentAt({ at, force, over = 0 }: RollLoad, ball: Mm, heel: Mm, x: Mm): number {
  const end = at + over / 2;
  if (x >= end || x <= heel) return 0;
  if (x > at - over / 2) return (force * (end - x) ** 2) / (2 * over);
  return x >= ball ? force * (at - x) : (force * (at - ball) * (x - heel)) / (ball - heel);
}
