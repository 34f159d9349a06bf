import { CLOTHS, type ClothName } from '../materials/stiffeners.ts';
import { onceEach } from '../geometry/lately.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { pliesIn, weigh, type Bench, type Choice, type CoreChoice, type Open } from './choices.ts';
import { CORE_SHEETS, RESIN_USUAL, withCloth } from './laying.ts';
import type { Pack } from './pack.ts';
import { assessedOr, searched, triedOf, type Tried } from './search.ts';
import { gradeOf, type Grade } from './grades.ts';
import { tightestRadius } from './plate.ts';
import { withResin } from './ply.ts';
import { coreThicknesses } from './sheets.ts';
import { at, countedAs, type Along, type Stiffener } from './stiffener.ts';

/** What stands beside a pack that was sought: other ways to it, what would keep to more, and which assumption decides it. */

/** Another way. @property way in words */
export interface Alternative { readonly way: string; readonly tried: Tried }

/** The best of each kind: each core by itself, no core, edges turned up. Worked out once for each pack. */
export const alternativesTo: (pack: Pack) => readonly Alternative[] = onceEach(({ sought, asked }) => (sought ? kindsOf(sought.open).flatMap(({ way, open }) => {
  const tried = searched(open, sought.bench, asked);
  return tried ? [{ way, tried }] : [];
}) : []));

interface Kind { readonly way: string; readonly open: Open }

function kindsOf(open: Open): Kind[] {
  const flat = open.edges.filter((edges) => edges === 0), turned = open.edges.filter((edges) => edges > 0), names = [...new Set(open.cores.map((core) => core?.name))];
  const around = (name: string | undefined): (CoreChoice | undefined)[] => open.cores.filter((core) => core?.name === name);
  return [
    ...names.map((name): Kind => ({ way: name === undefined ? 'plies alone' : `around ${name}`, open: { ...open, cores: around(name), edges: flat } })),
    ...(turned.length > 0 ? [{ way: 'edges turned up', open: { ...open, edges: turned } }] : []),
  ];
}

/** More plies than are laid by hand, a thicker core, cloth that runs straight, a bottom cambered more: each was put in, all else as it was found, and keeps to all, or at least to what must be. */
export interface Would { readonly what: 'plies' | 'thickness' | 'cloth' | 'camber'; readonly value: number | ClothName; readonly keeps: 'all' | 'must'; readonly tried: Tried }

const PLIES_BEYOND = 8, STRAIGHT: readonly ClothName[] = ['carbon unidirectional 200', 'carbon unidirectional 300'], CAMBERS: readonly Mm[] = [3, 5];

/** What would keep to more than a pack that was sought does; worked out once for each pack. */
export const wouldKeep: (pack: Pack) => readonly Would[] = onceEach((pack) => {
  const { sought, keeps } = pack;
  if (!sought || keeps === 'all') return [];
  return [...byPlies(pack, sought), ...byThickness(pack, sought), ...byCloth(pack, sought), ...byCamber(pack, sought)];
});

type Sought = NonNullable<Pack['sought']>;
/** Whether it keeps to more than the pack itself does. */
const helps = (tried: Tried, { keeps }: Pack): tried is Tried & { readonly keeps: 'all' | 'must' } => tried.keeps === 'all' || (tried.keeps === 'must' && keeps === 'not');

/** The first of some values that keeps to all, else the first that keeps to what must be; within the room there is, unless room is what is asked for. */
function firstThat<T extends number | ClothName>(what: Would['what'], values: readonly T[], pack: Pack, look: (value: T) => Tried): Would[] {
  let fair: Would | undefined;
  for (const value of values) {
    const tried = look(value);
    if (!helps(tried, pack) || (what !== 'thickness' && tried.thickness > pack.order.thicknessAtMost)) continue;
    const would: Would = { what, value, keeps: tried.keeps, tried };
    if (tried.keeps === 'all') return [would];
    fair ??= would;
  }
  return fair ? [fair] : [];
}

/** The same pack laid otherwise, looked at as it would be. */
const laidOtherwise = ({ asked }: Pack, choice: Choice, bench: Bench): Tried => triedOf(weigh(choice, bench), bench, asked);

