import { layOn, smallestSquare, type Square } from '../../checks/bedFit.ts';
import type { Finding } from '../../checks/finding.ts';
import { over } from '../../checks/seen.ts';
import { deg, mm, sizeWords } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { Bed, Making, PrintOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import { boundsOf } from '../../geometry/mesh.ts';
import { pointAlong } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { inDegrees, type Mm } from '../../geometry/units.ts';
import { partsOf, type Pair, type SoleParts } from '../../pair/shoe.ts';
import { groundPoint } from '../../solid/groundLine.ts';
import { clippedTo, type Outline } from '../mould/outline.ts';
import { MARGIN } from './bed.ts';
import { jointOf, type Joint } from './joint.ts';
import { printPart } from './print.ts';

/** Where the sheet orders no print, the bed is still held against the sole. */
const UNASKED: PrintOrder = { part: 'whole sole', split: false, pin: 6, clearance: 0.25 };

/** A sole as it would lie on the bed, flat; its parts are worked out only where they are asked for. */
interface Lying { readonly side: Side; readonly order: PrintOrder; readonly plan: Outline; readonly tall: Mm; readonly joint: () => Joint }

/** Whether each sole goes on the bed, in one or in two, and whether the pins have room. */
export function printFindings({ fitting: { making }, shoes }: Pair): Finding[] {
  if (!isForSole(making)) return [];
  return shoes.flatMap((shoe): Finding[] => {
    const parts = partsOf(shoe);
    return parts ? ofOne(lying(shoe.side, parts, making), making) : [];
  });
}

/** A bed on the sheet of a printed mould is for the mould, unless the sole is printed too. */
const isForSole = ({ print, mould, card }: Making): boolean => print !== undefined || mould?.by !== 'printed' || card?.way === 'printed';

function lying(side: Side, parts: SoleParts, { print = UNASKED }: Making): Lying {
  const { body, solid } = printPart(parts, print.part), { least, most } = boundsOf(solid);
  return { side, order: print, plan: planOf(parts), tall: most[2] - least[2] + MARGIN, joint: () => jointOf(body, print) };
}

function ofOne(one: Lying, { print, printBed: bed }: Making): Finding[] {
  const split = print?.split ? one.joint() : undefined;
  const onBed = !bed ? [] : split ? halvesOnBed(one, bed, split) : soleOnBed(one, bed);
  return [...onBed, ...(split ? pinFindings(one, split, bed) : [])];
}

const common = ({ side, order: { part } }: Lying) => ({ side, unit: 'mm', where: part, basis: PRACTICE } as const);
const tooSmall = (bed: Bed): string => `print bed of ${sizeWords(bed.x, bed.y, bed.z)} with ${MARGIN} mm to spare (making.printBed)`;

function soleOnBed(one: Lying, bed: Bed): Finding[] {
  const { plan, tall } = one, laid = layOn(plan, bed, MARGIN), square = laid.fits ? undefined : smallestSquare(plan, MARGIN), tooTall = over(tall, bed.z);
  if (square || tooTall) return [{
    ...common(one), code: 'PRINT_BED', severity: 'warn', measured: square ? Math.min(bed.x, bed.y) : bed.z, limit: square ? square.side : tall,
    text: `The sole does not go on the ${tooSmall(bed)}.${needs(square, tooTall, tall)}${tooTall ? '' : inTwo(one, bed)}`,
  }];
  const turn = inDegrees(laid.turn);
  if (!(turn > 0 && turn < 90)) return [];
  return [{ ...common(one), code: 'PRINT_TURNED', severity: 'note', measured: turn, unit: 'deg', text: `The sole goes on the print bed turned: long axis ${deg(turn, 0)} from the bed's x side.` }];
}

function needs(square: Square | undefined, tooTall: boolean, tall: Mm): string {
  const side = Math.ceil(square?.side ?? 0), plan = square ? ` A bed of ${sizeWords(side, side)} takes it, long axis ${deg(inDegrees(square.turn), 0)} from the side.` : '';
  return tooTall ? `${plan} It needs ${Math.ceil(tall)} mm of height.` : plan;
}

/** Two parts are laid on the bed before they are offered. */
function inTwo(one: Lying, bed: Bed): string {
  const halves = halvesOf(one, one.joint());
  if (halves.every((half) => layOn(half, bed, MARGIN).fits)) return ' In two parts, joined at the waist, it goes on: put making.print.split to true.';
  return ` In two parts (making.print.split) it wants ${squareWords(halves)}.`;
}

function squareWords(halves: readonly Outline[]): string {
  const side = Math.ceil(Math.max(...halves.map((half) => smallestSquare(half, MARGIN).side)));
  return `a bed of ${sizeWords(side, side)}`;
}

function halvesOnBed(one: Lying, bed: Bed, joint: Joint): Finding[] {
  const { tall } = one, halves = halvesOf(one, joint), tooTall = over(tall, bed.z), wide = halves.some((half) => !layOn(half, bed, MARGIN).fits);
  if (!wide && !tooTall) return [];
  const side = Math.max(...halves.map((half) => smallestSquare(half, MARGIN).side));
  return [{
    ...common(one), code: 'PRINT_BED', severity: 'warn', measured: wide ? Math.min(bed.x, bed.y) : bed.z, limit: wide ? side : tall,
    text: `Even in two parts the sole does not go on the ${tooSmall(bed)}.${wide ? ` It wants ${squareWords(halves)}.` : ''}${tooTall ? ` It needs ${Math.ceil(tall)} mm of height.` : ''}`,
  }];
}

/** The heel part with its key, and the forepart. */
const halvesOf = ({ plan }: Lying, { waist, key }: Joint): Outline[] =>
  [clippedTo(plan, 0, -Infinity, waist.x + key.long), clippedTo(plan, 0, waist.x, Infinity)];

/** A pin needs sole above and below it; a thinner one has as much room and more, so the one named works. */
function pinFindings(one: Lying, { waist, pinMost }: Joint, bed: Bed | undefined): Finding[] {
  const { order: { pin } } = one, works = Math.floor(pinMost * 10) / 10;
  if (pin <= pinMost) return [];
  return [{
    ...common(one), code: 'PRINT_PIN', severity: 'warn', measured: pin, limit: Math.max(0, pinMost), at: waist.x,
    text: `Where the parts are joined, ${mm(waist.x, 0)} from the heel, the sole is too thin for pins of ${mm(pin)}, and they are left out. ${works >= LEAST_PIN ? `Pins of ${mm(works)} have room (making.print.pin).` : `The dovetail and the cement must hold it alone; ${inOne(one, bed)}.`}`,
  }];
}
const LEAST_PIN: Mm = 2;

function inOne({ plan, tall }: Lying, bed: Bed | undefined): string {
  const fits = bed && !over(tall, bed.z) && layOn(plan, bed, MARGIN).fits;
  return fits ? 'the bed takes it in one: leave making.print.split out' : 'better print it in one, on a larger bed';
}

/** Places all round, about 4 mm apart, on both edges: walls may lean either way. */
const ROUND = 192;

function planOf({ shape }: SoleParts): Point[] {
  const onGround = groundPoint(shape), step = shape.edge.length / ROUND, places = Array.from({ length: ROUND }, (_, i) => i * step);
  const ground = places.map((w): Point => { const [x, y] = onGround(w); return [x, y]; });
  return [...places.map((w) => pointAlong(shape.edge, w)), ...ground];
}
