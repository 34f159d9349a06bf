import type { Side } from '../fitting/words.ts';
import { mirrored, type Mesh } from '../geometry/mesh.ts';
import { stlBytes } from './stl.ts';

/** A file by its name in the folder of the job. */
export interface NamedFile { readonly name: string; readonly bytes: Uint8Array }

export const textFile = (name: string, letters: string): NamedFile => ({ name, bytes: new TextEncoder().encode(letters) });

/** A solid as STL. Shapes are those of a left shoe: a right one is mirrored here, as it leaves. @param stem the name without its ending */
export const solidFile = (side: Side, stem: string, mesh: Mesh): NamedFile =>
  ({ name: `${stem}.stl`, bytes: stlBytes(side === 'right' ? mirrored(mesh) : mesh, stem) });
