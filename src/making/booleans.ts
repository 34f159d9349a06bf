import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { boundsOf, type Mesh } from '../geometry/mesh.ts';
import type { Point, Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';

/** A round bar: where its axis starts, which way it runs, how long and how thick it is, mm. */
export interface Bar { readonly from: Point3; readonly axis: 'along' | 'across' | 'up'; readonly length: Mm; readonly diameter: Mm }

/**
 * Booleans of closed solids. Only these need a kernel of their own: JSCAD's leave open edges where faces nearly touch,
 * this one's results are closed and the same each time.
 */
export interface Booleans {
  readonly drill: (mesh: Mesh, bars: readonly Bar[]) => Mesh;
  /** The parts on the -y and the +y side of the upright plane along the long axis. */
  readonly splitAlongAxis: (mesh: Mesh) => readonly [Mesh, Mesh];
  /** The parts between upright planes across the long axis, heel to toe. @param at where the planes stand, rising */
  readonly cutAcross: (mesh: Mesh, at: readonly Mm[]) => readonly Mesh[];
  /** What lies over or under an outline in plan. @param outline corners, counter-clockwise */
  readonly within: (mesh: Mesh, outline: readonly Point[]) => Mesh;
  /** The tightest skin round a solid that is hollow nowhere. */
  readonly hull: (mesh: Mesh) => Mesh;
  /** What stays of a solid when others are cut away from it, save where something is kept. */
  readonly carve: (mesh: Mesh, away: readonly Mesh[], kept: readonly Mesh[]) => Mesh;
  /** An upright prism over a closed line of corners, counter-clockwise. */
  readonly prism: (corners: readonly Point[], from: Mm, to: Mm) => Mesh;
}

/** Loads the kernel (WebAssembly). @param locate where the page serves its .wasm file, in a browser */
export async function loadBooleans(locate?: () => string): Promise<Booleans> {
  const kernel = await Module(locate && { locateFile: locate });
  kernel.setup();
  return {
    drill: (mesh, bars) => using(kernel, mesh, (solid) => {
      const cutters = bars.map((bar) => barSolid(kernel, bar));
      const all = kernel.Manifold.union(cutters), drilled = solid.subtract(all);
      const result = tidied(drilled);
      for (const used of [...cutters, all, drilled]) used.delete();
      return result;
    }),
    splitAlongAxis: (mesh) => using(kernel, ontoPlane(mesh, 1, 0), (solid) => {
      const [left, right] = solid.splitByPlane([0, 1, 0], 0);
      const result = [tidied(right), tidied(left)] as const;
      left.delete();
      right.delete();
      return result;
    }),
    cutAcross: (mesh, at) => using(kernel, at.reduce((flat, x) => ontoPlane(flat, 0, x), mesh), (solid) => slices(solid, at)),
    within: (mesh, outline) => using(kernel, mesh, (solid) => {
      const { least, most } = boundsOf(mesh), column = prismSolid(kernel, outline, least[2] - 1, most[2] + 1), inside = solid.intersect(column), result = tidied(inside);
      for (const used of [column, inside]) used.delete();
      return result;
    }),
    hull: (mesh) => using(kernel, mesh, (solid) => {
      const skin = solid.hull(), result = meshFrom(skin);
      skin.delete();
      return result;
    }),
    carve: (mesh, away, kept) => using(kernel, mesh, (solid) => {
      const [cut, spared] = [unionOf(kernel, away), unionOf(kernel, kept)], cutter = cut.subtract(spared), carved = solid.subtract(cutter);
      const result = tidied(carved);
      for (const used of [cut, spared, cutter, carved]) used.delete();
      return result;
    }),
    prism: (corners, from, to) => {
      const standing = prismSolid(kernel, corners, from, to), result = meshFrom(standing);
      standing.delete();
      return result;
    },
  };
}

function prismSolid(kernel: ManifoldToplevel, corners: readonly Point[], from: Mm, to: Mm): Manifold {
  const standing = kernel.Manifold.extrude([corners.map(([x, y]): [Mm, Mm] => [x, y])], to - from), lifted = standing.translate([0, 0, from]);
  standing.delete();
  return lifted;
}

function unionOf(kernel: ManifoldToplevel, meshes: readonly Mesh[]): Manifold {
  const solids = meshes.map((mesh) => solidOf(kernel, mesh)), all = kernel.Manifold.union(solids);
  for (const used of solids) used.delete();
  return all;
}

/** Points that all but lie on a plane are put there, or the cut would leave slivers beside them. */
const ontoPlane = ({ positions, triangles }: Mesh, axis: 0 | 1, at: Mm): Mesh =>
  ({ positions: positions.map((value, i) => (i % 3 === axis && Math.abs(value - at) < TIDY ? at : value)), triangles });

/** Cuts slice after slice off the heel end. */
function slices(solid: Manifold, at: readonly Mm[]): Mesh[] {
  const cut: Mesh[] = [], used: Manifold[] = [];
  let rest = solid;
  for (const x of at) {
    const [ahead, behind] = rest.splitByPlane([1, 0, 0], x);
    cut.push(tidied(behind));
    used.push(ahead, behind);
    rest = ahead;
  }
  cut.push(tidied(rest));
  for (const one of used) one.delete();
  return cut;
}

const solidOf = (kernel: ManifoldToplevel, { positions, triangles }: Mesh): Manifold =>
  new kernel.Manifold(new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles }));

function using<T>(kernel: ManifoldToplevel, mesh: Mesh, work: (solid: Manifold) => T): T {
  const solid = solidOf(kernel, mesh);
  try { return work(solid); } finally { solid.delete(); }
}

/** Facets keep a bar's radius within 0.02 mm up to a diameter of 20. */
const SIDES_OF_BAR = 64;
/** A bar is turned a little about its axis, so that none of its corners lies right over a row of the sole. */
const OFF_THE_ROWS = 360 / SIDES_OF_BAR / 3;

/** From upright to the way a bar runs. */
const TURN: Record<Bar['axis'], [number, number, number]> = { along: [0, 90, 0], across: [-90, 0, 0], up: [0, 0, 0] };

function barSolid(kernel: ManifoldToplevel, { from, axis, length, diameter }: Bar): Manifold {
  const bar = kernel.Manifold.cylinder(length, diameter / 2, diameter / 2, SIDES_OF_BAR);
  const spun = bar.rotate([0, 0, OFF_THE_ROWS]), laid = spun.rotate(TURN[axis]), placed = laid.translate([...from]);
  for (const used of [bar, spun, laid]) used.delete();
  return placed;
}

/** Cuts leave facets thinner than a file can hold; what moves no point by more than this is taken away. */
const TIDY: Mm = 0.002;

function tidied(solid: Manifold): Mesh {
  const tidy = solid.simplify(TIDY), mesh = meshFrom(tidy);
  tidy.delete();
  return mesh;
}

function meshFrom(solid: Manifold): Mesh {
  const { vertProperties, triVerts, numProp } = solid.getMesh(), count = vertProperties.length / numProp;
  const positions = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) for (let k = 0; k < 3; k++) positions[i * 3 + k] = vertProperties[i * numProp + k]!;
  return { positions, triangles: Uint32Array.from(triVerts) };
}
