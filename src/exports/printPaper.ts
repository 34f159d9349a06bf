import { cubic, deg, mm, rounded } from '../checks/say.ts';
import type { Bed, Making } from '../fitting/making.ts';
import { boundsOf, volumeOf } from '../geometry/mesh.ts';
import { inDegrees } from '../geometry/units.ts';
import type { ShoePrint } from '../making/made.ts';
import { pinDepth, type Joint } from '../making/print/joint.ts';
import type { PrintPiece } from '../making/print/print.ts';
import { heading, introduction, table, type Block, type Row } from './flow.ts';
import { bold, ruled, WIDTH } from './figureSections.ts';
import type { Line } from './orderWords.ts';

const square = (mm2: number): string => `${rounded(mm2 / 100, 1)} cm²`;

/** How each part is laid on the bed, and how parts are joined. */
export function printSection(prints: readonly ShoePrint[], { printBed }: Making): Block[] {
  if (prints.length === 0) return [];
  return [
    heading('Print'),
    introduction('Ways to lay each part, as it comes to rest by itself. Over: faces that hang over by more than 45°, and what lies between them and the bed: a breakaway wedge under the upper face, else supports, which are hard to take off soft material. On the bed: what the first layer holds; where that is little the part wants a brim. What is more than four times as high as it is wide sways. The one in bold letters hangs over least of those that stand firm and go on the bed; the 3MF files have it so.', WIDTH),
    ...table(
      [{ title: 'Part', width: 30 }, { title: 'Laid', width: 41 }, { title: 'Over', width: 24, right: true }, { title: 'under it', width: 24, right: true }, { title: 'On the bed', width: 26, right: true }, { title: 'High', width: WIDTH - 145, right: true }],
      prints.flatMap(({ side, print: { pieces } }) => pieces.flatMap((piece) => rowsOf(side, piece))),
    ),
    ...ruled(prints.flatMap(({ side, order, print: { pieces, joint } }): Line[] => [
      ...pieces.map((piece): Line => [`${side} ${piece.name}`, bedWords(piece, printBed)]),
      ...(joint ? [[`${side} joint`, jointWords(joint, order.pin, order.clearance)] as const] : []),
    ])),
  ];
}

const rowsOf = (side: string, { name, orientations, best }: PrintPiece): Row[] => orientations.map((one) => {
  const cells = [`${side} ${name}`, `${one.name}${one.firm ? '' : ' (sways)'}`, square(one.overhang), cubic(one.under), square(one.contact), mm(one.height)];
  return { cells: one === best ? cells.map(bold) : cells };
});

function bedWords({ mesh, best, laid }: PrintPiece, bed: Bed | undefined): string {
  const said = `${best.name}, ${cubic(volumeOf(mesh))} solid`;
  if (!laid || !bed) return `${said}; no print bed on the sheet (making.printBed), so whether it goes on was not checked`;
  const turn = Math.abs(inDegrees(laid.heading)), how = turn > 0.5 && turn < 89.5 ? `turned, long axis ${deg(turn, 0)} from the bed's x side` : turn >= 89.5 ? "long axis along the bed's y side" : "long axis along the bed's x side";
  return laid.fits ? `${said}; ${how}` : `${said}; DOES NOT GO ON the bed of ${bed.x} × ${bed.y} × ${bed.z} mm in any of these`;
}

function jointWords(joint: Joint, pin: number, clearance: number): string {
  const { waist, key: { neck, head, long }, bores } = joint;
  const pins = bores.length ? ` Two loose pins of ${mm(pin)}, ${mm(pinDepth(joint), 0)} deep, one from each wall, then hold it at its height; trim them flush.` : ' Too thin at the waist for the pins: hold it level on a flat board while the cement sets.';
  return `${mm(waist.x, 0)} from the heel. The dovetail of the heel part, ${mm(2 * neck)} wide at its neck, ${mm(2 * head)} at its head, ${mm(long)} long, slides down into the forepart with ${mm(clearance, 2)} of gap; cement it.${pins}`;
}

/** The same as numbers for other programs. */
export const printNumbers = ({ side, order, print: { pieces, joint } }: ShoePrint): object => ({
  side, part: order.part, split: order.split,
  pieces: pieces.map(({ name, mesh, orientations, best, laid }) => ({
    name, volumeMm3: volumeOf(mesh), sizeMm: sizeOf(mesh), advised: best.name,
    orientations: orientations.map(({ name: way, overhang, under, contact, height, firm }) => ({ name: way, overhangMm2: overhang, underMm3: under, onBedMm2: contact, heightMm: height, firm })),
    onBed: laid && { fits: laid.fits, headingDeg: inDegrees(laid.heading) * (side === 'right' ? -1 : 1) },
  })),
  joint: joint && {
    fromHeelMm: joint.waist.x, neckMm: 2 * joint.key.neck, headMm: 2 * joint.key.head, lengthMm: joint.key.long,
    pins: joint.bores.length, pinMm: order.pin, pinDepthMm: pinDepth(joint), pinMostMm: joint.pinMost, clearanceMm: order.clearance,
  },
});

function sizeOf(mesh: PrintPiece['mesh']): number[] {
  const { least, most } = boundsOf(mesh);
  return most.map((value, k) => value - least[k as 0 | 1 | 2]);
}