/** More of them above or below, the rest as it is. */
const byPlies = (pack: Pack, { open, bench, choice }: Sought): Would[] =>
  firstThat('plies', beyond(open), pack, (plies) => [choice.above, choice.below].map((_, i): Choice => {
    const more = plies - pliesIn(choice);
    return i === 0 && choice.core ? { ...choice, above: choice.above + more } : { ...choice, below: choice.below + more };
  }).map((one) => laidOtherwise(pack, one, bench)).reduce((one, other) => (other.spare.all > one.spare.all ? other : one)));
const beyond = ({ plies }: Open): readonly number[] => Array.from({ length: PLIES_BEYOND - plies.most }, (_, i) => plies.most + 1 + i);

/** A core that is thicker, where its thickness is open. */
function byThickness(pack: Pack, { bench, choice }: Sought): Would[] {
  const { core } = choice;
  if (pack.order.coreThickness !== undefined || !core || core.foam) return [];
  return firstThat('thickness', coreThicknesses(core.material, tightestRadius(pack.plate), CORE_SHEETS).filter((sheet) => sheet > at(core.thickness, 0)), pack, (thickness) => laidOtherwise(pack, { ...choice, core: { ...core, thickness } }, bench))
    .map((would) => ({ ...would, value: Math.ceil(would.tried.thickness * 10) / 10 }));
}

const byCloth = (pack: Pack, { bench, choice }: Sought): Would[] => {
  const { ply } = pack.order;
  if (ply.kind !== 'cloth' || CLOTHS[ply.cloth].weave === 'unidirectional') return [];
  return firstThat('cloth', STRAIGHT, pack, (cloth) => laidOtherwise(pack, choice, withCloth(bench, pack.order, cloth)));
};

/** As typed, so half of it counts. */
function byCamber(pack: Pack, { bench, choice }: Sought): Would[] {
  const { width, ball } = pack.plate, now = bench.camber && bench.camber.counted !== 'none' ? at(bench.camber.height, ball) : 0;
  return firstThat('camber', CAMBERS.filter((height) => height > now), pack, (height) => laidOtherwise(pack, choice, { ...bench, camber: { height: (x) => height * (width(x) / width(ball)) ** 2, counted: 'half' } }));
}

/** Something that was taken as usual, and how far the bend at the ball goes if it is otherwise; the one that moves it most first. */
export interface Assumption { readonly of: 'camber' | 'core' | 'resin'; readonly text: string; readonly bends: readonly [worst: number, best: number]; readonly grades: readonly [worst: Grade, best: Grade] }

/** Degrees of bend with each assumption at its worst and at its best; worked out once for each pack. */
export const assumptionsOf: (pack: Pack) => readonly Assumption[] = onceEach((pack) => {
  const { stiffener } = pack, { camber, core } = stiffener, found: Assumption[] = [];
  const cambered = (height: Along): Stiffener => ({ ...stiffener, camber: { height, counted: 'whole' } });
  if (camber?.counted === 'half') found.push(between(pack, 'camber', 'The camber counts half until the bench test was read: none of it at worst, all of it at best', cambered(0), cambered(camber.height)));
  if (core && core.material.shear.least < core.material.shear.most) found.push(between(pack, 'core', `The ${core.name.replace(/^the /, '')} is as soft or as stiff as any sold under that name`, countedAs(stiffener, 'least'), countedAs(stiffener, 'most')));
  if ([...stiffener.below, ...stiffener.above].some(({ ply }) => ply.laidOf)) found.push(between(pack, 'resin', 'Resin laid by hand: more makes plies thicker and stiffer in bending, less thinner', wetter(pack, RESIN_USUAL.least), wetter(pack, RESIN_USUAL.most)));
  return found.sort((a, b) => b.bends[0] - b.bends[1] - (a.bends[0] - a.bends[1]));
});

function wetter({ stiffener }: Pack, resin: number): Stiffener {
  const as = (plies: Stiffener['below']): Stiffener['below'] => plies.map((placed) => ({ ...placed, ply: withResin(placed.ply, resin) }));
  return { ...stiffener, below: as(stiffener.below), above: as(stiffener.above) };
}

function between(pack: Pack, of: Assumption['of'], text: string, one: Stiffener, other: Stiffener): Assumption {
  const bends = [one, other].map((stiffener) => assessedOr(stiffener, pack, pack.asked).bench.bend).sort((a, b) => b - a), [worst = 0, best = 0] = bends;
  return { of, text, bends: [inDegrees(worst), inDegrees(best)], grades: [gradeOf(worst), gradeOf(best)] };
}
