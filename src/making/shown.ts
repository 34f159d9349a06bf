import type { Design } from '../checks/design.ts';
import type { Making } from '../fitting/making.ts';
import { MAKINGS, type MakingName, type Side } from '../fitting/words.ts';
import type { Mesh } from '../geometry/mesh.ts';
import type { Made } from './made.ts';

/** A solid of what is made besides the soles, to be looked at: a LEFT shoe's, where the sole stands, ground at 0, mm. */
export interface SolidBeside { readonly of: MakingName; readonly name: string; readonly mesh: Mesh }

/** Names of the solids a thing has, in the order they are listed; each says by itself what it is. */
export interface NamesBeside { readonly of: MakingName; readonly names: readonly string[] }

interface ThingShown {
  readonly of: MakingName;
  /** Those it has as it is ordered, known before it is worked out. */
  readonly names: (making: Making) => readonly string[];
  readonly solids: (made: Made, side: Side) => readonly Omit<SolidBeside, 'of'>[];
}

/** Things with solids. To show another: its names, and its solids by these names from what was made. */
const THINGS: readonly ThingShown[] = [
  {
    of: 'mould', names: () => ['mould', 'lid'],
    solids: ({ moulds }, side) => moulds.filter((one) => one.side === side).flatMap(({ mould: { cavity, lid } }) =>
      [{ name: 'mould', mesh: together(cavity.map(({ mesh }) => mesh)) }, { name: 'lid', mesh: together(lid.map(({ mesh }) => mesh)) }]),
  },
];

/** What is ordered and has solids. */
export const namesBeside = (making: Making): readonly NamesBeside[] =>
  THINGS.filter(({ of }) => making[of] !== undefined).map(({ of, names }) => ({ of, names: names(making) }));

/** The solids of everything that was made for a shoe. */
export const solidsOf = (made: Made, side: Side): readonly SolidBeside[] =>
  THINGS.flatMap(({ of, solids }) => solids(made, side).map((one) => ({ of, ...one })));

/** The design as if nothing but some things were ordered: what nobody looks at need not be worked out. */
export function onlyOrdering(design: Design, things: readonly MakingName[]): Design {
  const others: ReadonlySet<string> = new Set(MAKINGS.filter((name) => !things.includes(name)));
  const making = Object.fromEntries(Object.entries(design.fitting.making).filter(([name]) => !others.has(name))) as unknown as Making;
  return { ...design, fitting: { ...design.fitting, making } };
}

/** Several bodies as one. */
function together(meshes: readonly Mesh[]): Mesh {
  const before = meshes.map((_, i) => meshes.slice(0, i).reduce((sum, { positions }) => sum + positions.length / 3, 0));
  return {
    positions: Float64Array.from(meshes.flatMap(({ positions }) => [...positions])),
    triangles: Uint32Array.from(meshes.flatMap(({ triangles }, i) => [...triangles].map((corner) => corner + before[i]!))),
  };
}
