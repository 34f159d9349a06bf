import { fault, type Fault, type Path } from '../fitting/faults.ts';
import type { Mm } from '../geometry/units.ts';
import type { Asked } from './assess.ts';
import { breaksOf, lies, type Attached, type CoreLayer, type PlacedPly, type Plate, type Stiffener, type Stretch } from './stiffener.ts';

/** Softer than this in shear a core ties nothing, MPa; thinner than a sheet that can be cut, mm. Common practice. */
export const LEAST_CORE_SHEAR = 0.3, LEAST_CORE: Mm = 0.5;
/** Bodies a stiffener is reckoned for, kg. */
export const MASSES = [20, 250] as const;

const is = (value: number, least: number, most: number): boolean => Number.isFinite(value) && value >= least && value <= most;
const above0 = (path: Path, value: number, unit: string): Fault[] => (Number.isFinite(value) && value > 0 ? [] : [fault(path, `must be greater than 0 ${unit}`, value)]);

/** All that keeps a stiffener from being reckoned, at once. */
export function faultsOf(stiffener: Stiffener, plate: Plate, asked: Asked): Fault[] {
  const { below, above, core, attached, edges } = stiffener, plies = below.length + above.length;
  const own = [
    ...(plies === 0 ? [fault(['stiffener', 'plies'], 'must have at least one ply', 0)] : []),
    ...plyFaults(below, ['stiffener', 'below']), ...plyFaults(above, ['stiffener', 'above']),
    ...(core ? coreFaults(core, below.length > 0 && above.length > 0) : []),
    ...attached.flatMap((layer, i) => attachedFaults(layer, ['stiffener', 'attached', i])),
    ...(edges === undefined || is(edges, 0, 30) ? [] : [fault(['stiffener', 'edges'], 'must be 0 to 30 mm', edges)]),
  ];
  const places = plateFaults(plate);
  const bare = plies > 0 && places.length === 0 ? bareFaults(stiffener, plate) : [];
  return [...own, ...places, ...bare, ...askedFaults(asked, plate)];
}

const stretchFaults = (over: Stretch | undefined, path: Path): Fault[] => (over === undefined || over.to > over.from ? [] : [fault([...path, 'over'], 'must end ahead of where it begins', over.to)]);

const plyFaults = (plies: readonly PlacedPly[], path: Path): Fault[] => plies.flatMap(({ ply, angle, over }, i) => [
  ...above0([...path, i, 'thickness'], ply.thickness, 'mm'), ...(Number.isFinite(angle) ? [] : [fault([...path, i, 'angle'], 'must be an angle', angle)]), ...stretchFaults(over, [...path, i]),
]);

function coreFaults({ thickness, material, count = 'counted', over }: CoreLayer, between: boolean): Fault[] {
  const path = ['stiffener', 'core'], shear = material.shear[count], modulus = material.modulus[count];
  return [
    ...(between ? [] : [fault(path, 'must lie between plies: some above it and some below', 'plies on one side only')]),
    ...(is(thickness, LEAST_CORE, 60) ? [] : [fault([...path, 'thickness'], `must be ${LEAST_CORE} to 60 mm`, thickness)]),
    ...(Number.isFinite(shear) && shear >= LEAST_CORE_SHEAR ? [] : [fault([...path, 'shear'], `must be at least ${LEAST_CORE_SHEAR} MPa`, shear, 'A softer core ties the plies above and below to nothing.')]),
    ...above0([...path, 'modulus'], modulus, 'MPa'), ...above0([...path, 'shearStrength'], material.shearStrength, 'MPa'), ...stretchFaults(over, path),
  ];
}

const attachedFaults = ({ thickness, modulus, bond, width, over }: Attached, path: Path): Fault[] => [
  ...above0([...path, 'thickness'], thickness, 'mm'), ...above0([...path, 'modulus'], modulus, 'MPa'),
  ...(is(bond, 0, 1) ? [] : [fault([...path, 'bond'], 'must be 0 (slides) to 1 (one piece)', bond)]),
  ...(width === undefined ? [] : above0([...path, 'width'], width, 'mm')), ...stretchFaults(over, path),
];

function plateFaults({ from, to, ball, heel, width }: Plate): Fault[] {
  if (!(Number.isFinite(from) && Number.isFinite(to) && to - from >= 20)) return [fault(['plate'], 'must be at least 20 mm long', to - from)];
  const narrow = sampled(from, to).find((x) => !(width(x) > 0));
  return [
    ...(narrow === undefined ? [] : [fault(['plate', 'width'], `must be greater than 0 mm everywhere (at ${narrow.toFixed(0)} mm it is not)`, width(narrow))]),
    ...(ball > from + 10 && ball < to - 5 ? [] : [fault(['plate', 'ball'], `must lie at least 10 mm ahead of the plate's back and 5 mm behind its tip (${from.toFixed(0)} to ${to.toFixed(0)} mm)`, ball)]),
    ...(heel >= from && heel <= ball - 10 ? [] : [fault(['plate', 'heel'], 'must lie on the plate, at least 10 mm behind the ball', heel)]),
  ];
}

const sampled = (from: Mm, to: Mm): Mm[] => { const n = Math.ceil(to - from); return Array.from({ length: n }, (_, i) => from + ((i + 0.5) * (to - from)) / n); };

/** Where patches alone leave a gap. */
function bareFaults(stiffener: Stiffener, { from, to }: Plate): Fault[] {
  const places = [from, ...breaksOf(stiffener), to].filter((x) => x >= from && x <= to).sort((a, b) => a - b);
  const bare = places.slice(1).map((x, i) => (x + places[i]!) / 2).find((x) => ![...stiffener.below, ...stiffener.above].some(({ over }) => lies(over, x)));
  return bare === undefined ? [] : [fault(['stiffener', 'plies'], `must cover the whole plate (at ${bare.toFixed(0)} mm there is none)`, 'patches only')];
}

function askedFaults({ mass, lever, walking }: Asked, { ball, to }: Plate): Fault[] {
  return [
    ...(is(mass, ...MASSES) ? [] : [fault(['wearer', 'mass'], `must be ${MASSES[0]} to ${MASSES[1]} kg`, mass)]),
    ...(lever === undefined || is(lever, 20, to - ball) ? [] : [fault(['stiffener', 'lever'], `must be 20 mm to where the plate ends, ${(to - ball).toFixed(0)} mm ahead of the ball`, lever)]),
    ...(walking?.some(({ at, force }) => !Number.isFinite(at) || !Number.isFinite(force)) ? [fault(['stiffener', 'walking'], 'must be places and forces', 'not a number')] : []),
  ];
}
