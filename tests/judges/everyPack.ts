import { assess, type Asked } from '../../src/stiffener/assess.ts';
import { layUp, type Bench, type Choice, type Open } from '../../src/stiffener/choices.ts';
import { bentRadius } from './bentRadius.ts';
import { GRADE_UP_TO } from '../../src/stiffener/grades.ts';

/** What a pack comes to, looked at on its own. */
export interface Judged { readonly choice: Choice; readonly plies: number; readonly grams: number; readonly thickness: number; readonly must: number; readonly all: number }

/** Every pack that is open, each assessed whole, in no order: a slow way that passes nothing over and shares no list with the search. */
export function everyPack(open: Open, bench: Bench, asked: Asked): Judged[] {
  const found: Judged[] = [];
  for (let full = 1; full <= open.plies.most; full++) for (const core of open.cores) for (const edges of open.edges) for (const patch of [false, true])
    for (let below = core ? 1 : full; below <= (core ? full - 1 : full); below++) {
      const choice: Choice = { below, above: full - below, ...(core ? { core } : {}), edges, patch }, plies = full + (patch ? 1 : 0);
      if (plies < open.plies.least || plies > open.plies.most) continue;
      const thickness = plies * bench.ply.thickness + (core && !core.foam && typeof core.thickness === 'number' ? core.thickness : 0);
      if (thickness > open.thicknessAtMost + 1e-9) continue;
      found.push({ choice, plies, thickness, ...judge(choice, bench, asked) });
    }
  return found;
}

function judge(choice: Choice, bench: Bench, asked: Asked): Pick<Judged, 'grams' | 'must' | 'all'> {
  const stiffener = layUp(choice, bench), read = assess(stiffener, bench.plate, asked);
  if (!read.ok) throw new Error(read.faults.map(({ text }) => text).join(' '));
  const { bench: { bend }, walking, stumble } = read.value, must = Math.min((asked.bendAtMost ?? GRADE_UP_TO[asked.wanted]) / bend, stumble.firstPly.times, walking.firstPly.times / 1.5, walking.coreShear.times);
  const all = Math.min(must, 0.003 / Math.abs(walking.strain), walking.wrinkling.times, stumble.wrinkling.times, stumble.coreShear.times);
  return { grams: weight(choice, bench), must, all };
}

/** Joints in a core of the fewest sheets sold that are strained no more than they bear on the tightest bend. */
function jointsIn({ thickness, material: { bends: { strain, sold } } }: NonNullable<Choice['core']>, { from, to, rise = () => 0 }: Bench['plate']): number {
  const radius = bentRadius(rise, from, to);
  for (let count = 1; count < 20; count++) if (sold.some((sheet) => Math.abs(sheet * count - Number(thickness)) < 1e-6 && (strain === undefined || sheet / 2 / radius <= strain * (1 + 1e-3)))) return count - 1;
  throw new Error('no sheets');
}

/** By strips of half a millimetre; 200 g/m² of glue on each joint of a core. */
function weight({ below, above, core, edges, patch }: Choice, { ply, plate }: Bench): number {
  const { from, to, ball, width } = plate;
  let grams = 0;
  const upper = core ? above : below, joints = core && !core.foam ? jointsIn(core, plate) : 0;
  for (let x = from + 0.25; x < to; x += 0.5) {
    const strip = patch && x > ball - 30 && x < ball + 40 ? 1 : 0;
    grams += 0.5 * (ply.thickness * ply.density * ((below + above + strip) * width(x) + 2 * edges * (upper + strip)) + (core && !core.foam && typeof core.thickness === 'number' ? core.thickness * core.material.density * width(x) : 0) + joints * 0.2 * width(x)) / 1000;
  }
  return grams;
}
