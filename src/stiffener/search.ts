import { onceEach } from '../geometry/lately.ts';
import type { Mm } from '../geometry/units.ts';
import type { BentAt } from './beam.ts';
import { assess, glanced, lookedAt, type Asked, type Assessed, type Glanced, type Strained } from './assess.ts';
import { choicesIn, type Bench, type Open, type Weighed } from './choices.ts';
import { limitOf, WALKING_RESERVE, WALKING_STRAIN } from './grades.ts';
import { BENCH_MOMENT, leverOn, SPREAD, stumbleAt, WALKING_MOMENT, type RollLoad } from './loads.ts';
import { asOne, cutsOf, type Section } from './section.ts';
import { at, type Attached, type Plate, type Stiffener } from './stiffener.ts';
import { firstPly, largestStrain, lesser } from './strained.ts';

/** How far a pack keeps to what is asked: to all of it; to the bend and to a stumble; or to not even those. */
export type Keeps = 'all' | 'must' | 'not';

/** A pack that was looked at. @property spare how many times what it may bear it could bear more, of all it falls short of; below 1 where it falls short */
export interface Tried extends Weighed { readonly assessed: Assessed; readonly keeps: Keeps; readonly spare: { readonly must: number; readonly all: number } }

/** What of a pack is sure to be no better than: as if its core gave nothing, and at the ball alone. Times what it may bear. */
interface Hopes { readonly must: number; readonly all: number }

/** A strip that bends as one is strained the least but for this share: faces that bend by themselves as well hardly relieve it. Held against every pack in a test. */
const MARGIN = 1.05;
/** What of the push its faces carry by themselves relieves a core by more. */
const CORE_MARGIN = 1.25, OWN_MOST = 0.1;

/** What a pack is held to: its bend, a ply that fails in a stumble or in walking, strain in walking, a face that wrinkles, a core that is sheared, a strip that yields. */
export type Criterion = 'bend' | 'stumble' | 'walking' | 'strain' | 'wrinkling' | 'core shear' | 'yield';

/** How many times what it may bear a pack could bear of one of them. @property must falling short of it stops @property ifDished if a bottom that nobody measured is dished as most are */
export interface Reserve { readonly of: Criterion; readonly must: boolean; readonly times: number; readonly ifDished?: true }

/** Of each load what the pack has to spare; what must be is all that `judged` stops at. */
export function reservesOf({ bench, ifDished, ...strained }: Glanced, asked: Asked): readonly Reserve[] {
  const dished = ifDished ? reservesBy(ifDished).map((one): Reserve => ({ ...one, must: false, ifDished: true })) : [];
  return [{ of: 'bend', must: true, times: limitOf(asked) / bench.bend }, ...reservesBy(strained), ...dished];
}

function reservesBy({ walking, stumble }: Strained): readonly Reserve[] {
  const must = (of: Criterion, times: number): Reserve => ({ of, must: true, times }), may = (of: Criterion, times: number): Reserve => ({ of, must: false, times });
  return [
    must('stumble', stumble.firstPly.times), must('walking', walking.firstPly.times / WALKING_RESERVE), must('core shear', walking.coreShear.times), must('yield', lesser(walking.yields, stumble.yields).times),
    may('strain', WALKING_STRAIN / Math.abs(walking.strain)), may('wrinkling', lesser(walking.wrinkling, stumble.wrinkling).times), may('core shear', stumble.coreShear.times),
  ];
}

/** How many times more a pack could bear, of what must be and of all. @param without what it is not held to */
function leastOf(reserves: readonly Reserve[], without?: Criterion): Tried['spare'] {
  const held = reserves.filter(({ of }) => of !== without), least = (some: readonly Reserve[]): number => Math.min(...some.map(({ times }) => times));
  return { must: least(held.filter(({ must }) => must)), all: least(held) };
}

export const spareOf = (glance: Glanced, asked: Asked): Tried['spare'] => leastOf(reservesOf(glance, asked));

const keepsOf = ({ must, all }: Tried['spare']): Keeps => (all >= 1 ? 'all' : must >= 1 ? 'must' : 'not');

/** @throws RangeError for what the reader of the sheet should have refused */
export function assessedOr(stiffener: Stiffener, bench: Pick<Bench, 'plate'>, asked: Asked): Assessed {
  const read = assess(stiffener, bench.plate, asked);
  if (!read.ok) throw new RangeError(read.faults.map(({ text }) => text).join(' '));
  return read.value;
}

/**
 * The pack to lay. Of those that keep to all: the fewest plies, of those the lightest, then the thinnest. Where none does: of
 * those that bend as little as is wanted and bear a stumble, the one that falls least short of the rest. Where not even
 * that is reached: the one that falls least short of it. Of several alike the one with most to spare. The same as trying every
 * one (proven by a test that does), but most are passed over for what they cannot do even if their core gave nothing.
 * @returns undefined where nothing is open, or nothing keeps to so much as is wanted
 */
