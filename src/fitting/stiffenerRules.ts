import { FIBRE_SHARE, FIBRES } from '../materials/stiffeners.ts';
import { lengthWords, type SheetUnits } from './convert.ts';
import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { PackOrder, PlyOrder } from './fitting.ts';

/** Rules between the fields of a stiffener that is wanted or laid. A value that could not be read is NaN here, and no comparison with it complains. */
export function packRules(order: PackOrder, at: Path, units: SheetUnits, complain: Complain): void {
  plyRules(order.ply, at, units, complain);
  if (order.ply.kind === 'measured' && order.resin !== undefined) complain([...at, 'resin'], `${LEAVE_OUT} with measuredPly: it holds its resin already`);
  if (order.ply.kind === 'own cloth' && order.ply.thickness !== undefined && order.resin !== undefined) complain([...at, 'resin'], `${LEAVE_OUT} where the thickness of the laid ply is given: the resin follows from it`);
  if (order.core === 'none' && order.coreThickness !== undefined) complain([...at, 'coreThickness'], `${LEAVE_OUT} where there is no core`);
  if (order.coreThickness! >= order.thicknessAtMost) complain([...at, 'coreThickness'], `must be less than thicknessAtMost, ${lengthWords([order.thicknessAtMost], units)}: plies lie on both sides of it`);
  if (order.plies) laidRules(order, at, complain);
  else if (order.bench) complain([...at, 'plies'], 'must be given with bench: what was laid and tested');
}

function plyRules(ply: PlyOrder, at: Path, units: SheetUnits, complain: Complain): void {
  if (ply.kind === 'measured' && ply.poisson ** 2 * ply.across >= ply.along) complain([...at, 'measuredPly', 'poisson'], 'must be less than the root of along over across, or the ply could push by itself');
  if (ply.kind !== 'own cloth' || ply.thickness === undefined) return;
  const solid = ply.areal / (1000 * FIBRES[ply.fibre].density), { least, most } = FIBRE_SHARE, share = solid / ply.thickness;
  if (share < least || share > most) complain([...at, 'ownCloth', 'thickness'], `must be ${lengthWords([solid / most, solid / least], units)} for a ply of that weight: fibre is ${least} to ${most} of its volume`);
}

function laidRules({ plies = [], core, coreThickness, underFoam }: PackOrder, at: Path, complain: Complain): void {
  const between = underFoam || (core !== undefined && core !== 'none');
  if (plies.every(({ from, to }) => from !== undefined || to !== undefined)) complain([...at, 'plies'], 'must have at least one ply that runs all along, without from and to');
  if (core !== undefined && core !== 'none' && !underFoam && coreThickness === undefined) complain([...at, 'coreThickness'], 'must be given with plies and a core');
  if (between) for (const pack of ['below', 'above'] as const)
    if (plies.every((ply) => ply.pack !== pack || ply.from !== undefined || ply.to !== undefined)) complain([...at, 'plies'], `must have a ply ${pack} the core that runs all along`);
  plies.forEach(({ from, to }, i) => {
    if ((from === undefined) !== (to === undefined)) complain([...at, 'plies', i, from === undefined ? 'from' : 'to'], 'must be given: a patch has both ends');
    if (from! >= to!) complain([...at, 'plies', i, 'to'], 'must be more than from');
  });
}
