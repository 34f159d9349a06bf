import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../geometry/mesh.ts';
import type { Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';

/** A round bar: where its axis starts, which way it runs, how long and how thick it is, mm. */
export interface Bar { readonly from: Point3; readonly axis: 'across' | 'up'; readonly length: Mm; readonly diameter: Mm }

/**
 * Booleans of closed solids. Only these need a kernel of their own: JSCAD's leave open edges where faces nearly touch,
 * this one's results are closed and the same each time.
 */
export interface Booleans {
  readonly drill: (mesh: Mesh, bars: readonly Bar[]) => Mesh;
  /** The parts on the -y and the +y side of the upright plane along the long axis. */
  readonly splitAlongAxis: (mesh: Mesh) => readonly [Mesh, Mesh];
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
    splitAlongAxis: (mesh) => using(kernel, ontoAxis(mesh), (solid) => {
      const [left, right] = solid.splitByPlane([0, 1, 0], 0);
      const result = [tidied(right), tidied(left)] as const;
      left.delete();
      right.delete();
      return result;
    }),
  };
}

/** Points that all but lie on the long axis are put there, or the cut would leave slivers beside them. */
const ontoAxis = ({ positions, triangles }: Mesh): Mesh =>
  ({ positions: positions.map((value, i) => (i % 3 === 1 && Math.abs(value) < TIDY ? 0 : value)), triangles });

function using<T>(kernel: ManifoldToplevel, mesh: Mesh, work: (solid: Manifold) => T): T {
  const solid = new kernel.Manifold(new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(mesh.positions), triVerts: mesh.triangles }));
  try { return work(solid); } finally { solid.delete(); }
}

/** Facets keep a bar's radius within 0.02 mm up to a diameter of 20. */
const SIDES_OF_BAR = 64;
/** A bar is turned a little about its axis, so that none of its corners lies right over a row of the sole. */
const OFF_THE_ROWS = 360 / SIDES_OF_BAR / 3;

function barSolid(kernel: ManifoldToplevel, { from, axis, length, diameter }: Bar): Manifold {
  const bar = kernel.Manifold.cylinder(length, diameter / 2, diameter / 2, SIDES_OF_BAR);
  const spun = bar.rotate([0, 0, OFF_THE_ROWS]), laid = spun.rotate([axis === 'up' ? 0 : -90, 0, 0]), placed = laid.translate([...from]);
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
