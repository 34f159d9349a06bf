import { assess, type Asked, type Assessed } from '../../src/stiffener/assess.ts';
import { layUp, type Bench, type Choice, type Open } from '../../src/stiffener/choices.ts';
import { bentRadius } from './bentRadius.ts';
import { GRADE_UP_TO } from '../../src/stiffener/grades.ts';

/** What a pack comes to, looked at on its own. */
export interface Judged { readonly choice: Choice; readonly plies: number; readonly grams: number; readonly thickness: number; readonly must: number; readonly all: number }

/** The same before it is judged. */
interface Looked extends Omit<Judged, 'must' | 'all'> { readonly assessed: Assessed }

/** Every pack that is open, each assessed whole, in no order: a slow way that passes nothing over and shares no list with the search. @param without what it is not held to */
export const everyPack = (open: Open, bench: Bench, asked: Asked, without?: Held): Judged[] => everyLook(open, bench, asked).map(({ assessed, ...one }) => ({ ...one, ...judge(assessed, asked, without) }));

/** Looked at last, so that the same packs held to less need not be assessed anew. */
let last: { readonly of: readonly [Open, Bench, Asked]; readonly all: readonly Looked[] } | undefined;

function everyLook(open: Open, bench: Bench, asked: Asked): readonly Looked[] {
  if (last && last.of[0] === open && last.of[1] === bench && last.of[2] === asked) return last.all;
  const all: Looked[] = [];
  for (let full = 1; full <= open.plies.most; full++) for (const core of open.cores) for (const edges of open.edges) for (const patch of [false, true])
    for (let below = core ? 1 : full; below <= (core ? full - 1 : full); below++) {
      const choice: Choice = { below, above: full - below, ...(core ? { core } : {}), edges, patch }, plies = full + (patch ? 1 : 0);
      if (plies < open.plies.least || plies > open.plies.most) continue;
      const thickness = thicknessOf(choice, plies, bench);
      if (thickness <= open.thicknessAtMost + 1e-9) all.push({ choice, plies, thickness, grams: weight(choice, bench), assessed: assessedWhole(choice, bench, asked) });
    }
  last = { of: [open, bench, asked], all };
  return all;
}

function thicknessOf(choice: Choice, plies: number, { ply, outer }: Bench): number {
  const { core } = choice, outside = outers(choice, { outer });
  return (plies - outside) * ply.thickness + outside * (outer?.thickness ?? 0) + (core && !core.foam && typeof core.thickness === 'number' ? core.thickness : 0);
}

function assessedWhole(choice: Choice, bench: Bench, asked: Asked): Assessed {
  const read = assess(layUp(choice, bench), bench.plate, asked);
  if (!read.ok) throw new Error(read.faults.map(({ text }) => text).join(' '));
  return read.value;
}

/** What a pack is held to. */
export type Held = 'bend' | 'stumble' | 'walking' | 'strain' | 'wrinkling' | 'core shear';

function judge({ bench: { bend }, walking, stumble, ifDished }: Assessed, asked: Asked, without: Held | undefined): Pick<Judged, 'must' | 'all'> {
  const held = (what: Held, times: number): number => (what === without ? Infinity : times);
  const breaks = ({ walking: w, stumble: s }: Pick<Assessed, 'walking' | 'stumble'>): number => Math.min(held('stumble', s.firstPly.times), held('walking', w.firstPly.times / 1.5), held('core shear', w.coreShear.times));
  const tires = ({ walking: w, stumble: s }: Pick<Assessed, 'walking' | 'stumble'>): number => Math.min(held('strain', 0.003 / Math.abs(w.strain)), held('wrinkling', w.wrinkling.times), held('wrinkling', s.wrinkling.times), held('core shear', s.coreShear.times));
  const must = Math.min(held('bend', (asked.bendAtMost ?? GRADE_UP_TO[asked.wanted]) / bend), breaks({ walking, stumble }));
  return { must, all: Math.min(must, tires({ walking, stumble }), ifDished ? Math.min(breaks(ifDished), tires(ifDished)) : Infinity) };
}

/** Joints in a core of the fewest sheets sold that are strained no more than they bear on the tightest bend. */
function jointsIn({ thickness, material: { bends: { strain, sold } } }: NonNullable<Choice['core']>, { from, to, rise = () => 0 }: Bench['plate']): number {
  const radius = bentRadius(rise, from, to);
  for (let count = 1; count < 20; count++) if (sold.some((sheet) => Math.abs(sheet * count - Number(thickness)) < 1e-6 && (strain === undefined || sheet / 2 / radius <= strain * (1 + 1e-3)))) return count - 1;
  throw new Error('no sheets');
}

/** Plies of the cloth that closes a pack: one on either side. */
const outers = ({ below, core }: Choice, { outer }: { readonly outer?: Bench['outer'] | undefined }): number => (!outer ? 0 : core ? 2 : Math.min(2, below));

/** By strips of half a millimetre; 200 g/m² of glue on each joint of a core. */
function weight(choice: Choice, { ply, outer, plate }: Bench): number {
  const { from, to, ball, width } = plate;
  let grams = 0;
  const { below, above, core, edges, patch } = choice, upper = core ? above : below, joints = core && !core.foam ? jointsIn(core, plate) : 0, outside = outers(choice, { outer }), more = outer ? outer.thickness * outer.density - ply.thickness * ply.density : 0;
  for (let x = from + 0.25; x < to; x += 0.5) {
    const strip = patch && x > ball - 30 && x < ball + 40 ? 1 : 0;
    grams += 0.5 * (more * (outside * width(x) + 2 * edges * Math.min(core ? 1 : 2, outside)) + ply.thickness * ply.density * ((below + above + strip) * width(x) + 2 * edges * (upper + strip)) + (core && !core.foam && typeof core.thickness === 'number' ? core.thickness * core.material.density * width(x) : 0) + joints * 0.2 * width(x)) / 1000;
  }
  return grams;
}
