import { layOn, smallestSquare } from '../../checks/bedFit.ts';
import type { Bed } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Hole } from '../places.ts';
import { clippedTo, spans, type Outline } from './outline.ts';

/** Where cavity and lid are cut across, x from heel to toe, so that their pieces go on a small bed; empty where they are whole. */
export interface Cuts { readonly cavity: readonly Mm[]; readonly lid: readonly Mm[] }
export const UNCUT: Cuts = { cavity: [], lid: [] };

/** Cavity and lid as blocks: their common border in plan, how high each is, and whether the cavity is in halves. */
export interface Blocks { readonly border: Outline; readonly cavityHeight: Mm; readonly lidHeight: Mm; readonly halves: boolean }

/** Kept free round a piece on the bed, and above it. */
export const BED_MARGIN: Mm = 5;
/** More pieces than these, and glue lines eat what the mould is to hold. */
export const MOST_PIECES = 4;
/** The joints of cavity and lid are this far apart, so that each bridges the joint of the other. */
const STAGGER: Mm = 30;
/** A joint may move this far from where it would halve best, to stay clear of bores. */
const MOVED: Mm = 12, WALL: Mm = 4;

/** @param bores upright holes that a joint must keep clear of, by the number of pieces */
export function cutsInto(pieces: number, { border }: Blocks, bores: { readonly cavity: readonly Hole[]; readonly lid: readonly Hole[] }): Cuts {
  const xs = border.map(([x]) => x), from = Math.min(...xs), long = Math.max(...xs) - from;
  const planes = (shift: Mm, clearOf: readonly Hole[]): Mm[] =>
    Array.from({ length: pieces - 1 }, (_, i) => clearPlane(from + (long * (i + 1)) / pieces + shift, clearOf));
  return { cavity: planes(-STAGGER / 2, bores.cavity), lid: planes(STAGGER / 2, bores.lid) };
}

function clearPlane(wanted: Mm, bores: readonly Hole[]): Mm {
  const room = (x: Mm): Mm => Math.min(Infinity, ...bores.map(({ at, diameter }) => Math.abs(x - at[0]) - diameter / 2));
  const tries = Array.from({ length: MOVED + 1 }, (_, i) => [wanted + i, wanted - i]).flat();
  return tries.find((x) => room(x) >= WALL) ?? tries.reduce((best, x) => (room(x) > room(best) ? x : best));
}

/** Every piece in plan, cavity pieces first. */
function pieceOutlines({ border, halves }: Blocks, { cavity, lid }: Cuts): Outline[] {
  const sides = halves ? [clippedTo(border, 1, -Infinity, 0), clippedTo(border, 1, 0, Infinity)] : [border];
  const across = (outline: Outline, at: readonly Mm[]): Outline[] => spans(at).map(([from, to]) => clippedTo(outline, 0, from, to));
  return [...sides.flatMap((side) => across(side, cavity)), ...across(border, lid)];
}

/** Height the bed must have; pieces lie as they stand in use, the lid turned over: flat faces down, nothing hangs over. */
export const heightNeeded = ({ cavityHeight, lidHeight }: Blocks): Mm => Math.max(cavityHeight, lidHeight) + BED_MARGIN;

export const goesOn = (bed: Bed, blocks: Blocks, cuts: Cuts): boolean =>
  heightNeeded(blocks) <= bed.z && pieceOutlines(blocks, cuts).every((outline) => layOn(outline, bed, BED_MARGIN).fits);

/** Side of the smallest square bed that takes every piece. */
export const squareFor = (blocks: Blocks, cuts: Cuts): Mm => Math.max(...pieceOutlines(blocks, cuts).map((outline) => smallestSquare(outline, BED_MARGIN).side));
