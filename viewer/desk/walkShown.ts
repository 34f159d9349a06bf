import type { Design } from '../../src/checks/design.ts';
import { inInches } from '../../src/checks/say.ts';
import { walkDifferences } from '../../src/checks/walkDifferences.ts';
import { walkFigures, walkWords, type ShoeWalkFigures, type WalkFigure } from '../../src/checks/walkFigures.ts';
import { ruleLines } from '../../src/exports/rollTable.ts';
import { sideOutline, sideProfile } from '../../src/exports/sideProfile.ts';
import { standPicture, type StandSize } from '../../src/exports/standPicture.ts';
import { element, track } from '../../src/exports/svg.ts';
import { onPaper, type View } from '../../src/exports/view.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import type { Side } from '../../src/fitting/words.ts';
import type { Path } from '../../src/geometry/path.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { walkingOf } from '../../src/walk/walking.ts';
import { lengthWords, unbroken } from '../keep/lengths.ts';
import type { FigureRow, ShoeWalkShown, Shown, StandShown } from './protocol.ts';

/** The pair as it walks; no shoe where nobody is known to stand in it. Lengths are said in the unit the pair's checks speak in. */
export function walkShown(made: Design): Pick<Shown, 'walking'> {
  const figures = walkFigures(made), { fitting: { units } } = made;
  const differences = walkDifferences(made).map((figure) => ({ label: figure.label, cells: [figureSaid(figure, units)] }));
  return { walking: { walking: walkingOf(made), shoes: figures.map((one) => shoeShown(made, one, units)), standing: standingShown(made), told: figures.length ? ruleLines(figures) : [], differences } };
}

/** Letters that are read on a page where the picture takes its column. */
const STANDING: StandSize = { width: 120, size: 3.3 };

/** How each rocker stands still. */
const standingShown = ({ shoes, fitting }: Design): readonly StandShown[] => shoes.flatMap((shoe): StandShown[] => {
  if (shoe.kind !== 'rocker') return [];
  const { height, marks } = standPicture(shoe, fitting, STANDING, fitting.units === 'in' ? inInches : (text) => text), texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  return [{ side: shoe.side, paper: { width: STANDING.width, height }, marks: marks.map(element), words: texts.join('. ') }];
});

function shoeShown(made: Design, { side, walk, own, ordinary }: ShoeWalkFigures, units: LengthUnit): ShoeWalkShown {
  const rolls = walk.kind === 'rocker', estimated = own[0]?.estimated === true;
  return { side, ...(rolls ? cutOf(made, side) : {}), estimated, columns: rolls ? ['this shoe', 'ordinary'] : ['this shoe'], figures: rowsOf(rolls ? [own, ordinary] : [own], units) };
}

/** Heights upwards become y downwards; true size. */
const TURNED: View = { zero: [0, 0], scale: 1 };
const asText = (path: Path): string => track(onPaper(TURNED, path));

function cutOf({ shoes }: Design, side: Side): Pick<ShoeWalkShown, 'cut'> {
  const shoe = shoes.find((one) => one.side === side), parts = shoe && partsOf(shoe);
  if (!parts) return {};
  const profile = sideProfile(parts.shape);
  return { cut: { outline: asText(sideOutline(profile)), layers: asText([...profile.foam, ...(profile.stiffener ?? [])]), tip: profile.tip.to } };
}

/** Every figure that one of the columns has; what the first has not stands where the other has it. */
function rowsOf(columns: readonly (readonly WalkFigure[])[], units: LengthUnit): readonly FigureRow[] {
  const labels = new Map(columns.flat().map(({ key, label }) => [key, label])), order = columns.reduce<readonly string[]>((keys, figures) => merged(keys, figures.map(({ key }) => key)), []);
  const cell = (figures: readonly WalkFigure[], key: string): string => { const found = figures.find((one) => one.key === key); return found ? figureSaid(found, units) : ''; };
  return order.map((key) => ({ label: labels.get(key) ?? '', cells: columns.map((figures) => cell(figures, key)) }));
}

/** Each of the others goes behind the one it follows in its own list. */
const merged = (keys: readonly string[], others: readonly string[]): readonly string[] => others.reduce((list, key, i) => {
  const at = list.indexOf(others[i - 1] ?? '') + 1;
  return list.includes(key) ? list : [...list.slice(0, at), key, ...list.slice(at)];
}, keys);

const figureSaid = (figure: WalkFigure, units: LengthUnit): string =>
  unbroken(figure.unit === 'mm' && units === 'in' ? walkWords(figure).replace(/^\S+ mm/, lengthWords(figure.value, 'in')) : walkWords(figure));
