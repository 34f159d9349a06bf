import { area, FillRule, intersect, ramerDouglasPeucker, union, type Path64, type Paths64 } from 'clipper2-ts';
import { tan } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';
import type { SoleParts } from '../../pair/shoe.ts';
import { grown } from '../nest/noFit.ts';
import { PER_MM } from '../nest/outline.ts';
import { bentFace, type BentFace } from './bentFace.ts';
import { needOf } from './need.ts';
import { LOOKED_EVERY, widestOf, type Sections } from './widest.ts';

/** A stretch of the sole that has a stack of its own: lengths along the face under the last. */
export interface Zone { readonly name: ZoneName; readonly from: Mm; readonly to: Mm }
export type ZoneName = 'whole' | 'heel' | 'middle' | 'forepart';

/** What the layers of one sole must cover. */
export interface Cover {
  readonly face: BentFace;
  readonly most: Mm;
  /** Of the whole sole under its face, mm². */
  readonly area: number;
  /** Where foam is needed deeper than the layers above reach, set out by the trim: outlines laid flat along the face itself, [along, y] in whole thousandths. */
  readonly loops: (zone: Zone, reach: Mm, thickness: Mm) => Paths64;
  /** The blanks of a layer under so much glue, near enough to choose a stack by; each worked out once. */
  readonly blanks: (zone: Zone, reach: Mm, glueLine: Mm, thickness: Mm) => RoughBlanks;
  /** What is needed there without the trim: where two layers meet. */
  readonly bare: (zone: Zone, reach: Mm, thickness: Mm) => Paths64;
  /** What of the body lies at a depth, nothing counted besides. */
  readonly section: (zone: Zone, depth: Mm) => Paths64;
}

/** Blanks of one layer: their area, mm², and the box round each, both within ROUGH of their edges. */
export interface RoughBlanks { readonly area: number; readonly sizes: readonly (readonly [length: Mm, width: Mm])[] }

/** Points of an outline are spared within this; and a blank is that much larger than the trim makes it that neither this nor the arcs drawn through its points ever cut into what is needed. */
const SPARED: Mm = 0.02, BESIDES: Mm = 0.1;

/** How far the edges of rough blanks may lie off the true ones: far more points are spared. */
export const ROUGH: Mm = 0.1;

export function coverOf({ shape, bodies }: SoleParts, trim: Mm): Cover {
  const face = bentFace(shape), need = needOf(bodies.foam, face), flare = Math.max(0, ...Object.values(shape.taper).map((lean) => tan(-lean)));
  const bare = kept(need.deeperThan), out = kept((depth) => setOut(bare(depth), trim + BESIDES + flare * LOOKED_EVERY));
  const widest = (sections: Sections): Cover['loops'] => {
    const over = flare > 0 ? widestOf(sections) : sections;
    return (zone, reach, thickness) => within(over(reach, thickness), zone);
  };
  return {
    face, most: need.most, area: areaOfLoops(bare(0)), loops: widest(out), bare: widest(bare), section: (zone, depth) => within(need.sectionAt(depth), zone),
    blanks: roughBlanks(face, widest(kept((depth) => out(depth).map((loop) => spared(loop, ROUGH))))),
  };
}

function setOut(loops: Paths64, by: Mm): Paths64 {
  return union(loops.map((loop) => grown(spared(loop, SPARED), by * PER_MM)), FillRule.NonZero).filter((loop) => area(loop) > 0);
}

const spared = (loop: Path64, within: Mm): Path64 => {
  const middle = loop.length >> 1, halves = [loop.slice(0, middle + 1), [...loop.slice(middle), loop[0]!]];
  return halves.flatMap((half) => ramerDouglasPeucker(half, within * PER_MM).slice(0, -1));
};

/** Sections are worked out at steps of the depth: what a depth between two needs, the shallower one needs too. */
const DEPTH_STEP: Mm = 0.1;

/** The step a depth lies in, counted from the face. */
export const stepOf = (depth: Mm): number => Math.floor(depth / DEPTH_STEP + 1e-6);

function kept(work: Sections): Sections {
  const known = new Map<number, Paths64>();
  return (depth) => {
    const step = stepOf(depth), found = known.get(step) ?? work(step * DEPTH_STEP);
    known.set(step, found);
    return found;
  };
}

function roughBlanks(face: BentFace, loops: Cover['loops']): Cover['blanks'] {
  const known = new Map<string, RoughBlanks>();
  return (zone, reach, glueLine, thickness) => {
    const step = stepOf(reach), key = [zone.from, zone.to, step, glueLine, thickness].join(' '), found = known.get(key) ?? blanksAt(step * DEPTH_STEP);
    known.set(key, found);
    return found;
    function blanksAt(top: Mm): RoughBlanks {
      const flat = flatLoops(face, loops(zone, top, glueLine + thickness), top + glueLine + thickness / 2);
      return { area: areaOfLoops(flat), sizes: flat.map(sizeOf) };
    }
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
