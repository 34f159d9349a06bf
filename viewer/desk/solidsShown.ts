import type { Design } from '../../src/checks/design.ts';
import type { Side } from '../../src/fitting/words.ts';
import { mirrored, type Mesh } from '../../src/geometry/mesh.ts';
import type { Mm } from '../../src/geometry/units.ts';
import { partsOf, type Shoe } from '../../src/pair/shoe.ts';
import type { Solids } from '../../src/solid/solids.ts';
import type { Extras } from './extras.ts';
import { ordinarySole } from './ordinary.ts';
import type { PartName, ShoeShown, SolidShown } from './protocol.ts';
import { standingFoot } from './standingFoot.ts';

/** The solids of each shoe as they stand in the world: those of its sole, and those asked for besides. */
export function solidsShown(design: Design, extras: Extras): (shoe: Shoe) => readonly SolidShown[] {
  const beside = besideShown(design, extras);
  return (shoe) => [...soleShown(shoe), ...footShown(shoe, extras), ...beside(shoe.side)];
}

function soleShown(shoe: Shoe): SolidShown[] {
  const parts = partsOf(shoe);
  return parts ? partsShown(parts.solids, shoe.side) : [];
}

const partsShown = ({ whole, foam, outsole }: Solids, side: Side): SolidShown[] =>
  ([['whole sole', whole], ['foam', foam], ['outsole', outsole]] as const).map(([part, mesh]) => solidShown(part, mesh, side));

/** Only where a foot was measured. */
const footShown = (shoe: Shoe, { foot }: Extras): SolidShown[] => (foot && shoe.kind === 'rocker' ? [solidShown('foot', standingFoot(foot, shoe), shoe.side)] : []);

function besideShown(design: Design, { beside }: Extras): (side: Side) => readonly SolidShown[] {
  const solidsOf = beside?.(design);
  return (side) => (solidsOf?.(side) ?? []).map(({ of, name, mesh }) => solidShown(`${of}: ${name}`, mesh, side));
}

/** Somebody only looks at it, so it need not be fine. */
const ORDINARY_GAP: Mm = 0.3;

export function ordinaryShown(shoe: Shoe): Pick<ShoeShown, 'ordinary'> {
  const plain = shoe.kind === 'rocker' ? ordinarySole(shoe, ORDINARY_GAP) : undefined;
  return plain ? { ordinary: { solids: partsShown(plain.solids, shoe.side), seatHeight: plain.seatHeight } } : {};
}

function solidShown(part: PartName, left: Mesh, side: Side): SolidShown {
  const { positions, triangles } = side === 'right' ? mirrored(left) : left;
  return { part, positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}
