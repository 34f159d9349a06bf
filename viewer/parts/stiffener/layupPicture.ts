import type { Mm } from '../../../src/geometry/units.ts';
import type { PackShown } from '../../desk/protocol.ts';
import { svgEl } from '../dom.ts';
import { lettered, PICTURE_WIDE as WIDE } from './lettered.ts';

/** In parts of the picture: the stack and the lines of letters beside it. */
const STACK = { from: 2, to: 72, high: 170, least: 64 }, LINE = 20, EDGE = 24, LETTERS = 114, FIBRES = 98;
/** Thickness is drawn so many times as large at most. */
const PER_MM = 34;

/** The stack cut through, from the last down: thicknesses true to each other, each layer with its name, thickness and the way its fibres run. */
export function layupPicture({ layers, thick, plate }: PackShown): SVGSVGElement {
  const whole = layers.reduce((sum, { thick: one }) => sum + one, 0), perMm = Math.min(PER_MM, STACK.high / whole), stack = whole * perMm;
  const lines = layers.map(linesOf), many = lines.reduce((sum, { length }) => sum + length, 0);
  const high = Math.max(stack, LINE * many, STACK.least), top = EDGE + (high - stack) / 2;
  const svg = svgEl('svg', { class: 'layup', viewBox: `0 0 ${WIDE} ${high + 2 * EDGE}`, role: 'img', 'aria-label': `From the last down: ${layers.map(layerSaid).join('; ')}. ${thick} together.` });
  svg.append(lettered('last and insole', STACK.from, EDGE - 8, 'quiet'), lettered('foam', STACK.from, EDGE + high + 17, 'quiet'));
  let down = top, line = EDGE + (high - LINE * many) / 2;
  layers.forEach((layer, i) => {
    const deep = layer.thick * perMm, [from, to] = across(layer.over, plate), beside = line + LINE / 2;
    svg.append(
      svgEl('rect', { class: layer.what === 'ply' ? 'ply' : 'core', x: from, y: down, width: to - from, height: deep }),
      svgEl('polyline', { class: 'lead', points: `${to},${down + deep / 2} ${STACK.to + 8},${beside} ${FIBRES - 12},${beside}` }),
      ...(layer.turned === undefined ? [] : [fibres(layer.turned, beside)]), ...lines[i]!.map((words, k) => lettered(words, LETTERS, beside + 5 + k * LINE)),
    );
    down += deep;
    line += LINE * lines[i]!.length;
  });
  svg.append(svgEl('rect', { class: 'whole', x: STACK.from, y: top, width: STACK.to - STACK.from, height: stack }));
  return svg;
}

/** So many letters find room on a line. */
const ROOM = 38;

/** A strip says on a line of its own where it lies; a long name has a line to itself. */
function linesOf({ name, thickness, angle, over, where }: PackShown['layers'][number]): readonly string[] {
  const rest = [thickness, angle].filter(Boolean).join(', '), whole = `${name}, ${rest}`;
  return [...(whole.length <= ROOM ? [whole] : [name, rest]), ...(over ? [`from ${where}`] : [])];
}

const layerSaid = ({ name, thickness, angle, where }: PackShown['layers'][number]): string => [name, thickness, angle === '' ? '' : `fibres at ${angle}`, where].filter(Boolean).join(', ');

/** A strip is as long as it is along the plate. */
function across(over: readonly [Mm, Mm] | undefined, { from, to }: PackShown['plate']): readonly [number, number] {
  const lay = (x: Mm): number => STACK.from + ((Math.min(Math.max(x, from), to) - from) / (to - from)) * (STACK.to - STACK.from);
  return over ? [lay(over[0]), lay(over[1])] : [STACK.from, STACK.to];
}

/** The way fibres run seen from above, the toe to the right. */
function fibres(turned: number, y: number): SVGGElement {
  const group = svgEl('g', { class: 'fibres', transform: `translate(${FIBRES} ${y}) rotate(${-turned})` });
  group.append(...[-4, 0, 4].map((at) => svgEl('line', { x1: -9, x2: 9, y1: at, y2: at })));
  return group;
}
