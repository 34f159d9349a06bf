import jscad from '@jscad/modeling';
import { triangleCount, vertexAt, type Mesh } from '../geometry/mesh.ts';

export type Geom3 = ReturnType<typeof jscad.geometries.geom3.create>;

/** The solid in the modelling language of @jscad/modeling, for scripts that carry on from a sole. One polygon a triangle. */
export function toGeom3(mesh: Mesh): Geom3 {
  const { poly3, geom3 } = jscad.geometries;
  const corner = (index: number): [number, number, number] => [...vertexAt(mesh, mesh.triangles[index]!)];
  return geom3.create(Array.from({ length: triangleCount(mesh) }, (_, i) => poly3.create([corner(3 * i), corner(3 * i + 1), corner(3 * i + 2)])));
}
