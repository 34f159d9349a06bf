import { typedLength, type LengthUnit } from '../../src/fitting/lengthUnit.ts';
import { inDegrees, type Mm } from '../../src/geometry/units.ts';
import { CORES } from '../../src/materials/stiffeners.ts';
import { alternativesTo } from '../../src/stiffener/alternatives.ts';
import type { Pack } from '../../src/stiffener/pack.ts';
import type { Tried } from '../../src/stiffener/search.ts';
import { wouldKeep, type Would } from '../../src/stiffener/wouldKeep.ts';
import { at, type PlacedPly } from '../../src/stiffener/stiffener.ts';
import type { Json } from '../keep/sheet.ts';

/** What a way writes into order.stiffener of its shoe, by field, ready for the sheet's unit; undefined takes a field off. */
export type WaySets = readonly (readonly [field: string, value: Json | undefined])[];

/** For each row of `waysTo` what the sheet would say to have that way; nothing for the pack itself. @param own the sheet's unit */
export function waySets(pack: Pack, own: LengthUnit): readonly (WaySets | undefined)[] {
  const length = (value: Mm): number => typedLength(value, 'mm', own);
  return [undefined, ...alternativesTo(pack).map(({ tried, byCore }) => (byCore ? soughtAgain(pack, tried, length) : undefined) ?? laidSo(pack, tried, length)), ...wouldKeep(pack).map((would) => changed(would, length))];
}

type Length = (value: Mm) => number;
const isOf = <Name extends string>(list: Readonly<Record<Name, unknown>>, name: string): boolean => Object.hasOwn(list, name);

/** A core of the list, or none, between flat packs: told that, the search finds these very plies, and goes on looking when the shoe changes. */
function soughtAgain({ order }: Pack, { choice: { core, edges } }: Tried, length: Length): WaySets | undefined {
  if (edges > 0 || order.edges > 0 || order.underFoam || core?.foam || (core && !isOf(CORES, core.name))) return undefined;
  return [['core', core?.name ?? 'none'], ['coreThickness', core ? length(at(core.thickness, 0)) : undefined]];
}

/** Ply for ply, from the bottom up. */
function laidSo({ order, plate, sought }: Pack, { stiffener: { below, above, core, edges = 0 }, choice, thickness }: Tried, length: Length): WaySets {
  const foam = choice.core?.foam === true, listed = core && !foam && isOf(CORES, core.name), usual = sought?.bench.ply.name;
  const ply = (pack: 'below' | 'above') => ({ angle, over, ply: { name } }: PlacedPly): Json => ({
    pack, ...(name === usual ? {} : { cloth: name }), ...(angle === 0 ? {} : { angle: inDegrees(angle) }), ...(over ? { from: length(over.from), to: length(over.to) } : {}),
  });
  return [
    ['plies', [...below.map(ply('below')), ...above.map(ply('above'))]], ['edges', edges > 0 ? length(edges) : undefined], ['underFoam', foam ? true : undefined],
    // A core of the maker's own stays as it is told.
    ...(typeof order.core === 'object' && !foam ? [] : [['core', listed ? core.name : core && !foam ? undefined : order.core === undefined ? undefined : 'none'] as const]),
    ['coreThickness', core && !foam ? length(at(core.thickness, plate.ball)) : undefined], ...(thickness > order.thicknessAtMost ? [['thicknessAtMost', length(Math.ceil(thickness * 10) / 10)] as const] : []),
  ];
}

/** What is changed: told that, the search finds that very pack. One of several ways to say a cloth or a core takes the others off. */
function changed({ change: { core, coreThickness, cloth, edges, underFoam, thicknessAtMost, camber, plies } }: Would, length: Length): WaySets {
  const sizes: WaySets = Object.entries({ coreThickness, edges, thicknessAtMost, camber }).flatMap(([field, value]) => (value === undefined ? [] : [[field, length(value)] as const]));
  return [
    ...(core === undefined ? [] : [['core', core] as const, ['ownCore', undefined] as const]), ...sizes, ...(cloth === undefined ? [] : [['cloth', cloth] as const, ['ownCloth', undefined] as const, ['measuredPly', undefined] as const]),
    ...(underFoam === undefined ? [] : [['underFoam', underFoam ? true : undefined] as const]), ...(plies ? [['plies', plies.map((one) => ({ ...one }))] as const] : []),
  ];
}
