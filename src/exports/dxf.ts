import { lengthOf, pointOn, type Path, type PathArc, type PathPiece } from '../geometry/path.ts';
import { add, along, scale, type Point } from '../geometry/point.ts';
import { SAME_POINT } from '../geometry/tolerances.ts';
import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import {
  at, blocks, decimals, firstEntity, header, hex, MODEL_SPACE, objects, section, tables, written,
  type Box, type DxfLayer, type DxfLayerStyle, type Group,
} from './dxfFrame.ts';

export type { DxfLayer, DxfLayerStyle };

/** A piece of a path, a line of letters from its lower left corner, turned counter-clockwise, or a marked point. Mm. */
export type DxfEntity =
  | { readonly kind: 'piece'; readonly layer: DxfLayer; readonly piece: PathPiece }
  | { readonly kind: 'text'; readonly layer: DxfLayer; readonly at: Point; readonly height: Mm; readonly text: string; readonly turn?: Rad }
  | { readonly kind: 'point'; readonly layer: DxfLayer; readonly at: Point };

export interface DxfDrawing { readonly layers: readonly DxfLayerStyle[]; readonly entities: readonly DxfEntity[] }

export const onLayer = (layer: DxfLayer, path: Path): DxfEntity[] => path.map((piece) => ({ kind: 'piece', layer, piece }));

/** What the oldest DXF readers take as a name; newer ones take more, none takes less. */
const LAYER_NAME = /^[A-Z0-9_$-]{1,31}$/;

function requireLayers({ layers, entities }: DxfDrawing): void {
  const declared = new Set(['0']);
  for (const { name, colour } of layers) {
    if (!LAYER_NAME.test(name))
      throw new RangeError(`a layer name must be 1 to 31 capitals, digits or the signs _ - $, got ${JSON.stringify(name)}`);
    if (declared.has(name)) throw new RangeError(`each layer must be declared once (0 is always there), got ${JSON.stringify(name)} again`);
    if (!(Number.isInteger(colour) && colour >= 1 && colour <= 255))
      throw new RangeError(`the colour of layer ${name} must be a whole number from 1 to 255, got ${colour}`);
    declared.add(name);
  }
  const stray = entities.find(({ layer }) => !declared.has(layer));
  if (stray) throw new RangeError(`an entity must lie on a declared layer (${[...declared].join(', ')}), got ${JSON.stringify(stray.layer)}`);
}

/** Programs that receive the drawing drop pieces without length, or refuse the outline they belong to. */
function requirePiece(piece: PathPiece, layer: DxfLayer): void {
  if (piece.kind === 'arc' && !(piece.radius > 0))
    throw new RangeError(`an arc must have a radius greater than 0 mm, got ${piece.radius} mm on layer ${layer}`);
  const length = lengthOf(piece);
  if (!(length >= SAME_POINT)) throw new RangeError(`a piece must be at least ${SAME_POINT} mm long, got ${length} mm on layer ${layer}`);
  if (piece.kind === 'arc' && !(piece.radius * (2 * Math.PI - Math.abs(piece.sweep)) >= SAME_POINT))
    throw new RangeError(`an arc must turn less than 360 degrees, got ${inDegrees(piece.sweep)} on layer ${layer}; draw a circle as two arcs`);
}

function requireText(text: string, height: Mm, layer: DxfLayer): void {
  if (!(height > 0)) throw new RangeError(`letters must be higher than 0 mm, got ${height} mm on layer ${layer}`);
  if (!/^\P{Cc}+$/u.test(text))
    throw new RangeError(`text must be one line of at least one letter without control characters, got ${JSON.stringify(text)} on layer ${layer}`);
}

/** The two angles of an arc in counter-clockwise order, the only one DXF knows. */
const turningLeft = ({ start, sweep }: PathArc): [from: Rad, to: Rad] => sweep > 0 ? [start, start + sweep] : [start + sweep, start];

/** Half the last decimal moves the end of an arc of 1 km by 1e-9 mm. */
const ANGLE_DECIMALS = 13;

/** An angle in degrees, from 0 to less than 360. */
function angleText(angle: Rad): string {
  const turned = inDegrees(angle) % 360, text = decimals(turned < 0 ? turned + 360 : turned, ANGLE_DECIMALS);
  return Number(text) === 360 ? decimals(0, ANGLE_DECIMALS) : text;
}

