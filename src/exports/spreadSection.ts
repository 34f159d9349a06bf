import { partsOf, type Shoe } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';
import { linearSpread, type ShoeSpread } from '../spread/linear.ts';
import { againWords, effectWords, measureWords, percent, sureness } from '../spread/words.ts';
import { bandBlock } from './bandDrawing.ts';
import { heading, introduction, paragraph, space, subheading, table, type Block, type Row } from './flow.ts';
import type { Bands } from './sideDrawing.ts';
import { bold, WIDTH } from './figureSections.ts';

/** So many measures are named: the rest decide next to nothing. */
const NAMED = 5;

/** Which measures decide the shoes, and so which to take again before anything is cut. */
export function spreadSection(design: Design): Block[] {
  const spreads = linearSpread(design);
  return [
    heading('Which measure to take again'),
    introduction('How far off each measure may be (±, one standard deviation: two readings of three lie within it; by how it was taken, or as typed on the sheet), what more of it does, and how much it decides of all that is unsure about the shoe.', WIDTH),
    ...design.shoes.flatMap((shoe, i) => [subheading(`${shoe.side === 'left' ? 'Left' : 'Right'} shoe`), ...ofShoe(design, shoe, spreads[i]!)]),
  ];
}

/** Where the ground face of each rocker may lie. */
export const bandsOf = (design: Design): Bands => Object.fromEntries(linearSpread(design).flatMap(({ side, band }) => (band ? [[side, band]] : [])));

function ofShoe(design: Design, shoe: Shoe, spread: ShoeSpread): Block[] {
  const again = againWords(design.fitting, spread), shape = partsOf(shoe)?.shape;
  return [
    ...(again === undefined ? [] : [{ ...paragraph(again, WIDTH), staysWithNext: true }]), ...measuresTable(spread),
    ...(spread.band && shape ? [
      space(2), introduction('Where the ground face may lie under the last, nine times in ten, if every measure is off as it may be (dashed, shaded):', WIDTH), bandBlock(shape, spread.band, WIDTH),
    ] : []),
  ];
}

const measuresTable = (spread: ShoeSpread): Block[] => table(
  [{ title: 'Measure', width: 62 }, { title: 'Stands at', width: 36, right: true }, { title: 'What more of it does', width: WIDTH - 62 - 36 - 20 }, { title: 'Decides', width: 20, right: true }],
  spread.influences.slice(0, NAMED).map((influence): Row => ({ cells: [bold(measureWords(influence, spread)), sureness(influence), effectWords(influence, spread), percent(influence.share)] })),
);
