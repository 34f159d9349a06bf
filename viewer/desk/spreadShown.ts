import type { Design } from '../../src/checks/design.ts';
import type { InputField } from '../../src/checks/inputs.ts';
import type { Side } from '../../src/fitting/words.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import type { Band } from '../../src/spread/band.ts';
import { linearSpread, type Influence, type ShoeSpread } from '../../src/spread/linear.ts';
import type { ShoeSample } from '../../src/spread/sampled.ts';
import { TOLD_FIRST, type Watched } from '../../src/spread/watched.ts';
import { agreementWords, againWords, effectWords, measureWords, percent, sureness, tellingOf } from '../../src/spread/words.ts';
import { valueAt, type Sheet } from '../keep/sheet.ts';

/** How sure a shoe is, for the page. Sentences name lengths in mm. */
export interface SpreadShown {
  readonly side: Side;
  readonly kind: Shoe['kind'];
  /** Which measure to take again, and what for; none where nothing is unsure. */
  readonly again?: string;
  readonly results: readonly ResultShown[];
  readonly measures: readonly MeasureShown[];
  /** What is only counted. */
  readonly rest: string;
  readonly band?: readonly BandSeen[];
}

/** `deviation` is one standard deviation: two of three lie within it. Lengths in mm, angles in degrees. */
export interface ResultShown extends Pick<Watched, 'key' | 'label' | 'unit'> { readonly value: number; readonly deviation: number; readonly first: boolean }

export interface MeasureShown {
  /** The field of the sheet it was put in. */
  readonly path: string;
  readonly name: string;
  readonly stands: string;
  readonly effect: string;
  /** Share of all that is unsure of the shoe, 0 to 1, and in words. */
  readonly share: number;
  readonly decides: string;
}

/** Where the ground face may lie: way along the walking line, and the heights between which it lies nine times in ten, mm. */
export type BandSeen = readonly [along: Mm, low: Mm, high: Mm];

/** What the variants of a shoe came to: nine in ten lie between low and high. */
export interface TriedShown { readonly side: Side; readonly agreement: string; readonly spans: readonly { readonly key: string; readonly low: number; readonly high: number }[] }

/** Worked out from each measure alone. Pure. @param sheet what the design was read from */
export const spreadShown = (design: Design, sheet: Sheet): readonly SpreadShown[] =>
  linearSpread(design).map((spread, i) => shoeShown(spread, design.shoes[i]!, design, sheet));

function shoeShown(spread: ShoeSpread, shoe: Shoe, { fitting }: Design, sheet: Sheet): SpreadShown {
  const again = againWords(fitting, spread), { named, rest } = tellingOf(spread), { side, kind, results, band } = spread;
  return {
    side, kind, ...(again === undefined ? {} : { again }), rest,
    results: results.map(({ key, label, unit, value, deviation }, i) => ({ key, label, unit, value, deviation, first: i < TOLD_FIRST })),
    measures: named.map((one) => ({ path: pathOf(one, sheet), name: measureWords(one, spread), stands: sureness(one), effect: effectWords(one, spread), share: one.share, decides: percent(one.share) })),
    ...(band && shoe.kind === 'rocker' ? { band: bandSeen(band, (x) => rollX(shoe.rocker.line, [x, 0])) } : {}),
  };
}

const bandSeen = (band: Band, along: (x: Mm) => Mm): readonly BandSeen[] => band.map(({ x, low, high }): BandSeen => [along(x), low, high]);

/** What a measure is worked out from where it was not taken itself. */
const WORKED_OUT_FROM: Partial<Readonly<Record<InputField, (side: Side) => readonly string[]>>> = {
  'foot.pivotHeight': (side) => [`${side}.foot.malleolusHeight`], 'foot.hipHeight': () => ['wearer.crotchHeight', 'wearer.stature'],
};

function pathOf({ side, field }: Influence, sheet: Sheet): string {
  const own = `${side}.${field}`, stands = (path: string): boolean => valueAt(sheet, path) !== undefined;
  return stands(own) ? own : WORKED_OUT_FROM[field]?.(side).find(stands) ?? own;
}

/** What so many variants came to, beside the quick answer. Pure. */
export const triedShown = (design: Design, samples: readonly ShoeSample[], many: number): readonly TriedShown[] =>
  linearSpread(design).map((spread, i): TriedShown => ({
    side: spread.side, agreement: agreementWords(spread, samples[i]!, many), spans: samples[i]!.results.map(({ key, low, high }) => ({ key, low, high })),
  }));