function pieceGroups(piece: PathPiece): Group[] {
  if (piece.kind === 'line') return [[100, 'AcDbLine'], ...at(10, piece.from), ...at(11, piece.to)];
  const [from, to] = turningLeft(piece);
  return [
    [100, 'AcDbCircle'], ...at(10, piece.centre), [40, piece.radius],
    [100, 'AcDbArc'], [50, angleText(from)], [51, angleText(to)],
  ];
}

/** Letters outside ASCII, and two signs that DXF reads as the start of a code, by their number. */
const escaped = (text: string): string =>
  text.replace(/[^ -~]|[\\^]/g, (letter) => `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);

function bodyOf(entity: DxfEntity): [type: string, groups: Group[]] {
  switch (entity.kind) {
    case 'piece': return [entity.piece.kind === 'arc' ? 'ARC' : 'LINE', pieceGroups(entity.piece)];
    case 'point': return ['POINT', [[100, 'AcDbPoint'], ...at(10, entity.at)]];
    case 'text': return ['TEXT', [
      [100, 'AcDbText'], ...at(10, entity.at), [40, entity.height], [1, escaped(entity.text)],
      ...(entity.turn ? [[50, angleText(entity.turn)] as const] : []), [7, 'STANDARD'], [100, 'AcDbText'],
    ]];
  }
}

function entityGroups(entity: DxfEntity, handle: number): Group[] {
  const [type, groups] = bodyOf(entity);
  return [[0, type], [5, hex(handle)], [330, hex(MODEL_SPACE)], [100, 'AcDbEntity'], [8, entity.layer], ...groups];
}

/** The ends of a piece, and where an arc turns back in x or y. */
function reachOf(piece: PathPiece): Point[] {
  if (piece.kind === 'line') return [piece.from, piece.to];
  const quarter = Math.PI / 2, [from, to] = turningLeft(piece), first = Math.ceil(from / quarter);
  const turns = Array.from({ length: Math.floor(to / quarter) - first + 1 }, (_, i) => along((first + i) * quarter));
  return [pointOn(piece, 0), pointOn(piece, 1), ...turns.map((direction) => add(piece.centre, scale(direction, piece.radius)))];
}

/** The box around all pieces and points. How far letters reach depends on the reader's font, so they count only where there is nothing else. */
function boxOf(entities: readonly DxfEntity[]): Box {
  const drawn = entities.filter(({ kind }) => kind !== 'text');
  const points = (drawn.length > 0 ? drawn : entities).flatMap((entity) => entity.kind === 'piece' ? reachOf(entity.piece) : [entity.at]);
  const corner = (pick: (a: number, b: number) => number): Point =>
    points.reduce(([x, y], point): Point => [pick(x, point[0]), pick(y, point[1])]);
  return { least: corner(Math.min), most: corner(Math.max) };
}

/**
 * The drawing as a DXF R2000 file (AC1015) in millimetres, ASCII with CRLF line ends. The same drawing gives the same text.
 * Arcs stay arcs, so a cutter follows the true curve; neighbours meet as closely as they do in the path.
 * @throws RangeError for an empty drawing, a name that old readers refuse, an entity off the declared layers, a piece
 * without length, a full turn, letters that break the line, or a number that is not finite
 */
export function dxfText(drawing: DxfDrawing): string {
  const { layers, entities } = drawing;
  if (entities.length === 0) throw new RangeError('a drawing must hold at least one entity, got 0');
  requireLayers(drawing);
  for (const entity of entities) {
    if (entity.kind === 'piece') requirePiece(entity.piece, entity.layer);
    if (entity.kind === 'text') requireText(entity.text, entity.height, entity.layer);
  }
  const first = firstEntity(layers), box = boxOf(entities);
  return written([
    ...header(box, first + entities.length),
    ...section('CLASSES', []),
    ...tables(layers, box),
    ...blocks(),
    ...section('ENTITIES', entities.flatMap((entity, i) => entityGroups(entity, first + i))),
    ...objects(),
    [0, 'EOF'],
  ]);
}
