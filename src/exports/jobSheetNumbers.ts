import type { Design } from '../checks/design.ts';
import { figuresOf, inWords, type Figure, type FigureKey } from '../checks/figures.ts';
import { inUnitOf } from '../checks/say.ts';
import type { Mm } from '../geometry/units.ts';
import type { Shoe } from '../pair/shoe.ts';
import { stroke, type Box, type Mark } from './drawing.ts';
import { fitted, LEAST_LETTERS } from './fitted.ts';

/** What a maker sets a shoe by, in the order it is set. */
const KEYS = [
  ['seatHeight', 'Seat height'], ['heelHeightBack', 'Heel height, back'], ['ballHeight', 'Ball height'], ['pitchOfSole', 'Pitch of the sole'],
  ['standsSeat', 'Foot stands, seat'], ['standsBall', 'Foot stands, ball'], ['toeSpringOfShoe', 'Toe spring, shoe'], ['apex', 'Apex from the heel'],
  ['thinnest', 'Tightest thickness'], ['packThickness', 'Stiffener, thick'], ['packBend', 'Stiffener bends, bench'], ['packWalks', 'in walking'], ['soleWeight', 'Weight of the sole'], ['shoeWeight', 'Weight of the shoe'],
  ['standingPoint', 'Standing point'], ['swayArcBack', 'Weight sways back'], ['swayArcFront', 'and forward'],
  ['strikeReached', 'Strike'], ['toeOff', 'Toe-off'], ['pivotDrop', 'Ankle pivot drops'], ['pivotDropOrdinary', 'in an ordinary shoe'],
] as const satisfies readonly (readonly [FigureKey, string])[];

/** What gives way where there is no room for all, first to last: it stands on the drawing, or is for comparison. */
const GIVES_WAY: readonly FigureKey[] = ['standsBall', 'standsSeat', 'heelHeightBack', 'pivotDropOrdinary', 'packWalks', 'ballHeight', 'toeSpringOfShoe', 'pitchOfSole'];

/** Letters as large as the rows let them be, within these; a row is so many times as high, or less where there is little room. */
const LARGEST: Mm = 3.3, LINE = 1.42, CLOSE = 1.26, TIGHT = 1.22;

/** The numbers a maker sets by, the shoes beside each other. */
export function keyNumbers({ fitting, shoes }: Design, { left, right, top, bottom }: Box): Mark[] {
  const books = shoes.map((shoe) => new Map(figuresOf(shoe, fitting).map((figure) => [figure.key, figure])));
  const rows = inRoom(KEYS.filter(([key]) => books.some((book) => book.has(key))), (bottom - top) / (LEAST_LETTERS * TIGHT) - 1), heads = shoes.map(({ side }) => (side === 'left' ? 'Left' : 'Right'));
  const high = Math.min(LARGEST * LINE, (bottom - top) / (rows.length + 1)), size = Math.max(LEAST_LETTERS, Math.min(LARGEST, high / CLOSE)), value = (right - left) * (shoes.length > 1 ? 0.31 : 0.42);
  const line = (label: string, cells: readonly string[], row: number, bold: boolean): Mark[] => {
    const foot = top + (row + 1) * high, base = foot - 0.28 * high;
    return [
      fitted(label, [left + 0.8, base], right - left - cells.length * value - 1.5, { size, bold }),
      ...cells.map((text, i) => fitted(text, [right - (cells.length - 1 - i) * value - 0.8, base], value - 1.6, { size, bold, anchor: 'end' })),
      stroke([left, foot], [right, foot], row === 0 ? 'visible' : 'thin', 'ink'),
    ];
  };
  return [
    ...line('To set by', heads, 0, true),
    ...rows.flatMap(([key, label], i) => line(label, books.map((book, shoe) => { const figure = book.get(key); return figure ? inUnitOf(fitting.units, `${isRaise(shoes[shoe]!, key) ? 'raise ' : ''}${toldOf(figure)}`) : ''; }), i + 1, key === 'seatHeight' || key === 'apex')),
  ];
}

/** Heights of a matched shoe are those of what is put under it. */
const OF_RAISE: readonly FigureKey[] = ['seatHeight', 'heelHeightBack', 'ballHeight'];
const isRaise = ({ kind }: Shoe, key: FigureKey): boolean => kind === 'match' && OF_RAISE.includes(key);

type Row = (typeof KEYS)[number];

function inRoom(rows: readonly Row[], most: number): readonly Row[] {
  const gone = new Set(GIVES_WAY.filter((one) => rows.some(([key]) => key === one)).slice(0, Math.max(0, Math.ceil(rows.length - most))));
  return rows.filter(([key]) => !gone.has(key));
}

/** The roll angle at which it is taken is told elsewhere. */
export function toldOf({ rolled: _, ...plain }: Figure): string {
  return inWords(plain).replace('(est.)', 'est.');
}
