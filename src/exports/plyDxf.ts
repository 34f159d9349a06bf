import { windowRound } from '../geometry/clip.ts';
import { moved, type Path } from '../geometry/path.ts';
import { add, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { FlatPart, PartLetters } from '../making/flatPart.ts';
import type { ClothCut } from '../making/plies/cloths.ts';
import { arrow } from '../making/plies/parts.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { polyline } from './drawing.ts';
import type { DxfEntity } from './dxf.ts';
import { lettered, path, sheet } from './dxfSheets.ts';

/** Between one outline and the next, so that each can be cut by itself. */
const APART: Mm = 15;

/** Every layer of a stiffener in true size, one below the other in the order of laying, the outline of each on a layer of its own. */
export function plyOutlines({ side, layers, parts }: ShoePlies, reference: string): string {
  const names = layers.map(({ kind, number }) => `${kind.toUpperCase()}_${number}`);
  let down = 0;
  const entities = parts.flatMap((part, i): DxfEntity[] => {
    const { least, most } = windowRound([part.outline]), shift: Point = [0, down - most[1]];
    down -= most[1] - least[1] + APART;
    return partEntities(moveAll(part, shift), names[i]!);
  });
  return sheet([...entities, ...lettered([`${reference} ${side} plies mm, in the order of laying, foot side up`], [0, APART])], names);
}

/** The cloth of one roll with what is cut from it, warp along the drawing. */
export function clothSheet({ number, name, length, width, parts }: ClothCut, reference: string): string {
  const warp = arrow([60, -20], 0, 60);
  return sheet([
    ...path('SHEET_EDGE', polyline([[0, 0], [length, 0], [length, width], [0, width]], true)), ...parts.flatMap((part) => partEntities(part, 'CUT')),
    ...path('MARK', warp), ...lettered([`${reference} cloth ${number}: ${name}, roll ${width} mm wide, cut off ${length} mm; warp along the arrow`], [100, -22.5]),
  ]);
}

/** What is scribed or only told goes before what is cut. */
const partEntities = ({ outline, marks, letters }: FlatPart, cut: string): DxfEntity[] => [
  ...marks.flatMap(({ of, path: line }) => path(MARKED[of] ?? 'MARK', line)), ...letters.map(letter), ...path(cut, outline),
];
const MARKED: Readonly<Record<string, string>> = { FIBRE: 'FIBRE', FOLD: 'FOLD', SKIVE: 'SKIVE' };
const letter = ({ text, at, size, turn = 0 }: PartLetters): DxfEntity => ({ kind: 'text', layer: 'LETTERS', at, height: size, text: plain(text), turn });
/** Many cutters show other signs as codes. */
const plain = (text: string): string => text.replaceAll('°', ' deg').replaceAll('±', '+-').replaceAll('×', 'x').replaceAll('²', '2');

function moveAll(part: FlatPart, by: Point): FlatPart {
  const shifted = (line: Path): Path => moved(line, by);
  return { ...part, outline: shifted(part.outline), marks: part.marks.map((mark) => ({ ...mark, path: shifted(mark.path) })), letters: part.letters.map((one) => ({ ...one, at: add(one.at, by) })) };
}
