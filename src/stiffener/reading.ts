import { glanced, type Asked } from './assess.ts';
import { spareOf } from './search.ts';
import { countedAs, type PlacedPly, type Plate, type Stiffener } from './stiffener.ts';

/** What a droop read on the bench means for a bare pack: the one judgement of the bench card and of a sheet that is given a reading. */

/** A pack that is hung bare, told with all that takes part in the shoe, where it must hold; what was read of it is no part of it. */
export interface Hung { readonly stiffener: Stiffener; readonly plate: Plate; readonly asked: Asked }

/** Plies like those it is laid of, all along, on a pack that has cured: on its foot side and on its floor side. */
export interface Added { readonly onTop: number; readonly underneath: number }

/**
 * Less than any pack of its kind droops: the test went wrong. As it should be. Softer than its kind, and all that must be holds yet.
 * To be made stiffer. Or beyond help.
 */
export type Reading = { readonly means: 'test again' | 'good' | 'soft' | 'lay anew' } | { readonly means: 'add'; readonly add: Added };

/** Readings from one that mean the same, in times of the droop reckoned; the last one has no end. */
export interface ReadingSpan { readonly from: number; readonly to: number; readonly reading: Reading }

/** How far plies laid by hand may be off in what they bend, either way. Common practice: a tenth of a millimetre on 1.4 mm is more than that. */
export const HAND_LAID_WITHIN = 0.15;
/** More plies than this nobody adds to a pack that is cured; of one that is only planned, to more than these nothing is advised. Common practice. */
const CURED_MOST = 3, ADDED_MOST = 5;

/** As it is hung and as it is reckoned to droop: a camber that is told stands whole, for how much of it holds is what is read. */
export const asHung = (stiffener: Stiffener): Stiffener => (stiffener.camber?.counted === 'half' ? dished(stiffener) : stiffener);
const dished = (stiffener: Stiffener): Stiffener => (stiffener.camber ? { ...stiffener, camber: { ...stiffener.camber, counted: 'whole' } } : stiffener);
/** Without what lies on it in the shoe. */
export const bare = (stiffener: Stiffener): Stiffener => ({ ...stiffener, attached: [] });
const flattened = ({ camber: _, ...stiffener }: Stiffener): Stiffener => stiffener;

/** How many times as far as reckoned a pack of its kind droops: plies as they come out by hand, the core the stiffest or the softest that is sold, the camber whole or flat, one that nobody measured too. */
export function droopsBetween({ stiffener, plate, asked: { softer: _, ...asked } }: Hung): readonly [least: number, most: number] {
  const bend = (one: Stiffener): number => glanced(bare(one), plate, asked).bench.bend, reckoned = bend(asHung(stiffener));
  return [(bend(dished(countedAs(stiffener, 'most'))) / reckoned) * (1 - HAND_LAID_WITHIN), (bend(flattened(countedAs(stiffener, 'least'))) / reckoned) * (1 + HAND_LAID_WITHIN)];
}

/** How many times more it could bear of what must be, when it droops so many times as far as reckoned. */
function spareAt({ stiffener, plate, asked }: Hung, times: number): number {
  const counted = { ...asked, softer: times };
  return spareOf(glanced(asHung(stiffener), plate, counted), counted).must;
}

/** A pack that droops so far is far gone in whatever the droop tells of. */
const FAR = 1e6, NEARLY = 1 - 1e-9;

/** The furthest it may droop with all that must be kept, in times of what was reckoned; 0 where never, or no further than asked. What a droop tells of falls as it grows; a core's shear does not. */
function holdsUpTo(hung: Hung, further = 0): number {
  const most = FAR * spareAt(hung, FAR) * NEARLY;
  return most > further && spareAt(hung, most) >= 1 ? most : 0;
}

/** Every reading with what it means, the least first; worked out as far as it is asked. */
function* spansOf(hung: Hung): Generator<ReadingSpan, void> {
  const [least, most] = droopsBetween(hung), alone = holdsUpTo(hung);
  const all = function* (): Generator<readonly [upTo: number, reading: Reading]> {
    yield [least, { means: 'test again' }];
    yield [Math.min(alone, most), { means: 'good' }];
    yield [alone, { means: 'soft' }];
    for (let plies = 1; plies <= CURED_MOST; plies++) yield mostWith(hung, plies, from);
    yield [Infinity, { means: 'lay anew' }];
  };
  let from = 0;
  for (const [to, reading] of all()) if (to > from) { yield { from, to, reading }; from = to; }
}

/** So many plies more where they do most: on the foot's side, where a pack is reached best, unless they do more elsewhere. */
function mostWith(hung: Hung, plies: number, further: number): readonly [upTo: number, reading: Reading] {
  const ways = waysToAdd(plies).map((add) => ({ add, upTo: holdsUpTo({ ...hung, stiffener: withMore(hung.stiffener, add) }, further) })), best = ways.reduce((one, other) => (other.upTo > one.upTo ? other : one));
  return [best.upTo, { means: 'add', add: best.add }];
}

export const readingsOf = (hung: Hung): ReadingSpan[] => [...spansOf(hung)];

/** What it means that a pack droops so many times as far as reckoned. */
export function readingOf(hung: Hung, times: number): Reading {
  for (const { to, reading } of spansOf(hung)) if (times <= to) return reading;
  return { means: 'lay anew' };
}

const waysToAdd = (plies: number): Added[] => [...new Set([plies, 0, Math.ceil(plies / 2), Math.floor(plies / 2)])].map((onTop): Added => ({ onTop, underneath: plies - onTop }));

/** The fewest plies first, and of as many those on the foot's side. */
export const ADDITIONS: readonly Added[] = Array.from({ length: ADDED_MOST }, (_, i) => i + 1).flatMap(waysToAdd);

export function withMore(stiffener: Stiffener, { onTop, underneath }: Added): Stiffener {
  const { below, above, core } = stiffener, like = addedLike(stiffener), many = (count: number): PlacedPly[] => Array.from({ length: count }, () => like), under = [...many(underneath), ...below];
  return above.length > 0 || core ? { ...stiffener, below: under, above: [...above, ...many(onTop)] } : { ...stiffener, below: [...under, ...many(onTop)] };
}

/** What is added: as the first ply that runs all along, its fibres along the shoe. @throws RangeError for a pack without plies */
export function addedLike({ below, above }: Pick<Stiffener, 'below' | 'above'>): PlacedPly {
  const all = [...below, ...above], like = all.find(({ over }) => over === undefined) ?? all[0];
  if (!like) throw new RangeError('a pack without plies');
  return { ply: like.ply, angle: 0 };
}
