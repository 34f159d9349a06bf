import type { Finding } from '../../checks/finding.ts';
import { mm, sizeWords } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { Mm } from '../../geometry/units.ts';
import { BED_MARGIN, cutsInto, goesOn, heightNeeded, MOST_PIECES, squareFor } from './cuts.ts';
import type { SetOut } from './findings.ts';
import { dowelsIn } from '../places.ts';

const common = { unit: 'mm', where: 'mould', basis: PRACTICE } as const;

/** How a printed mould goes on the bed, and how its pieces hold together. */
export function bedFindings(one: SetOut): Finding[] {
  if (one.order.by !== 'printed') return [];
  if (!one.layout.fits) return [tooSmall(one)];
  return [...inPieces(one), ...looseJoints(one)];
}

/** The bed named was tried: the mould, cut into the most pieces, goes on it. */
function tooSmall({ side, order, making: { printBed }, layout: { blocks, rows, pour, vents } }: SetOut): Finding {
  const dowels = dowelsIn(MOST_PIECES, rows, order), cuts = cutsInto(MOST_PIECES, blocks, { cavity: dowels, lid: [...dowels, ...pour, ...vents] });
  const square = Math.ceil(squareFor(blocks, cuts)), high = Math.ceil(heightNeeded(blocks)), bed = printBed ?? { x: 0, y: 0, z: 0 }, works = { x: square, y: square, z: high };
  const said = goesOn(works, blocks, cuts) ? ` A bed of ${sizeWords(square, square, high)} takes it in ${MOST_PIECES} pieces.` : '';
  const low = bed.z < high;
  return {
    ...common, code: 'MOULD_BED', severity: 'warn', side, measured: low ? bed.z : Math.min(bed.x, bed.y), limit: low ? high : square,
    text: `Even cut across into ${MOST_PIECES} the mould does not go on the print bed of ${sizeWords(bed.x, bed.y, bed.z)} with ${BED_MARGIN} mm to spare (making.printBed), so it is left whole.${said} A narrower rim (making.mould.rim) or a routed mould (making.mould.by) are other ways.`,
  };
}

function inPieces({ side, layout: { cuts: { cavity, lid } } }: SetOut): Finding[] {
  if (cavity.length === 0) return [];
  const places = (at: readonly Mm[]): string => at.map((x) => mm(x, 0)).join(', ');
  return [{
    ...common, code: 'MOULD_PIECES', severity: 'note', side, measured: cavity.length + 1, limit: 1, unit: '',
    text: `To go on the print bed the mould is cut across: the cavity ${places(cavity)}, the lid ${places(lid)} from the heel, so that each bridges the joint of the other. Dowels lie along the shoe in the joints of the cavity; close the seams inside with wax.`,
  }];
}

/** A joint of the cavity without room for its dowels. */
function looseJoints({ side, order: { dowel }, layout: { ties } }: SetOut): Finding[] {
  const most = Math.min(Infinity, ...ties.map((tie) => tie.most));
  if (most >= dowel) return [];
  const works = Math.floor(most * 10) / 10;
  return [{
    ...common, code: 'MOULD_JOINT', severity: 'warn', side, measured: dowel, limit: most,
    text: `A dowel of ${mm(dowel)} has no room along the shoe in the rim at a joint of the cavity, and is left out there. ${works >= 2 ? `One of ${mm(works)} has (making.mould.dowel).` : 'A wider rim gives it room (making.mould.rim).'}`,
  }];
}
