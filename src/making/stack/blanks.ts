import { area, FillRule, intersect, ramerDouglasPeucker, union, type Path64, type Paths64 } from 'clipper2-ts';
import { tan } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';
import type { SoleParts } from '../../pair/shoe.ts';
import { grown } from '../nest/noFit.ts';
import { PER_MM } from '../nest/outline.ts';
import { bentFace, type BentFace } from './bentFace.ts';
import { needOf } from './need.ts';

/** A stretch of the sole that has a stack of its own: lengths along the face under the last. */
export interface Zone { readonly name: ZoneName; readonly from: Mm; readonly to: Mm }
export type ZoneName = 'whole' | 'heel' | 'middle' | 'forepart';

/** What the layers of one sole must cover. */
export interface Cover {
  readonly face: BentFace;
  readonly most: Mm;
  /** Where foam is needed deeper than the layers above reach, set out by the trim: outlines laid flat along the face itself, [along, y] in whole thousandths. */
  readonly loops: (zone: Zone, reach: Mm, thickness: Mm) => Paths64;
  /** What is needed there without the trim: where two layers meet. */
  readonly bare: (zone: Zone, reach: Mm, thickness: Mm) => Paths64;
  /** What of the body lies at a depth, nothing counted besides. */
  readonly section: (zone: Zone, depth: Mm) => Paths64;
}

/** Points of an outline are spared within this; and a blank is that much larger than the trim makes it that neither this nor the arcs drawn through its points ever cut into what is needed. */
const SPARED: Mm = 0.02, BESIDES: Mm = 0.1;

export function coverOf({ shape, bodies }: SoleParts, trim: Mm): Cover {
  const face = bentFace(shape), need = needOf(bodies.foam, face), flare = Math.max(0, ...Object.values(shape.taper).map((lean) => tan(-lean)));
  const bare = kept(need.deeperThan), out = kept((depth) => setOut(bare(depth), trim + BESIDES + flare * LOOKED_EVERY));
  const widest = (loops: (depth: Mm) => Paths64, reach: Mm, thickness: Mm): Paths64 =>
    flare > 0 && thickness > 0 ? union(depthsIn(reach, thickness).flatMap(loops), FillRule.NonZero) : loops(reach);
  return {
    face, most: need.most,
    loops: (zone, reach, thickness) => within(widest(out, reach, thickness), zone),
    bare: (zone, reach, thickness) => within(widest(bare, reach, thickness), zone), section: (zone, depth) => within(need.sectionAt(depth), zone),
  };
}

/**
 * Walls that flare out stand widest where they end on the ground line, and that is anywhere between the two sides of a layer.
 * At the same depths for all layers, so that each is worked out once; blanks are larger by what a wall flares from one to the next.
 */
const LOOKED_EVERY: Mm = 1;
function depthsIn(reach: Mm, thickness: Mm): Mm[] {
  const first = Math.floor(reach / LOOKED_EVERY) + 1, count = Math.max(0, Math.ceil((reach + thickness) / LOOKED_EVERY) - first);
  return [reach, ...Array.from({ length: count }, (_, i) => (first + i) * LOOKED_EVERY), reach + thickness];
}

function setOut(loops: Paths64, by: Mm): Paths64 {
  return union(loops.map((loop) => grown(spared(loop), by * PER_MM)), FillRule.NonZero).filter((loop) => area(loop) > 0);
}

const spared = (loop: Path64): Path64 => {
  const middle = loop.length >> 1, halves = [loop.slice(0, middle + 1), [...loop.slice(middle), loop[0]!]];
  return halves.flatMap((half) => ramerDouglasPeucker(half, SPARED * PER_MM).slice(0, -1));
};

/** Sections are worked out at steps of the depth: what a depth between two needs, the shallower one needs too. */
const DEPTH_STEP: Mm = 0.1;

function kept(work: (depth: Mm) => Paths64): (depth: Mm) => Paths64 {
  const known = new Map<number, Paths64>();
  return (depth) => {
    const step = Math.floor(depth / DEPTH_STEP + 1e-6), found = known.get(step) ?? work(step * DEPTH_STEP);
    known.set(step, found);
    return found;
  };
}

/** Further than any sole reaches. */
const FAR: Mm = 2000;

function within(loops: Paths64, { name, from, to }: Zone): Paths64 {
  if (name === 'whole') return loops;
  const [left, right] = [Math.max(from, -FAR), Math.min(to, FAR)].map((x) => Math.round(x * PER_MM)), high = FAR * PER_MM;
  const box: Path64 = [{ x: left!, y: -high }, { x: right!, y: -high }, { x: right!, y: high }, { x: left!, y: high }];
  return intersect(loops, [box], FillRule.NonZero);
}

/** Loops along the face as they lie on a layer whose middle runs at a depth, laid flat. */
export const flatLoops = (face: BentFace, loops: Paths64, depth: Mm): Paths64 =>
  loops.map((loop) => loop.map(({ x, y }) => ({ x: Math.round(face.flat(x / PER_MM, depth) * PER_MM), y })));

/** Area in mm². */
export const areaOfLoops = (loops: Paths64): number => loops.reduce((sum, loop) => sum + area(loop), 0) / PER_MM ** 2;

/** Length and width of the box round a loop, mm. */
export function sizeOf(loop: Path64): readonly [length: Mm, width: Mm] {
  const xs = loop.map(({ x }) => x), ys = loop.map(({ y }) => y);
  return [(Math.max(...xs) - Math.min(...xs)) / PER_MM, (Math.max(...ys) - Math.min(...ys)) / PER_MM];
}
