import { fault, type Fault, type Path } from '../fitting/faults.ts';
import type { Mm } from '../geometry/units.ts';
import { LEAST_CORE, LEAST_CORE_SHEAR } from '../materials/stiffeners.ts';
import type { Asked } from './assess.ts';
import { plyDataFaults } from './ply.ts';
import { at, breaksOf, lies, type Along, type Attached, type CoreLayer, type PlacedPly, type Plate, type Stiffener, type Stretch } from './stiffener.ts';

/** No plate is cambered more, no layer thicker, mm. */
const CAMBER_MOST: Mm = 30, THICK_MOST: Mm = 80;
/** Bodies a stiffener is reckoned for, kg. */
const MASSES = [20, 250] as const;

const is = (value: number, least: number, most: number): boolean => Number.isFinite(value) && value >= least && value <= most;
const above0 = (path: Path, value: number, unit: string): Fault[] => (Number.isFinite(value) && value > 0 ? [] : [fault(path, `must be greater than 0 ${unit}`, value)]);

/** All that keeps a stiffener from being reckoned, at once. */
export function faultsOf(stiffener: Stiffener, plate: Plate, asked: Asked): Fault[] {
  const { below, above, core, attached, edges, camber } = stiffener, plies = below.length + above.length, places = plateFaults(plate), along = sampled(plate);
  const own = [
    ...(plies === 0 ? [fault(['stiffener', 'plies'], 'must have at least one ply', 0)] : []),
    ...plyFaults(below, ['stiffener', 'below']), ...plyFaults(above, ['stiffener', 'above']),
    ...(core ? coreFaults(core, below.length > 0 && above.length > 0, along) : []),
    ...attached.flatMap((layer, i) => attachedFaults(layer, ['stiffener', 'attached', i], along)),
    ...(camber ? alongFaults(['stiffener', 'camber'], camber.height, 0, CAMBER_MOST, along) : []),
    ...(edges === undefined || is(edges, 0, CAMBER_MOST) ? [] : [fault(['stiffener', 'edges'], `must be 0 to ${CAMBER_MOST} mm`, edges)]),
  ];
  const bare = plies > 0 && places.length === 0 ? bareFaults(stiffener, plate) : [];
  return [...own, ...places, ...bare, ...askedFaults(asked, plate)];
}

const stretchFaults = (over: Stretch | undefined, path: Path): Fault[] => (over === undefined || over.to > over.from ? [] : [fault([...path, 'over'], 'must end ahead of where it begins', over.to)]);

const plyFaults = (plies: readonly PlacedPly[], path: Path): Fault[] => plies.flatMap(({ ply, angle, over }, i) => [
  ...plyDataFaults(ply, [...path, i]), ...(Number.isFinite(angle) ? [] : [fault([...path, i, 'angle'], 'must be an angle', angle)]), ...stretchFaults(over, [...path, i]),
]);

/** A measure that may change along the shoe, looked at all along. */
function alongFaults(path: Path, value: Along, least: number, most: number, along: readonly Mm[]): Fault[] {
  const bad = along.find((x) => !is(at(value, x), least, most));
  return bad === undefined ? [] : [fault(path, `must be ${least} to ${most} mm${typeof value === 'number' ? '' : ` (at ${bad.toFixed(0)} mm it is not)`}`, at(value, bad))];
}

function coreFaults({ thickness, material, count = 'counted', over }: CoreLayer, between: boolean, along: readonly Mm[]): Fault[] {
  const path = ['stiffener', 'core'], shear = material.shear[count], modulus = material.modulus[count];
  return [
    ...(between ? [] : [fault(path, 'must lie between plies: some above it and some below', 'plies on one side only')]),
    ...alongFaults([...path, 'thickness'], thickness, typeof thickness === 'number' ? LEAST_CORE : 0, THICK_MOST, along),
    ...(Number.isFinite(shear) && shear >= LEAST_CORE_SHEAR ? [] : [fault([...path, 'shear'], `must be at least ${LEAST_CORE_SHEAR} MPa`, shear, 'A softer core ties the plies above and below to nothing.')]),
    ...above0([...path, 'modulus'], modulus, 'MPa'), ...above0([...path, 'shearStrength'], material.shearStrength, 'MPa'), ...stretchFaults(over, path),
  ];
}

