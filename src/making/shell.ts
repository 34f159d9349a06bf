import type { Mesh } from '../geometry/mesh.ts';
import type { Point3 } from '../geometry/point.ts';

/** Gathers vertices by place, so that neighbours share them, and triangles with their outside out. */
export interface Shell { readonly vertex: (point: Point3) => number; readonly quad: (a: number, b: number, c: number, d: number) => void; readonly mesh: () => Mesh }

export function shell(): Shell {
  const positions: number[] = [], triangles: number[] = [], known = new Map<string, number>();
  const triangle = (a: number, b: number, c: number): void => { if (a !== b && b !== c && c !== a) triangles.push(a, b, c); };
  return {
    vertex: (point) => {
      const key = point.map((value) => value.toFixed(7)).join(' '), found = known.get(key);
      if (found !== undefined) return found;
      const index = positions.push(...point) / 3 - 1;
      known.set(key, index);
      return index;
    },
    quad: (a, b, c, d) => { triangle(a, b, c); triangle(a, c, d); },
    mesh: () => ({ positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }),
  };
}

/** A strip between two rows of points of one length, heel to toe and inner to outer, seen from above. */
export function stripOver({ vertex, quad }: Shell, from: readonly Point3[], to: readonly Point3[]): void {
  for (let j = 0; j + 1 < from.length; j++) quad(vertex(from[j]!), vertex(to[j]!), vertex(to[j + 1]!), vertex(from[j + 1]!));
}

/** The same strip seen from below, cut along the same diagonals, so that two faces that lie on each other fit. */
export function stripUnder({ vertex, quad }: Shell, from: readonly Point3[], to: readonly Point3[]): void {
  for (let j = 0; j + 1 < from.length; j++) quad(vertex(from[j]!), vertex(from[j + 1]!), vertex(to[j + 1]!), vertex(to[j]!));
}
