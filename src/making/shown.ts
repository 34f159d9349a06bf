import type { Design } from '../checks/design.ts';
import type { Making } from '../fitting/making.ts';
import { MAKINGS, type MakingName, type Side } from '../fitting/words.ts';
import { together, type Mesh } from '../geometry/mesh.ts';
import type { Mm } from '../geometry/units.ts';
import { planPoint, type RollLine } from '../profile/rollLine.ts';
import { backInShoe, turnedOver } from './block/lie.ts';
import { jigSolid } from './jig/solid.ts';
import type { Made } from './made.ts';
import { BLOCKS, TRIAL_BASE, wedgeName } from './shownNames.ts';

/** A solid of what is made besides the soles, to be looked at: a LEFT shoe's, where the sole stands, ground at 0, mm. */
export interface SolidBeside { readonly of: MakingName; readonly name: string; readonly mesh: Mesh }

const own = <Thing extends { readonly side: Side }>(things: readonly Thing[], side: Side): Thing[] => things.filter((one) => one.side === side);

/** Somebody only looks at it, so it need not be fine. */
const JIG_GAP: Mm = 0.3;

/** Solids of what was made for a shoe. To show another thing: its solids here, by the names that shownNames.ts tells of it. */
const SOLIDS: Readonly<Partial<Record<MakingName, (made: Made, side: Side) => readonly Omit<SolidBeside, 'of'>[]>>> = {
  mould: ({ moulds }, side) => own(moulds, side).flatMap(({ mould: { cavity, lid } }) =>
    [{ name: 'mould', mesh: together(cavity.map(({ mesh }) => mesh)) }, { name: 'lid', mesh: together(lid.map(({ mesh }) => mesh)) }]),
  block: ({ blocks }, side) => own(blocks, side).flatMap(({ block: { plan: { lie, height }, setUps } }) =>
    setUps.map(({ face, mesh }, i) => ({ name: BLOCKS[i]!, mesh: backInShoe(lie, face === 'ground face' ? turnedOver(mesh, height) : mesh) }))),
  print: ({ prints }, side) => own(prints, side).flatMap(({ print: { joint, pieces } }) => (joint ? pieces.map(({ name, mesh }) => ({ name, mesh })) : [])),
  jig: ({ jigs }, side) => own(jigs, side).map(({ jig, shape, board }) => ({ name: 'jig', mesh: overTheSole(jigSolid(jig, board.thickness, JIG_GAP), jig.frame.zero, shape.line) })),
  wedges: ({ wedges }, side) => own(wedges, side).flatMap(({ base, wedges: shapes }) =>
    [{ name: TRIAL_BASE, mesh: base }, ...shapes.map(({ variant: { number }, mesh }) => ({ name: wedgeName(number), mesh }))]),
};

/** The solids of everything that was made for a shoe. */
export const solidsBeside = (made: Made, side: Side): readonly SolidBeside[] =>
  MAKINGS.flatMap((of) => (SOLIDS[of]?.(made, side) ?? []).map((one) => ({ of, ...one })));

/** The design as if nothing but some things were ordered: what nobody looks at need not be worked out. */
export function onlyOrdering(design: Design, things: readonly MakingName[]): Design {
  const making = MAKINGS.filter((name) => !things.includes(name)).reduce(without, design.fitting.making);
  return { ...design, fitting: { ...design.fitting, making } };
}

function without(making: Making, name: MakingName): Making {
  const { [name]: _, ...rest } = making;
  return rest;
}

/** A jig stands on the bench with the shoe upside down in it: turned over, as it lies round the sole. */
function overTheSole({ positions, triangles }: Mesh, zero: Mm, line: RollLine): Mesh {
  const turned = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) turned.set([...planPoint(line, positions[i]!, -positions[i + 1]!), zero - positions[i + 2]!], i);
  return { positions: turned, triangles };
}
