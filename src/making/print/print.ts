import type { Bed, PrintOrder } from '../../fitting/making.ts';
import type { Mesh } from '../../geometry/mesh.ts';
import type { SoleParts } from '../../pair/shoe.ts';
import type { Booleans } from '../booleans.ts';
import { laidOn, turnedBy, type Laid } from './bed.ts';
import { jointOf, type Joint } from './joint.ts';
import { bestOf, orientationsOf, type Orientation } from './orient.ts';
import { turned, type Turn } from './turns.ts';

/** One part to be printed, LEFT shoe, mm. */
export interface PrintPiece {
  readonly name: 'foam body' | 'whole sole' | 'heel part' | 'forepart';
  readonly mesh: Mesh;
  readonly orientations: readonly Orientation[];
  /** The advised one. */
  readonly best: Orientation;
  /** How it goes on the bed, where the sheet has one. */
  readonly laid: Laid | undefined;
  /** The advised orientation with its heading on the bed. */
  readonly turn: Turn;
}

/** A sole as a printer takes it: in one, or in two parts with a joint. */
export interface Print { readonly pieces: readonly PrintPiece[]; readonly joint: Joint | undefined }

/** The part that is printed. */
export const printPart = ({ bodies, solids }: SoleParts, part: PrintOrder['part']): { readonly body: SoleParts['bodies']['foam']; readonly solid: Mesh } =>
  part === 'foam body' ? { body: bodies.foam, solid: solids.foam } : { body: bodies.whole, solid: solids.whole };

export function printOf(parts: SoleParts, order: PrintOrder, kernel: Booleans, bed?: Bed): Print {
  const { body, solid } = printPart(parts, order.part);
  if (!order.split) return { pieces: [pieceOf(order.part, solid, kernel, bed)], joint: undefined };
  const joint = jointOf(body, order), [heel, fore] = [joint.heel, joint.fore].map((outline) => kernel.within(solid, outline)) as [Mesh, Mesh];
  const drilled = (mesh: Mesh): Mesh => (joint.bores.length ? kernel.drill(mesh, joint.bores) : mesh);
  return { joint, pieces: [pieceOf('heel part', drilled(heel), kernel, bed), pieceOf('forepart', drilled(fore), kernel, bed, true)] };
}

function pieceOf(name: PrintPiece['name'], mesh: Mesh, kernel: Booleans, bed: Bed | undefined, cutFlat = false): PrintPiece {
  const orientations = orientationsOf(mesh, kernel, cutFlat), lie = ({ turn }: Orientation): Laid | undefined => bed && laidOn(turned(mesh, turn), bed);
  const best = bestOf(orientations, (one) => lie(one)?.fits ?? true), laid = lie(best);
  return { name, mesh, orientations, best, laid, turn: turnedBy(laid?.heading ?? 0, best.turn) };
}
