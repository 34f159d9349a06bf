import type { Point3 } from './point.ts';
import type { Mm } from './units.ts';

/**
 * A closed surface of triangles with shared vertices. Corner order is counter-clockwise seen from outside.
 * `positions` holds x, y, z of each vertex in mm; `triangles` holds three vertex numbers a triangle.
 */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

export const triangleCount = (mesh: Mesh): number => mesh.triangles.length / 3;

export function vertexAt({ positions }: Mesh, index: number): Point3 {
  return [positions[index * 3]!, positions[index * 3 + 1]!, positions[index * 3 + 2]!];
}

/** Volume inside a closed mesh, mm³, by the divergence theorem. Negative when the mesh is inside out. */
export function volumeOf({ positions: p, triangles: t }: Mesh): number {
  let sixfold = 0;
  for (let i = 0; i < t.length; i += 3) {
    const a = t[i]! * 3, b = t[i + 1]! * 3, c = t[i + 2]! * 3;
    sixfold += p[a]! * (p[b + 1]! * p[c + 2]! - p[b + 2]! * p[c + 1]!)
      + p[a + 1]! * (p[b + 2]! * p[c]! - p[b]! * p[c + 2]!)
      + p[a + 2]! * (p[b]! * p[c + 1]! - p[b + 1]! * p[c]!);
  }
  return sixfold / 6;
}

export interface Box { readonly least: Point3; readonly most: Point3 }

export function boundsOf({ positions }: Mesh): Box {
  const least: [Mm, Mm, Mm] = [Infinity, Infinity, Infinity];
  const most: [Mm, Mm, Mm] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const axis = (i % 3) as 0 | 1 | 2;
    least[axis] = Math.min(least[axis], positions[i]!);
    most[axis] = Math.max(most[axis], positions[i]!);
  }
  return { least, most };
}

/** The same solid seen in a mirror that stands on the long axis (y becomes -y). Its outside stays outside. */
export function mirrored({ positions, triangles }: Mesh): Mesh {
  const flipped = positions.slice();
  for (let i = 1; i < flipped.length; i += 3) flipped[i] = -flipped[i]!;
  const rewound = triangles.slice();
  for (let i = 0; i < rewound.length; i += 3) {
    rewound[i + 1] = triangles[i + 2]!;
    rewound[i + 2] = triangles[i + 1]!;
  }
  return { positions: flipped, triangles: rewound };
}

/** The solid stretched by a factor along each axis, about the origin. Factors must be greater than 0. */
export function stretched({ positions, triangles }: Mesh, [fx, fy, fz]: Point3): Mesh {
  if (!(fx > 0 && fy > 0 && fz > 0)) throw new RangeError(`stretch factors must be greater than 0, got ${fx}, ${fy}, ${fz}`);
  const factors = [fx, fy, fz];
  return { positions: positions.map((value, i) => value * factors[i % 3]!), triangles };
}

/** What keeps a mesh from being one closed skin with its outside out. Empty when it is sound. */
export function faultsOf(mesh: Mesh): string[] {
  const { positions, triangles } = mesh;
  const faults: string[] = [];
  if (triangles.length === 0) return ['the mesh is empty'];
  const broken = positions.findIndex((value) => !Number.isFinite(value));
  if (broken >= 0) faults.push(`vertex ${Math.floor(broken / 3)} is not a finite point`);
  const vertices = positions.length / 3;
  const edges = new Map<number, number>();
  let collapsed = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    if (new Set(corners).size < 3) collapsed++;
    for (let k = 0; k < 3; k++) {
      const key = corners[k]! * vertices + corners[(k + 1) % 3]!;
      edges.set(key, (edges.get(key) ?? 0) + 1);
    }
  }
  let open = 0, crowded = 0;
  for (const [key, count] of edges) {
    const from = Math.floor(key / vertices), to = key % vertices;
    if (count > 1) crowded++;
    if ((edges.get(to * vertices + from) ?? 0) !== count) open++;
  }
  if (collapsed) faults.push(`${collapsed} triangles have two corners in one place`);
  if (open) faults.push(`${open} edges are open`);
  if (crowded) faults.push(`${crowded} edges are shared by more than two triangles`);
  if (!faults.length && !(volumeOf(mesh) > 0)) faults.push('the mesh is inside out');
  return faults;
}

/** Several bodies as one; each stays a shell of its own. */
export function together(meshes: readonly Mesh[]): Mesh {
  const positions = meshes.flatMap((mesh) => [...mesh.positions]);
  let before = 0;
  const triangles = meshes.flatMap((mesh) => {
    const first = before;
    before += mesh.positions.length / 3;
    return Array.from(mesh.triangles, (corner) => corner + first);
  });
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}