const attachedFaults = ({ thickness, modulus, bond, width, over, yieldsAt }: Attached, path: Path, along: readonly Mm[]): Fault[] => [
  ...(typeof thickness === 'number' ? above0([...path, 'thickness'], thickness, 'mm') : []), ...alongFaults([...path, 'thickness'], thickness, 0, THICK_MOST, along), ...above0([...path, 'modulus'], modulus, 'MPa'),
  ...(is(bond, 0, 1) ? [] : [fault([...path, 'bond'], 'must be 0 (slides) to 1 (one piece)', bond)]),
  ...(width === undefined ? [] : above0([...path, 'width'], width, 'mm')), ...(yieldsAt === undefined ? [] : above0([...path, 'yieldsAt'], yieldsAt, '')), ...stretchFaults(over, path),
];

/** Wider than this is no shoe; shorter ahead of the ball than this nothing bends. */
const WIDTH_MOST: Mm = 300, AHEAD_LEAST: Mm = 20;

function plateFaults(plate: Plate): Fault[] {
  const { from, to, ball, heel, width, rise = () => 0 } = plate;
  if (!isPlate(plate)) return [fault(['plate'], 'must be at least 20 and at most 600 mm long', to - from)];
  const along = sampled(plate), narrow = along.find((x) => !(width(x) > 0 && width(x) <= WIDTH_MOST)), broken = along.find((x) => !Number.isFinite(rise(x)));
  return [
    ...(narrow === undefined ? [] : [fault(['plate', 'width'], `must be greater than 0 and at most ${WIDTH_MOST} mm everywhere (at ${narrow.toFixed(0)} mm it is not)`, width(narrow))]),
    ...(broken === undefined ? [] : [fault(['plate', 'rise'], `must be a height everywhere (at ${broken.toFixed(0)} mm it is not)`, rise(broken))]),
    ...(ball > from + 10 && ball <= to - AHEAD_LEAST ? [] : [fault(['plate', 'ball'], `must lie at least 10 mm ahead of the plate's back and ${AHEAD_LEAST} mm behind its tip (${from.toFixed(0)} to ${to.toFixed(0)} mm)`, ball)]),
    ...(heel >= from && heel <= ball - 10 ? [] : [fault(['plate', 'heel'], 'must lie on the plate, at least 10 mm behind the ball', heel)]),
  ];
}

const isPlate = ({ from, to }: Plate): boolean => Number.isFinite(from) && is(to - from, 20, 600);

/** A place every millimetre. */
function sampled(plate: Plate): Mm[] {
  if (!isPlate(plate)) return [];
  const { from, to } = plate, n = Math.ceil(to - from);
  return Array.from({ length: n }, (_, i) => from + ((i + 0.5) * (to - from)) / n);
}

/** Where patches alone leave a gap. */
function bareFaults(stiffener: Stiffener, { from, to }: Plate): Fault[] {
  const places = [from, ...breaksOf(stiffener), to].filter((x) => x >= from && x <= to).sort((a, b) => a - b);
  const bare = places.slice(1).map((x, i) => (x + places[i]!) / 2).find((x) => ![...stiffener.below, ...stiffener.above].some(({ over }) => lies(over, x)));
  return bare === undefined ? [] : [fault(['stiffener', 'plies'], `must cover the whole plate (at ${bare.toFixed(0)} mm there is none)`, 'patches only')];
}

function askedFaults({ mass, lever, walking = [], waist = [] }: Asked, { ball, to }: Plate): Fault[] {
  return [
    ...(is(mass, ...MASSES) ? [] : [fault(['wearer', 'mass'], `must be ${MASSES[0]} to ${MASSES[1]} kg`, mass)]),
    ...(lever === undefined || is(lever, AHEAD_LEAST, to - ball) ? [] : [fault(['stiffener', 'lever'], `must be ${AHEAD_LEAST} mm to where the plate ends, ${(to - ball).toFixed(0)} mm ahead of the ball`, lever)]),
    ...([...walking, ...waist].every(({ at: place, force, moment }) => [place, force, moment].every(Number.isFinite)) ? [] : [fault(['stiffener', 'walking'], 'must be places, forces and moments', 'what is no number')]),
  ];
}
