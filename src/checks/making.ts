import { boundsOf, type Mesh } from '../geometry/mesh.ts';
import { pointAlong } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { partsOf, type SoleParts } from '../pair/shoe.ts';
import { groundPoint } from '../solid/groundLine.ts';
import { layOn, smallestSquare, type Square } from './bedFit.ts';
import type { Finding } from './finding.ts';
import { deg, mm } from './say.ts';
import { over, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** The cutter must stick out this much further than the part is high, or its holder ploughs the block. */
const BEYOND_PART: Mm = 5;

export function toolReach({ shoe, fitting: { making: { tool } } }: Seen): Finding[] {
  const parts = partsOf(shoe);
  if (!tool || !parts) return [];
  const height = heightOf(parts.solids.foam), needed = height + BEYOND_PART;
  if (!over(needed, tool.reach)) return [];
  return [{
    code: 'TOOL_REACH', severity: 'warn', side: shoe.side, measured: tool.reach, limit: needed, unit: 'mm', where: 'foam body',
    text: `The foam body is ${mm(height)} high and the cutter reaches ${mm(tool.reach)}; it needs ${mm(needed)} (part and ${BEYOND_PART} mm). Take a longer cutter (making.tool.reach) or cut from both faces.`, basis: PRACTICE,
  }];
}

function heightOf(mesh: Mesh): Mm {
  const { least, most } = boundsOf(mesh);
  return most[2] - least[2];
}

const BED_MARGIN: Mm = 5;

export function printBed({ shoe, fitting: { making: { printBed: bed } } }: Seen): Finding[] {
  const parts = partsOf(shoe);
  if (!bed || !parts) return [];
  const plan = planOf(parts), laid = layOn(plan, bed, BED_MARGIN), square = laid.fits ? undefined : smallestSquare(plan, BED_MARGIN);
  const tall = heightOf(parts.solids.whole) + BED_MARGIN, tooTall = over(tall, bed.z);
  const common = { side: shoe.side, unit: 'mm', where: 'whole sole', basis: PRACTICE } as const;
  if (square || tooTall) return [{
    ...common, code: 'PRINT_BED', severity: 'warn', measured: square ? Math.min(bed.x, bed.y) : bed.z, limit: square ? square.side : tall,
    text: `The sole does not go on the print bed of ${bed.x} × ${bed.y} × ${bed.z} mm with ${BED_MARGIN} mm to spare (making.printBed).${needs(square, tooTall, tall)} Or print it in two parts.`,
  }];
  const turn = inDegrees(laid.turn);
  if (!(turn > 0 && turn < 90)) return [];
  return [{ ...common, code: 'PRINT_TURNED', severity: 'note', measured: bed.x, text: `The sole goes on the print bed turned: long axis ${deg(turn, 0)} from the bed's x side.` }];
}

function needs(square: Square | undefined, tooTall: boolean, tall: Mm): string {
  const side = Math.ceil(square?.side ?? 0), plan = square ? ` A bed of ${side} × ${side} mm takes it, long axis ${deg(inDegrees(square.turn), 0)} from the side.` : '';
  return tooTall ? `${plan} It needs ${Math.ceil(tall)} mm of height.` : plan;
}

/** Places all round, about 4 mm apart, on both edges: walls may lean either way. */
const ROUND = 192;

function planOf({ shape }: SoleParts): Point[] {
  const onGround = groundPoint(shape), step = shape.edge.length / ROUND;
  return Array.from({ length: ROUND }, (_, i) => i * step).flatMap((w): Point[] => {
    const [x, y] = onGround(w);
    return [pointAlong(shape.edge, w), [x, y]];
  });
}