export function searched(open: Open, bench: Bench, asked: Asked, { least = 'not', without }: Search = {}): Tried | undefined {
  const { hoped, closely } = lookedOver(open, bench, asked, without), keeping = hoped.filter(({ hopes }) => hopes.must >= 1);
  const good = first(keeping, closely, 'all')
    ?? (least === 'all' ? undefined : best(keeping, closely, 'all', ({ must }) => must >= 1))
    ?? (least === 'not' ? best(hoped, closely, 'must', () => true) : undefined);
  return good && triedOf(good, bench, asked);
}

/** The fewest plies, of those the lightest, then the thinnest, that keep to what must be. */
export function fewest(open: Open, bench: Bench, asked: Asked): Tried | undefined {
  const { hoped, closely } = lookedOver(open, bench, asked), found = first(hoped, closely, 'must');
  return found && triedOf(found, bench, asked);
}

/** Of all that keep to what must be the one that bends most. */
export function softest(open: Open, bench: Bench, asked: Asked): Tried | undefined {
  const { hoped } = lookedOver(open, bench, asked), glances = hoped.filter(({ hopes }) => hopes.must >= 1).map(({ one }) => ({ one, glance: glanced(one.stiffener, bench.plate, asked) }));
  const keeping = glances.filter(({ glance }) => spareOf(glance, asked).must >= 1), [found] = keeping.sort((a, b) => b.glance.bench.bend - a.glance.bench.bend);
  return found && triedOf(found.one, bench, asked);
}

/** @property least what a pack is to keep to, or none is found; the best of all where left out  @property without what it is not held to */
interface Search { readonly least?: Keeps; readonly without?: Criterion }

type Hoped = { readonly one: Weighed; readonly hopes: Hopes };

function lookedOver(open: Open, bench: Bench, asked: Asked, without?: Criterion): { readonly hoped: readonly Hoped[]; readonly closely: Closely } {
  const hope = hoping(bench, asked, without);
  return { hoped: choicesIn(open, bench).map((one) => ({ one, hopes: hope(one.stiffener) })), closely: looking(bench, asked, without) };
}

const ALIKE = 1e-6;

/** The first that keeps to it; of those with as many plies that weigh as much and are as thick, the one with most to spare. */
function first(hoped: readonly Hoped[], closely: Closely, what: 'must' | 'all'): Weighed | undefined {
  const keeps = ({ one, hopes }: Hoped): boolean => hopes[what] >= 1 && closely(one, what, 1)[what] >= 1, found = hoped.find(keeps)?.one;
  if (!found) return undefined;
  const alike = ({ one }: Hoped): boolean => one.plies === found.plies && Math.abs(one.bulk - found.bulk) < ALIKE && Math.abs(one.thickness - found.thickness) < ALIKE;
  return hoped.filter((each) => alike(each) && keeps(each)).reduce((most, { one }) => (closely(one, 'all', 0).all > closely(most, 'all', 0).all ? one : most), found);
}

/** What a pack has to spare, as closely as is needed: more than it has where even that is less than what counts. */
type Closely = (one: Weighed, what: 'must' | 'all', counts: number) => Tried['spare'];

export function looking({ plate }: Bench, asked: Asked, without?: Criterion): Closely {
  const glances = onceEach(({ stiffener }: Weighed) => glanced(stiffener, plate, asked)), spare = (glance: Glanced): Tried['spare'] => leastOf(reservesOf(glance, asked), without);
  const looks = onceEach((one: Weighed) => spare(lookedAt(glances(one), one.stiffener, plate, asked)));
  return (one, what, counts) => {
    const most = spare(glances(one));
    return most[what] < counts ? most : looks(one);
  };
}

export function triedOf(one: Weighed, bench: Pick<Bench, 'plate'>, asked: Asked): Tried {
  const assessed = assessedOr(one.stiffener, bench, asked), spare = spareOf(assessed, asked);
  return { ...one, assessed, spare, keeps: keepsOf(spare) };
}

/** The one with most to spare of what is looked at; those that cannot have more are not looked at. The first in order of several alike. */
function best(hoped: readonly Hoped[], closely: Closely, what: 'must' | 'all', counts: (spare: Tried['spare']) => boolean): Weighed | undefined {
  let found: { readonly one: Weighed; readonly most: number; readonly rank: number } | undefined;
  const ranked = hoped.map((each, rank) => ({ ...each, rank })).sort((a, b) => b.hopes[what] - a.hopes[what] || a.rank - b.rank);
  for (const { one, hopes, rank } of ranked) {
    const most = found?.most ?? 0;
    if (hopes[what] < most) break;
    const spares = closely(one, what, most), spare = spares[what];
    if (counts(spares) && (!found || spare > most || (spare === most && rank < found.rank))) found = { one, most: spare, rank };
  }
  return found?.one;
}

