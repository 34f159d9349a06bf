import { mm } from '../checks/say.ts';
import { between, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { FlatRuling } from '../making/templates/layFlat.ts';
import type { LayerJoint } from '../making/templates/layerJoint.ts';
import { wallStrips, type MarkWanted, type WallStrip } from '../making/templates/wallStrip.ts';
import { polyline, roomFor, words, type Ink, type LineKind, type Words } from './drawing.ts';
import { together, type Part } from './picture.ts';
import { faint, line, lettering, namedLine, type Template } from './template.ts';
import type { Sole } from './templatePlans.ts';

/** The wall laid flat, inner side above outer side, to be wrapped round the sole with its letters outwards. */
export function wallTemplate(sole: Sole, joints: readonly LayerJoint[] = []): Template {
  const strips = stripsOf(sole, joints), drops = dropsOf(strips);
  const stretch = Math.max(...strips.map(({ stretch: one }) => Math.abs(one)));
  return {
    side: sole.shoe.side, stem: 'side-walls', part: 'side walls, unrolled',
    notes: [
      'Cut out, wrap round with the letters outwards, heel and toe ends meeting; grind down to the lower line.',
      `Upper edge on the wall: ${strips.map(({ side, topLength }) => `${side} ${mm(topLength)}`).join(', ')}.`,
      stretch < 0.0005 ? 'Upright walls: nothing is stretched.' : `The walls lean and bend two ways: half way up the paper is off by ${mm(stretch, 2)} over a whole side.`,
      `Figures: mm from the heel on the long axis. Broken lines: ${sole.parts.shape.stiffener > 0 ? 'underside of the stiffener and of the filled rim round it, ' : ''}joint of foam and outsole${joints.length ? '; dash and two dots: joints of the layers' : ''}.`,
    ],
    picture: together(strips.map((strip, i) => picture(sole, strip, drops[i]!))),
    fixed: strips.flatMap((strip, i) => numbers(placed(sole, strip, drops[i]!), strip)),
  };
}

export const stripsOf = ({ shoe, parts: { shape } }: Sole, joints: readonly LayerJoint[] = []): readonly WallStrip[] => wallStrips(shape, marksFor(shoe), joints);

/** What the strip must be laid on by: joints of the foot at the edge, places of the ground face at the foot of the wall. */
function marksFor(shoe: Sole['shoe']): MarkWanted[] {
  const { last } = shoe;
  const foot: MarkWanted[] = [
    { name: 'seat end', at: 'edge', value: last.seatLength }, { name: 'ball', at: 'edge', value: last.innerBall, side: 'inner' }, { name: 'ball', at: 'edge', value: last.outerBall, side: 'outer' },
  ];
  if (shoe.kind === 'match') return foot;
  const { stance, apex, hip, strikePoint } = shoe.rocker;
  return [
    ...foot, { name: 'ankle', at: 'edge', value: stance.pivot[0] }, { name: 'standing point', at: 'ground', value: hip[0] },
    { name: 'apex', at: 'ground', value: apex.point[0] }, { name: 'strike', at: 'ground', value: strikePoint[0] },
  ];
}

/** Room over a strip for the names of marks that are longer than it is high, and under it. */
const OVER: Mm = 30, UNDER: Mm = 6;

/** How far down the paper each strip is set. */
function dropsOf(strips: readonly WallStrip[]): Mm[] {
  let down = 0;
  return strips.map(({ lines }) => {
    const ys = lines.flatMap(({ points }) => points.map(([, y]) => y)), drop = down - Math.max(...ys) - OVER;
    down = drop + Math.min(...ys) - UNDER;
    return drop;
  });
}

/** On the paper, y up: a right shoe's strip is the left one's seen from behind. */
const placed = ({ shoe: { side } }: Sole, { lines }: WallStrip, drop: Mm): ((point: Point) => Point) => {
  const xs = lines.flatMap(({ points }) => points.map(([x]) => x)), [least, most] = [Math.min(...xs), Math.max(...xs)];
  return ([x, y]) => [side === 'left' ? x - least : most - x, y + drop];
};

const LEVELS: Readonly<Record<string, readonly [LineKind, Ink]>> = { 'upper edge': ['visible', 'ink'], ground: ['visible', 'ink'], stiffener: ['hidden', 'ink'], foam: ['hidden', 'ink'] };

function picture(sole: Sole, strip: WallStrip, drop: Mm): Part {
  const on = placed(sole, strip, drop), across = ({ head, foot }: FlatRuling): readonly [Point, Point] => [on(foot), on(head)], [x, y] = between(...across(strip.middle), 0.5);
  return together([
    ...strip.lines.map(({ of, points }) => line(polyline(points.map(on)), ...(LEVELS[of] ?? ['phantom', 'ink'] as const))),
    ...strip.ends.map((end) => line(polyline(across(end)), 'visible')), ...strip.stations.map((station) => faint(polyline(across(station)))),
    lettering(`${sole.shoe.side.toUpperCase()} wall, ${strip.side} side`, [x, y], { size: 4.2, bold: true }), lettering(sole.name, [x, y - 6]),
    ...strip.marks.map((mark) => marked(mark.name, ...across(mark))),
  ]);
}

/** The name of a mark stands along its line where the wall is high enough, else on the line run out over the strip. */
function marked(name: string, low: Point, high: Point): Part {
  const size = Math.hypot(high[0] - low[0], high[1] - low[1]), on = (share: Mm): Point => between(high, low, share / size);
  if (size > roomFor(name) + INSIDE) return namedLine(name, polyline([low, high]), 'centre', 'computed');
  return together([line(polyline([low, high]), 'centre', 'computed'), namedLine(name, polyline([on(-1), on(-0.85 * OVER)]), 'centre', 'computed')]);
}
/** What the lines along the strip and the figures take of the height. */
const INSIDE: Mm = 12;

/** Figures stand within the strip, under its upper edge, or half way where it is low. */
const SMALL = 2.5, BELOW_EDGE: Mm = 6.2;
const numbers = (on: (point: Point) => Point, { stations }: WallStrip): Words[] => stations.map(({ x, head, foot }) => {
  const size = Math.hypot(head[0] - foot[0], head[1] - foot[1]), [px, py] = on(between(head, foot, Math.min(0.5, BELOW_EDGE / size)));
  return words(String(x), [px, -py + SMALL * 0.36], { size: SMALL, anchor: 'middle', bold: true });
});
