import type { Making } from '../fitting/making.ts';
import { mirrored, type Mesh } from '../geometry/mesh.ts';
import type { ShoePrint } from '../making/made.ts';
import { placedOn } from '../making/print/bed.ts';
import { mirroredTurn, type Turn } from '../making/print/turns.ts';
import { solidFile, type NamedFile } from './namedFile.ts';
import { threeMfBytes } from './threeMf.ts';

/** A part of a shoe as it leaves: a right one mirrored. */
interface Leaving { readonly name: string; readonly mesh: Mesh; readonly turn: Turn }

/**
 * What a printer is given: one 3MF for each bed, all shoes in one where the bed takes them, and an STL of each part that
 * is no file of its own yet.
 */
export function printFiles(prints: readonly ShoePrint[], reference: string, { printBed }: Making): NamedFile[] {
  const placed = placedOn(prints.flatMap((one) => leaving(one, reference)), printBed), beds = [...new Set(placed.map(({ bed }) => bed))];
  return [
    ...prints.flatMap((one) => partFiles(one, reference)),
    ...beds.map((bed) => ({
      name: `${reference}_print${beds.length > 1 ? `-${bed + 1}` : ''}.3mf`,
      bytes: threeMfBytes(placed.filter((one) => one.bed === bed).map(({ part, by }) => ({ ...part, by })), `${reference} print${beds.length > 1 ? `, bed ${bed + 1} of ${beds.length}` : ''}`),
    })),
  ];
}

const leaving = ({ side, print: { pieces } }: ShoePrint, reference: string): Leaving[] => pieces.map(({ name, mesh, turn }) => ({
  name: `${reference} ${side} ${name}`, mesh: side === 'right' ? mirrored(mesh) : mesh, turn: side === 'right' ? mirroredTurn(turn) : turn,
}));

function partFiles({ side, print: { pieces, joint } }: ShoePrint, reference: string): NamedFile[] {
  if (!joint) return [];
  return pieces.map(({ name, mesh }) => {
    const stem = `${reference}_${side}_print-${name.replace(' ', '-')}`;
    return solidFile(side, stem, mesh);
  });
}