/** What no pack can do better than, from one cut at the ball, and one half way to where the floor pushes for its core. */
export function hoping({ plate }: Pick<Bench, 'plate'>, asked: Asked, without?: Criterion): (stiffener: Stiffener) => Hopes {
  const { ball } = plate, { mass, softer = 1, lever = leverOn(plate) } = asked, reach = ball + lever, pushes = pushesOn(plate, asked), strength = hopesAtBall(ball, pushes, softer);
  const width = { ball: plate.width(ball), widest: widestAhead(plate.width, ball, reach), ahead: plate.width(pushes.half) }, bench = BENCH_MOMENT * mass * 1000;
  return (stiffener) => {
    const cut = cutsOf(stiffener), thick = thickestAhead(stiffener, ball, reach), wide = (thick === stiffener ? cut : cutsOf(thick))(ball, width.widest), section = cut(ball, width.ball), ahead = cut(pushes.half, width.ahead);
    if (!section || !wide || !ahead) return { must: 0, all: 0 };
    const bend = (softer * bench * lever) / (3 * asOne(wide)), dished = dishedBeside(stiffener).flatMap((other) => cutsOf(other)(ball, width.ball) ?? []);
    return leastOf([
      { of: 'bend', must: true, times: (MARGIN * limitOf(asked)) / bend }, ...strength(section, true),
      { of: 'core shear', must: true, times: coreBears(ahead, pushes.walking) }, { of: 'core shear', must: false, times: coreBears(ahead, pushes.stumble.shears ?? pushes.stumble.force) },
      ...dished.flatMap((one) => strength(one, stiffener.camber?.counted === 'half')),
    ], without);
  };
}

/** What strains and breaks a pack: the stumble, the walking moment about the ball, N·mm, and its push, N, 0 where a roll tells many; `half` way to where the floor pushes. */
interface Pushes { readonly stumble: RollLoad; readonly walks: number; readonly walking: number; readonly half: Mm }

function pushesOn(plate: Plate, { mass, walking = [], walkingMoment = WALKING_MOMENT, stumbleWeights, lever = leverOn(plate) }: Asked): Pushes {
  const { ball, to } = plate, stumble = stumbleAt(ball, to, mass, stumbleWeights), walks = Math.max(0, ...walking.map(({ moment }) => moment)) || walkingMoment * mass * 1000;
  const pushed = Math.max(Math.min(stumble.at, ball + lever) - SPREAD / 2, ball);
  return { stumble, walks, walking: walking.length > 0 ? 0 : walks / lever, half: (ball + pushed) / 2 };
}

/** How many times what its plies bear at most, by the cut at the ball bent as one. */
function hopesAtBall(ball: Mm, { stumble, walks }: Pushes, softer: number): (section: Section, must: boolean) => readonly Reserve[] {
  const weaker = Math.max(softer, 1), bent = (section: Section, moment: number): BentAt => ({ own: moment / asOne(section), tied: moment / asOne(section), slip: 0 });
  return (section, must) => {
    const breaks = MARGIN * (firstPly([{ x: ball, section, bent: bent(section, stumble.moment) }]).times / weaker), strain = Math.abs(largestStrain(section, bent(section, walks)).value) * weaker;
    return [
      { of: 'stumble', must, times: breaks }, { of: 'walking', must, times: (breaks * stumble.moment) / walks / WALKING_RESERVE },
      { of: 'strain', must: false, times: (MARGIN * WALKING_STRAIN) / strain },
    ];
  };
}

/** With all that lies on it as thick as it is anywhere ahead of the ball. */
const thickestAhead = (stiffener: Stiffener, ball: Mm, reach: Mm): Stiffener =>
  (stiffener.attached.length === 0 ? stiffener : { ...stiffener, attached: stiffener.attached.map((layer) => thickest(layer, ball, reach)) });

const asThickest = new WeakMap<Attached, Attached>();
/** A layer as thick all along as it is anywhere ahead of the ball: nothing there bends less. */
function thickest(layer: Attached, from: Mm, to: Mm): Attached {
  const known = asThickest.get(layer) ?? { ...layer, over: { from, to }, thickness: Math.max(...Array.from({ length: 41 }, (_, i) => at(layer.thickness, from + ((to - from) * i) / 40))) };
  asThickest.set(layer, known);
  return known;
}

/** What else of a camber that nobody read strains plies as it may: all of it, and where half of it counts for the bend none. */
function dishedBeside({ camber, ...flat }: Stiffener): readonly Stiffener[] {
  if (!camber || camber.counted === 'whole') return [];
  return [{ ...flat, camber: { ...camber, counted: 'whole' } }, ...(camber.counted === 'half' ? [flat] : [])];
}

/** How many times its core bears a push at most. Faces that are stiff by themselves, cambered or turned up, carry what they will: of those nothing is said. */
function coreBears({ core, tied, width, apart, own }: Section, push: number): number {
  return !core || push === 0 || own > OWN_MOST * tied ? Infinity : (CORE_MARGIN * core.shearStrength * width * apart * (own + tied)) / (push * tied);
}

function widestAhead(width: (x: Mm) => Mm, from: Mm, to: Mm): Mm {
  let most = 0;
  for (let x = from; x <= to; x += 2) most = Math.max(most, width(x));
  return most;
}
