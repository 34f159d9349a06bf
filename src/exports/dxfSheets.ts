import { moved, type Path } from '../geometry/path.ts';
import { add, scale, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { flatPlace, TRIM, unrolledOutsole } from '../making/unrolled.ts';
import type { Shoe } from '../pair/shoe.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { dxfText, onLayer, type DxfEntity, type DxfLayerStyle } from './dxf.ts';
import { polyline } from './drawing.ts';
import { onSide, planLines } from './planLines.ts';
import { isDrawn, sideProfile } from './sideProfile.ts';

/** The lines of one sole as drawings for a laser, a plotter or a drawing program. Full size, mm. */

type Style = Omit<DxfLayerStyle, 'name'>;
const cut = (colour: number): Style => ({ colour, lineType: 'CONTINUOUS' });
const axis = (colour: number): Style => ({ colour, lineType: 'CENTER' });
const behind = (colour: number): Style => ({ colour, lineType: 'HIDDEN' });

/**
 * Every layer of every drawing, in the order a drawing lists those it uses. A laser sorts by colour, not by name: in no
 * drawing has a line that only marks, or tells, the colour of one that is cut or bored there.
 */
const LAYERS: Readonly<Record<string, Style>> = {
  GROUND_FACE: cut(5), UPPER_FACE: cut(3), END_WALLS: cut(7), FOAM_UNDERSIDE: behind(8), STIFFENER_UNDERSIDE: behind(8),
  EDGE_LINE: cut(7), FEATHER_LINE: cut(3), GROUND_LINE: behind(30), OUTSOLE_FLAT: cut(7),
  GROUND: cut(8), PIVOT: axis(1), HIP_LINE: axis(1), APEX_LINE: axis(1), CREST_LINE: axis(1), BALL_LINE: axis(4), CENTRE_LINE: axis(4),
  BOARD: behind(8), MARK: cut(4), CUT_IN: cut(5), CUT_OUT: cut(1),
  SHEET_EDGE: behind(8), NEXT_EDGE: behind(4), CUT: cut(1),
  BLOCK: cut(8), POCKET: cut(5), TABS: cut(6), TURN_AXIS: axis(4),
  CAVITY_EDGE: cut(3), MOULD_BORDER: cut(7), FLASH_GROOVE: cut(8), DOWELS: cut(5), BOLTS: cut(6), POUR_HOLE: cut(1), VENTS: cut(1), CAVITY_JOINT: axis(4), LID_JOINT: axis(4),
  FIBRE: cut(5), FOLD: behind(6), SKIVE: behind(3),
  LETTERS: cut(2),
};

/** @param cutLayers layers of this drawing alone along which something is cut */
export function sheet(entities: readonly DxfEntity[], cutLayers: readonly string[] = []): string {
  const layers: Readonly<Record<string, Style>> = { ...Object.fromEntries(cutLayers.map((name) => [name, cut(1)])), ...LAYERS };
  return dxfText({ layers: Object.entries(layers).filter(([name]) => entities.some(({ layer }) => layer === name)).map(([name, style]) => ({ name, ...style })), entities });
}

const LETTER: Mm = 5;
/** Lines of lettering, one below the other. */
export const lettered = (lines: readonly string[], [x, y]: Point): DxfEntity[] =>
  lines.map((text, i) => ({ kind: 'text', layer: 'LETTERS', at: [x, y - i * 1.6 * LETTER], height: LETTER, text }));
export const straight = (layer: string, from: Point, to: Point): DxfEntity[] => onLayer(layer, [{ kind: 'line', from, to }]);
export const path = (layer: string, pieces: Path): DxfEntity[] => onLayer(layer, pieces.filter(isDrawn));

/** How far centre lines run past what they mark, and how far up the broken hip line is drawn above the pivot. */
const PAST: Mm = 10;

/**
 * The side profile. The ground face is drawn as the very arcs and straight pieces that were solved; with the upper face
 * and the walls at both ends it closes. A right shoe is drawn heel left as well: a profile has no side.
 * @param name job and side, for the lettering
 */
export function sideSheet(shoe: Shoe, shape: SoleShape, name: string): string {
  const profile = sideProfile(shape), { upper, ground, foam, stiffener, along, from, to } = profile;
  const turned = Math.abs(along(to) - along(from) - (to - from)) > 0.005;
  return sheet([
    ...path('GROUND_FACE', ground), ...path('UPPER_FACE', upper), ...path('END_WALLS', [profile.back, profile.tip]), ...path('FOAM_UNDERSIDE', foam),
    ...(stiffener ? path('STIFFENER_UNDERSIDE', stiffener) : []),
    ...straight('GROUND', [along(from) - PAST, 0], [along(to) + PAST, 0]),
    ...(shoe.kind === 'rocker' ? pivotLines(shoe) : []),
    ...lettered([`${name} side view mm`, ...(turned ? ['seen square to the crest line'] : [])], [along(from), -3 * PAST]),
  ]);
}

function pivotLines({ rocker: { pivot, hip, apex } }: Extract<Shoe, { kind: 'rocker' }>): DxfEntity[] {
  const cross = (arm: Point): DxfEntity[] => straight('PIVOT', add(pivot, scale(arm, -PAST)), add(pivot, scale(arm, PAST)));
  return [
    ...cross([1, 0]), ...cross([0, 1]), { kind: 'point', layer: 'PIVOT', at: pivot },
    ...straight('HIP_LINE', [hip[0], -PAST], [hip[0], pivot[1] + 2 * PAST]),
    ...straight('APEX_LINE', [apex.point[0], -PAST], [apex.point[0], apex.point[1] + 4 * PAST]),
  ];
}

/** From one outline to the next, so that no line lies on another and each can be cut by itself. */
const APART: Mm = 160;

/**
 * The outlines seen from above, one beside the other, each one closed chain of arcs with its own centre line; a right
 * shoe is the mirror image of its left twin.
 */
export function outlineSheet(shoe: Shoe, shape: SoleShape, name: string): string {
  const { feather, edge, ground, crest, ball, centre } = planLines(shoe, shape);
  const outline = (layer: string, line: Path, words: string, row: number): DxfEntity[] => {
    const shift: Point = [0, -row * APART];
    return [
      ...path(layer, moved(line, shift)), ...path('CENTRE_LINE', moved([centre], shift)),
      ...lettered([`${name} ${words}, seen from above mm`], add([shape.last.seatLength, -LETTER / 2], shift)),
    ];
  };
  return sheet([
    ...outline('FEATHER_LINE', feather, 'feather line', 0), ...path('BALL_LINE', [ball]), ...(crest ? path('CREST_LINE', [crest]) : []),
    ...outline('EDGE_LINE', edge, 'edge', 1), ...outline('GROUND_LINE', ground, 'ground line', 2),
  ]);
}

/** The outsole laid flat with its trim, to be cut from the sheet, and what it is laid on by, to be scribed; upper side up. */
export function outsoleSheet(shoe: Shoe, shape: SoleShape, name: string): string {
  const { last } = shape, onFlat = flatPlace(shape), out = shoe.side === 'left' ? 1 : -1, half = Math.min(last.heelWidth, last.ballWidth) / 4;
  // The long axis bends where the walking line is turned from it.
  const axis = Array.from({ length: AXIS_PIECES + 1 }, (_, i) => onFlat([(last.length * i) / AXIS_PIECES, 0])), [tip] = axis.at(-1)!;
  const word = (text: string, [x, y]: Point): DxfEntity[] => lettered([text], [x, out * y - LETTER / 2]);
  return sheet([
    ...path('OUTSOLE_FLAT', onSide(shoe.side, unrolledOutsole(shape).filter(isDrawn))),
    ...path('CENTRE_LINE', onSide(shoe.side, polyline(axis))),
    ...word('heel', [axis[0]![0] + 2 * LETTER, LETTER]), ...word('toe', [tip - 5 * LETTER, axis.at(-1)![1] + 2 * LETTER]),
    ...word('outer side', onFlat([0.76 * last.length, half])), ...word('inner side', onFlat([0.76 * last.length, -half])),
    ...lettered([`${name} outsole flat mm`, `upper side up, ${TRIM} mm included all round`], [last.seatLength / 2, -LETTER * 2.5]),
  ]);
}
const AXIS_PIECES = 24;
