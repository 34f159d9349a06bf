import { CLOTHS, FIBRE_SHARE, FIBRES } from '../materials/stiffeners.ts';
import { lengthWords, type SheetUnits } from './convert.ts';
import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { PackOrder, PlyOrder } from './fitting.ts';

/** Rules between the fields of a stiffener that is wanted or laid. A value that could not be read is NaN here, and no comparison with it complains. */
export function packRules(order: PackOrder, last: { readonly length: number }, at: Path, units: SheetUnits, complain: Complain): void {
  for (const ply of ownPlies(order)) plyRules(ply, at, units, complain);
  if (order.resin !== undefined) noResinIn(order.ply, [...at, 'resin'], complain);
  if (order.core === 'none' && order.coreThickness !== undefined) complain([...at, 'coreThickness'], `${LEAVE_OUT} where there is no core`);
  if (order.coreThickness! >= order.thicknessAtMost) complain([...at, 'coreThickness'], `must be less than thicknessAtMost, ${lengthWords([order.thicknessAtMost], units)}: plies lie on both sides of it`);
  if (order.shank && order.shank.from >= order.shank.to) complain([...at, 'shank', 'to'], 'must be more than from');
  const stretches = [...(order.shank ? [{ to: order.shank.to, at: [...at, 'shank'] }] : []), ...(order.plies ?? []).map(({ to }, i) => ({ to, at: [...at, 'plies', i] }))];
  for (const { to, at: place } of stretches) if (to! > last.length) complain([...place, 'to'], `must be at most the length of the last, ${lengthWords([last.length], units)}`);
  if (order.plies) laidRules(order, at, complain);
  else if (order.bench) complain([...at, 'plies'], 'must be given with bench: what was laid and tested');
}

/** Every kind of ply that is laid, each once. */
const ownPlies = ({ ply, plies = [] }: PackOrder): readonly PlyOrder[] => [ply, ...plies.flatMap((one) => one.ply ?? [])].filter((one, i, all) => all.findIndex(({ kind }) => kind === one.kind) === i);

/** A ply that holds its resin already is not given another share. */
function noResinIn(ply: PlyOrder, at: Path, complain: Complain): void {
  if (ply.kind === 'measured') complain(at, `${LEAVE_OUT} with measuredPly: it holds its resin already`);
  if (ply.kind === 'own cloth' && ply.thickness !== undefined) complain(at, `${LEAVE_OUT} where the thickness of the laid ply is given: the resin follows from it`);
}

function plyRules(ply: PlyOrder, at: Path, units: SheetUnits, complain: Complain): void {
  if (ply.kind === 'measured' && ply.poisson ** 2 * ply.across >= ply.along) complain([...at, 'measuredPly', 'poisson'], 'must be less than the root of along over across, or the ply could push by itself');
  if (ply.kind !== 'own cloth' || ply.thickness === undefined) return;
  const solid = ply.areal / (1000 * (typeof ply.fibre === 'string' ? FIBRES[ply.fibre] : ply.fibre).density), { least, most } = FIBRE_SHARE, share = solid / ply.thickness;
  if (share < least || share > most) complain([...at, 'ownCloth', 'thickness'], `must be ${lengthWords([solid / most, solid / least], units)} for a ply of that weight: fibre is ${least} to ${most} of its volume`);
}

function laidRules({ ply: usual, plies = [], core, coreThickness, underFoam }: PackOrder, at: Path, complain: Complain): void {
  const between = underFoam || (core !== undefined && core !== 'none');
  if (plies.every(({ from, to }) => from !== undefined || to !== undefined)) complain([...at, 'plies'], 'must have at least one ply that runs all along, without from and to');
  if (core !== undefined && core !== 'none' && !underFoam && coreThickness === undefined) complain([...at, 'coreThickness'], 'must be given with plies and a core');
  if (between) for (const pack of ['below', 'above'] as const)
    if (plies.every((ply) => ply.pack !== pack || ply.from !== undefined || ply.to !== undefined)) complain([...at, 'plies'], `must have a ply ${pack} the core that runs all along`);
  plies.forEach(({ from, to, cloth, ply, resin }, i) => {
    if (cloth !== undefined && ply === undefined) complain([...at, 'plies', i, 'cloth'], `must be the name of ownCloth or measuredPly, or one of: ${Object.keys(CLOTHS).join(', ')}`, '', cloth);
    if (resin !== undefined) noResinIn(ply ?? usual, [...at, 'plies', i, 'resin'], complain);
    if ((from === undefined) !== (to === undefined)) complain([...at, 'plies', i, from === undefined ? 'from' : 'to'], 'must be given: a patch has both ends');
    if (from! >= to!) complain([...at, 'plies', i, 'to'], 'must be more than from');
  });
}
