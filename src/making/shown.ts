import type { Design } from '../checks/design.ts';
import type { Making, WedgeOrder } from '../fitting/making.ts';
import { MAKINGS, type MakingName, type Side } from '../fitting/words.ts';
import type { Mesh } from '../geometry/mesh.ts';
import type { Mm } from '../geometry/units.ts';
import type { Pair } from '../pair/shoe.ts';
import { planPoint, type RollLine } from '../profile/rollLine.ts';
import { backInShoe, turnedOver } from './block/lie.ts';
import { jigSolid } from './jig/solid.ts';
import type { Made } from './made.ts';

/** A solid of what is made besides the soles, to be looked at: a LEFT shoe's, where the sole stands, ground at 0, mm. */
export interface SolidBeside { readonly of: MakingName; readonly name: string; readonly mesh: Mesh }

/** Names of the solids a thing has, in the order they are listed; each says by itself what it is. */
export interface NamesBeside { readonly of: MakingName; readonly names: readonly string[] }

interface ThingShown {
  readonly of: MakingName;
  /** Those it has as it is ordered, known before it is worked out. */
  readonly names: (making: Making, pair: Pair) => readonly string[];
  readonly solids: (made: Made, side: Side) => readonly Omit<SolidBeside, 'of'>[];
}

const own = <Thing extends { readonly side: Side }>(things: readonly Thing[], side: Side): Thing[] => things.filter((one) => one.side === side);

const BLOCKS = ['block, upper face cut', 'block, both faces cut'] as const;
/** Somebody only looks at it, so it need not be fine. */
const JIG_GAP: Mm = 0.3;
/** Three with a flat and three without, and the shape as planned where that has another flat. */
const wedgeCount = ({ flat }: WedgeOrder, { shoes }: Pair): number =>
  (shoes.some((shoe) => shoe.kind === 'rocker' && ![0, flat].includes(shoe.order.standingFlat)) ? 7 : 6);
const wedgeName = (number: number): string => `trial wedge ${number}`;

/** Things with solids. To show another: its names, and its solids by these names from what was made. */
const THINGS: readonly ThingShown[] = [
  {
    of: 'mould', names: () => ['mould', 'lid'],
    solids: ({ moulds }, side) => own(moulds, side).flatMap(({ mould: { cavity, lid } }) =>
      [{ name: 'mould', mesh: together(cavity.map(({ mesh }) => mesh)) }, { name: 'lid', mesh: together(lid.map(({ mesh }) => mesh)) }]),
  },
  {
    of: 'block', names: ({ block }) => BLOCKS.slice(0, block?.faces === 'both faces' ? 2 : 1),
    solids: ({ blocks }, side) => own(blocks, side).flatMap(({ block: { plan: { lie, height }, setUps } }) =>
      setUps.map(({ face, mesh }, i) => ({ name: BLOCKS[i]!, mesh: backInShoe(lie, face === 'ground face' ? turnedOver(mesh, height) : mesh) }))),
  },
  {
    of: 'print', names: ({ print }) => (print?.split ? ['heel part', 'forepart'] : [print?.part ?? 'foam body']),
    solids: ({ prints }, side) => own(prints, side).flatMap(({ print: { pieces } }) => pieces.map(({ name, mesh }) => ({ name, mesh }))),
  },
  {
    of: 'jig', names: () => ['jig'],
    solids: ({ jigs }, side) => own(jigs, side).map(({ jig, shape, board }) => ({ name: 'jig', mesh: overTheSole(jigSolid(jig, board.thickness, JIG_GAP), jig.frame.zero, shape.line) })),
  },
  {
    of: 'wedges', names: ({ wedges }, pair) => (wedges ? ['trial base', ...Array.from({ length: wedgeCount(wedges, pair) }, (_, i) => wedgeName(i + 1))] : []),
    solids: ({ wedges }, side) => own(wedges, side).flatMap(({ base, wedges: shapes }) =>
      [{ name: 'trial base', mesh: base }, ...shapes.map(({ variant: { number }, mesh }) => ({ name: wedgeName(number), mesh }))]),
  },
];

/** What is ordered and has solids. @param making as the sheet orders it */
export const namesBeside = (making: Making, pair: Pair): readonly NamesBeside[] =>
  THINGS.filter(({ of }) => making[of] !== undefined).map(({ of, names }) => ({ of, names: names(making, pair) }));

/** The solids of everything that was made for a shoe. */
export const solidsOf = (made: Made, side: Side): readonly SolidBeside[] =>
  THINGS.flatMap(({ of, solids }) => solids(made, side).map((one) => ({ of, ...one })));

/** The design as if nothing but some things were ordered: what nobody looks at need not be worked out. */
export function onlyOrdering(design: Design, things: readonly MakingName[]): Design {
  const others: ReadonlySet<string> = new Set(MAKINGS.filter((name) => !things.includes(name)));
  const making = Object.fromEntries(Object.entries(design.fitting.making).filter(([name]) => !others.has(name))) as unknown as Making;
  return { ...design, fitting: { ...design.fitting, making } };
}

/** A jig stands on the bench with the shoe upside down in it: turned over, as it lies round the sole. */
function overTheSole({ positions, triangles }: Mesh, zero: Mm, line: RollLine): Mesh {
  const turned = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) turned.set([...planPoint(line, positions[i]!, -positions[i + 1]!), zero - positions[i + 2]!], i);
  return { positions: turned, triangles };
}

/** Several bodies as one. */
function together(meshes: readonly Mesh[]): Mesh {
  const before = meshes.map((_, i) => meshes.slice(0, i).reduce((sum, { positions }) => sum + positions.length / 3, 0));
  return {
    positions: Float64Array.from(meshes.flatMap(({ positions }) => [...positions])),
    triangles: Uint32Array.from(meshes.flatMap(({ triangles }, i) => [...triangles].map((corner) => corner + before[i]!))),
  };
}
