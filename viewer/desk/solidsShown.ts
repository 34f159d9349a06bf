import type { Design } from '../../src/checks/design.ts';
import { mouldsFor } from '../../src/making/made.ts';
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
export function solidsShown(made: Design, extras: Extras): (shoe: Shoe) => readonly SolidShown[] {
  const moulds = mouldsShown(made, extras);
  return (shoe) => [...soleShown(shoe), ...footShown(shoe, extras), ...(moulds.get(shoe.side) ?? [])];
}

function soleShown(shoe: Shoe): SolidShown[] {
  const parts = partsOf(shoe);
  return parts ? partsShown(parts.solids, shoe.side) : [];
}

const partsShown = ({ whole, foam, outsole }: Solids, side: Side): SolidShown[] =>
  ([['whole sole', whole], ['foam', foam], ['outsole', outsole]] as const).map(([part, mesh]) => solidShown(part, mesh, side));

/** Only where a foot was measured. */
const footShown = (shoe: Shoe, { foot }: Extras): SolidShown[] => (foot && shoe.kind === 'rocker' ? [solidShown('foot', standingFoot(foot, shoe), shoe.side)] : []);

/** The moulds of a sheet that orders them, if the soles come free of them. */
function mouldsShown(made: Design, { booleans }: Extras): ReadonlyMap<Side, readonly SolidShown[]> {
  if (!booleans || made.mouldFaults.length) return new Map();
  return new Map(mouldsFor(made, booleans).map(({ side, mould: { cavity, lid } }) =>
    [side, [solidShown('mould', together(cavity.map(({ mesh }) => mesh)), side), solidShown('lid', together(lid.map(({ mesh }) => mesh)), side)]] as const));
}

/** The pieces of a cavity or a lid as one. */
function together(meshes: readonly Mesh[]): Mesh {
  const before = meshes.map((_, i) => meshes.slice(0, i).reduce((sum, { positions }) => sum + positions.length / 3, 0));
  return {
    positions: Float64Array.from(meshes.flatMap(({ positions }) => [...positions])),
    triangles: Uint32Array.from(meshes.flatMap(({ triangles }, i) => [...triangles].map((corner) => corner + before[i]!))),
  };
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
