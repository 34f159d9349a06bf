import { bellCurve, chance } from '../geometry/chance.ts';
import { finished } from '../geometry/finished.ts';
import { figuresOf, type FigureKey } from '../checks/figures.ts';
import type { InputField } from '../checks/inputs.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import type { Pair, RockerShoe, Shoe } from '../pair/shoe.ts';
import { accuracyOf, erringFields } from './accuracy.ts';
import { bandBetween, type Band } from './band.ts';
import type { Off } from './shoeOff.ts';
import { USUAL_SAMPLING, type Sampling } from './sampling.ts';
import { ofKind, variantsOf, type Numbers } from './variants.ts';
import { WATCHED, WATCHED_RAISE, type Watched } from './watched.ts';

/** How far the sampling has come, in variants of one shoe. */
export interface Progress { readonly done: number; readonly of: number }

/** A result over all variants: nine in ten lie between low and high, half below the middle. */
export interface Spanned extends Watched { readonly value: number; readonly low: number; readonly middle: number; readonly high: number; readonly deviation: number }

export interface ShoeSample {
  readonly side: Side;
  readonly results: readonly Spanned[];
  /** Share of the variants whose measures leave no shape, 0 to 1. */
  readonly noShape: number;
  readonly band: Band | undefined;
}

/**
 * The spread of a pair from variants of each rocker whose measures all err at once, by bell curves, each through the whole
 * solve. The same seed gives the same numbers. Yields how far it has come, so that whoever asked may tell, or stop asking; what it
 * found is returned. Pure. The other shoe of two rockers is taken as it is.
 */
export function* spreadSteps({ shoes, fitting }: Pair, { samples, seed, every }: Sampling = USUAL_SAMPLING): Generator<Progress, readonly ShoeSample[]> {
  const rockers = shoes.filter((shoe) => shoe.kind === 'rocker'), of = samples * rockers.length, drawn = new Map<Shoe, Drawn>();
  for (const [i, shoe] of rockers.entries()) {
    const draw = drawer(shoe, seed), kept: Numbers[] = [];
    for (let k = 0; k < samples; k++) {
      const numbers = draw();
      if (numbers) kept.push(numbers);
      if ((k + 1) % every === 0) yield { done: i * samples + k + 1, of };
    }
    drawn.set(shoe, { off: offFrom(shoe, kept), noShape: 1 - kept.length / samples });
  }
  const first = drawn.get(rockers[0]!)!;
  return shoes.map((shoe) => (shoe.kind === 'rocker' ? ofRocker(shoe, drawn.get(shoe)!, fitting) : ofMatch(shoe, first, seed, fitting)));
}

/** All of it at once. */
export const sampledSpread = (pair: Pair, sampling?: Sampling): readonly ShoeSample[] => finished(spreadSteps(pair, sampling));

/** How far the numbers of each variant that has a shape lie from those of the shoe as it is. */
interface Drawn { readonly off: readonly Numbers[]; readonly noShape: number }

function offFrom(shoe: RockerShoe, kept: readonly Numbers[]): readonly Numbers[] {
  const base = variantsOf(shoe)({});
  return base ? kept.map((numbers) => numbers.map((one, i) => one - base[i]!)) : [];
}

/** On these the outline hangs. */
const OUTLINE: readonly InputField[] = ['foot.length', 'foot.ballInner', 'foot.ballOuter', 'last.length', 'last.heelBack', 'last.ballWidth', 'last.heelWidth', 'last.inflare'];
/** Under a turned crest the outline counts, and it is the dearest to draw: so many variants share one. */
const SHARE_OUTLINE = 10;

/**
 * One variant after the other. Each shoe has a row of errors of its own, whatever stands beside it. Under a turned crest a bottom
 * that is flat across stays so: dished by a guess it moves nothing that is felt, and every place within the outline would count.
 */
function drawer(shoe: RockerShoe, seed: number): () => Numbers | undefined {
  const { fitting, side } = shoe, errors = bellCurve(chance(rowOf(side, seed))), vary = variantsOf(shoe);
  const fields = erringFields(fitting).map((field) => ({ field, deviation: accuracyOf(field, fitting)?.deviation ?? 0 }));
  const drawFor = (some: typeof fields): Off => Object.fromEntries(some.map(({ field, deviation }) => [field, deviation * errors()]));
  if (shoe.rocker.line.turn === 0) return () => vary(drawFor(fields));
  const outline = fields.filter(({ field }) => OUTLINE.includes(field));
  const others = fields.filter(({ field }) => !OUTLINE.includes(field) && !(field === 'last.camber' && fitting.last.camber.value === 0));
  let shared: Off = {}, drawn = 0;
  return () => {
    if (drawn++ % SHARE_OUTLINE === 0) shared = drawFor(outline);
    return vary({ ...shared, ...drawFor(others) });
  };
}

const rowOf = (side: Side, seed: number): number => 2 * seed + (side === 'left' ? 0 : 1);

function ofRocker(shoe: RockerShoe, { off, noShape }: Drawn, fitting: Fitting): ShoeSample {
  const faces = off.map((numbers) => ofKind('face', numbers)), places = faces[0]?.map((_, i) => sorted(faces, i)) ?? [];
  const band = places.length ? bandBetween(shoe, places.map((all) => at(all, LOW)), places.map((all) => at(all, HIGH))) : undefined;
  return { side: shoe.side, results: spanned(shoe, WATCHED, off, fitting), noShape, band };
}

/** A raise is what the other shoe stands higher by, less what its own heights were read too high. */
function ofMatch(shoe: Shoe, { off, noShape }: Drawn, seed: number, fitting: Fitting): ShoeSample {
  const errors = bellCurve(chance(rowOf(shoe.side, seed)));
  const own = (['order.seatHeightNow', 'order.ballHeightNow'] as const).map((field) => accuracyOf(field, shoe.fitting)?.deviation ?? 0);
  const raises = off.map((numbers) => ofKind('stands', numbers).map((height, i) => height - own[i]! * errors()));
  return { side: shoe.side, results: spanned(shoe, WATCHED_RAISE, raises, fitting), noShape, band: undefined };
}

const LOW = 0.05, MIDDLE = 0.5, HIGH = 0.95;

function spanned(shoe: Shoe, watched: readonly Watched[], off: readonly Numbers[], fitting: Fitting): readonly Spanned[] {
  if (off.length === 0) return [];
  const figures = new Map<FigureKey, number>(figuresOf(shoe, fitting).map(({ key, value }) => [key, value]));
  return watched.map((one, i): Spanned => {
    const value = figures.get(one.key) ?? NaN, all = sorted(off, i), mean = all.reduce((sum, x) => sum + x, 0) / all.length;
    const deviation = Math.sqrt(all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / Math.max(1, all.length - 1));
    return { ...one, value, low: value + at(all, LOW), middle: value + at(all, MIDDLE), high: value + at(all, HIGH), deviation };
  });
}

const sorted = (off: readonly Numbers[], i: number): number[] => off.map((numbers) => numbers[i]!).sort((a, b) => a - b);

/** The value a share of all lie below, evenly between neighbours. */
function at(all: readonly number[], share: number): number {
  const place = share * (all.length - 1), below = Math.floor(place), [a, b] = [all[below]!, all[Math.min(below + 1, all.length - 1)]!];
  return a + (b - a) * (place - below);
}
