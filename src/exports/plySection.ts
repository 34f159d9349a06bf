import { mm } from '../checks/say.ts';
import type { Point } from '../geometry/point.ts';
import { sin } from '../geometry/trig.ts';
import type { Mm } from '../geometry/units.ts';
import type { Layer, PlyLayer } from '../making/plies/layers.ts';
import { directionWords } from '../stiffener/fibres.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { drawn, filled, polyline, stroke, words, type Mark } from './drawing.ts';
import type { Block } from './flow.ts';

/** Room for the drawing, the thinnest a layer is drawn, how many times wider thicker ones are, and how far edges are drawn to step in. */
const WIDE: Mm = 84, THIN: Mm = 5, TIMES = 4, THICKEST: Mm = 16, STEP: Mm = 1.6, LABELS: Mm = 92, HEAD: Mm = 8, FOOT: Mm = 9;

/** The stack cut through along the shoe, foot side up: every layer with its number, what it is and how thick. Thickness is not to scale, nor is length. */
export function sectionBlock({ side, layers, pack: { plate, underFoam } }: ShoePlies, said: (text: string) => string): Block {
  const heights = layers.map((layer) => Math.min(THICKEST, THIN + TIMES * Math.max(0, thicknessOf(layer) - 0.5))), under = underFoam ? layers.findIndex((layer) => layer.kind === 'ply' && layer.pack === 'below') : -1, total = heights.reduce((sum, one) => sum + one, 0) + (under < 0 ? 0 : FOAM);
  const share = (x: Mm): Mm => ((x - plate.from) / (plate.to - plate.from)) * WIDE;
  return {
    height: HEAD + total + FOOT,
    marks: (left, top) => {
      let y = top + HEAD;
      const bars = layers.flatMap((layer, i): Mark[] => {
        const foam = i === under ? foamBetween([left, y]) : [];
        if (i === under) y += FOAM;
        const height = heights[i]!, step = layer.level * STEP, from = left + (layer.over ? share(layer.over.from) : step), to = left + (layer.over ? share(layer.over.to) : WIDE - step), box: readonly [Point, Point] = [[from, y], [to, y + height]];
        y += height;
        return [...foam, ...bar(layer, box), ...label(layer, side, said, [left, to, y - height / 2])];
      });
      const ballX = left + share(plate.ball);
      return [
        words('foot', [left, top + 3.4]), words('toe', [left + WIDE, top + 3.4], { anchor: 'end' }), words('tread', [ballX, top + 3.4], { anchor: 'middle' }),
        ...bars, stroke([ballX, top + 4.4], [ballX, y + 2], 'centre', 'ink'), words(said(`floor; plies ${mm(pliesThick(layers), 2)} in all, where all lie. Not to scale; edges step in as drawn, but far less.`), [left, y + 5]),
      ];
    },
  };
}

/** The foam body between two packs, not cut here. */
const FOAM: Mm = 14;
function foamBetween([left, top]: Point): Mark[] {
  const path = polyline([[left - 2, top], [left + WIDE + 2, top], [left + WIDE + 2, top + FOAM], [left - 2, top + FOAM]], true);
  return [filled(path, 'foam'), drawn(path, 'thin'), words('the foam body', [left + WIDE / 2 - 14, top + FOAM / 2 + 1.1], { anchor: 'middle' })];
}

export const thicknessOf = (layer: Layer): Mm => (layer.kind === 'ply' ? layer.ply.thickness : layer.thickest);
const pliesThick = (layers: readonly Layer[]): Mm => layers.reduce((sum, layer) => sum + (layer.kind === 'ply' ? layer.ply.thickness : 0), 0);

/** A layer: a core grey, its ends skived; a ply with its fibres, level where they run along the shoe, slanting at 45°. */
function bar(layer: Layer, [[left, top], [right, bottom]]: readonly [Point, Point]): Mark[] {
  if (layer.kind === 'core') {
    const skive = Math.min(8, (right - left) / 4), middle = ((layer.over?.from ?? 0) + (layer.over?.to ?? 0)) / 2, rear = layer.skives.some((x) => x <= middle) ? skive : 0, fore = layer.skives.some((x) => x >= middle) ? skive : 0, path = polyline([[left, bottom], [left + rear, top], [right - fore, top], [right, bottom]], true);
    return [filled(path, 'foam'), drawn(path, 'visible'), words(String(layer.number), [left + rear + 3, (top + bottom) / 2 + 1.1], { bold: true })];
  }
  const middle = (top + bottom) / 2, path = polyline([[left, top], [right, top], [right, bottom], [left, bottom]], true);
  return [drawn(path, 'thin'), ...hatch(layer, [left + 7, top], [right - 1.5, bottom]), words(String(layer.number), [left + 2, middle + 1.1], { bold: true })];
}

function hatch({ angle }: PlyLayer, [left, top]: Point, [right, bottom]: Point): Mark[] {
  const middle = (top + bottom) / 2, slanting = Math.abs(sin(2 * angle)) > 0.5, count = Math.max(0, Math.floor((right - left) / 4));
  if (!slanting) return right > left ? [stroke([left, middle], [right, middle], 'thin', 'ink')] : [];
  return Array.from({ length: count }, (_, i): Mark => stroke([left + i * 4, bottom - 0.8], [left + i * 4 + (bottom - top - 1.6), top + 0.8], 'thin', 'ink'));
}

function label(layer: Layer, side: ShoePlies['side'], said: (text: string) => string, [left, end, y]: readonly [left: Mm, end: Mm, y: Mm]): Mark[] {
  const what = layer.kind === 'ply' ? `${layer.ply.name}, ${directionWords(layer, side)}, ${mm(layer.ply.thickness, 2)}` : `${layer.core.name}, ${mm(layer.thickest)}`;
  const where = layer.over ? `, ${Math.round(layer.over.from)} to ${mm(layer.over.to, 0)} from the heel` : layer.kind === 'ply' && layer.fold ? ', edges turned up' : '';
  return [stroke([end + 1, y], [left + LABELS - 1.5, y], 'thin', 'pencil'), words(said(`${layer.number}  ${what}${where}`), [left + LABELS, y + 1.1], { size: 2.8 })];
}
