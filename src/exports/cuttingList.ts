import type { Design } from '../checks/design.ts';
import { cubic, grams, mm, rounded } from '../checks/say.ts';
import { CEMENT } from '../materials/materials.ts';
import type { Side } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import { PLY_INSET } from '../making/plies.ts';
import { besidesFor, cementFor, costFor, groundShare, weightOf, type Besides, type Size, type StiffenerBesides } from '../making/stack/cuttingList.ts';
import { groundAway, type ShoeStack, type Stacks } from '../making/stack/stack.ts';
import { wasteOf } from '../making/nest/nest.ts';
import { A4, type Drawing } from './drawing.ts';
import { heading, introduction, pagesOf, paragraph, space, subheading, table, type Block, type Row } from './flow.ts';
import { footMarks, writtenRoom } from './pageFoot.ts';
import { pdfBytes } from './pdf.ts';
import { checkLines } from './sheetFrame.ts';

/** The check lines run in the margin, along the upper and the left edge of the paper. */
const LEFT: Mm = 18, TOP: Mm = 15, WIDTH: Mm = 180, CORNER = 6;

export const sheetFileName = (reference: string, number: number): string => `${reference}_stack-sheet-${number}.dxf`;

/**
 * What is taken from the store for the soles that are built up from sheets: every blank with its sheet, size, area, weight,
 * waste and cost, rubber, stiffener and cement.
 */
export function cuttingListPdf(design: Design, stacks: Stacks): Uint8Array {
  const { reference, date } = design.fitting.job, blocks = [...layersSection(design, stacks), ...sheetsSection(stacks, reference), ...besidesSection(design, stacks)];
  const pages = pagesOf(blocks, writtenRoom(design, { left: LEFT, top: TOP, width: WIDTH }));
  const drawings = pages.map((marks, i): Drawing => ({ paper: A4, title: 'Cutting list', marks: [...checkLines([CORNER, CORNER]), ...marks, ...footMarks(design, A4, { n: i + 1, of: pages.length })] }));
  return pdfBytes(drawings, `Cutting list ${reference}`, date);
}

const side = (text: string): string => `${text === 'left' ? 'Left' : 'Right'} shoe`;
const cm2 = (area: number): string => rounded(area / 100, 0);
const cm3 = (volume: number): string => cubic(volume, 0);
const percent = (share: number): string => `${rounded(share * 100, 0)} %`;
/** Blanks are cut out of pieces at least so large. */
const size = ([length, width]: Size): string => `${Math.ceil(length)} × ${Math.ceil(width)}`;

/** In the workshop's own money, without a sign; a dash where the sheet has no price. Totals are those of what is shown. */
const money = (cost: number | undefined): string => (cost === undefined ? '–' : rounded(cost, 2));
const total = (costs: readonly (number | undefined)[]): number => costs.reduce<number>((sum, cost) => sum + (cost === undefined ? 0 : Number(money(cost))), 0);
/** Costs are told where any sheet that is cut has a price. */
const isPriced = (sheets: readonly { readonly sheet: { readonly price?: number } }[]): boolean => sheets.some(({ sheet }) => sheet.price !== undefined);

function layersSection({ fitting: { making: { stack: order, rack } } }: Design, { shoes, sheets }: Stacks): Block[] {
  const usual = rack.some((sheet) => sheet.usual);
  return [
    heading('Cutting list'),
    paragraph(`Layers are cemented one under the other from the face under the last downwards, and bend with it; layer 1 lies against that face. Each is cut ${mm(order?.trim ?? 0)} larger all round than the foam needed there, to be ground off. Its outline lies in the drawing of its sheet, with the edge of the next layer, the centre, ball and apex lines on it; upper side up. A glue line is counted as ${mm(order?.glueLine ?? 0, 2)}.`, WIDTH),
    ...(usual ? [paragraph('Thicknesses are those of the labels, not measured: labels are up to half a millimetre off. Measure every sheet, put it on the fitting sheet (making.rack) and make this list again before cutting.', WIDTH, { size: 3.2, bold: true })] : []),
    ...unlikeWords(shoes).map((text) => paragraph(text, WIDTH)),
    ...shoes.flatMap((stack) => stackTable(stack, sheets)),
  ];
}

/** A pair of which each sole has sheets that the other has not: told, for sheets of two batches seldom give alike. */
export function unlikeWords(shoes: readonly Pick<ShoeStack, 'side' | 'layers'>[]): string[] {
  const [one, other] = shoes.map(({ side: of, layers }) => ({ of, names: [...new Set(layers.map(({ sheet: { name } }) => name))] }));
  if (!one || !other) return [];
  const alone = (names: readonly string[], others: readonly string[]): string[] => names.filter((name) => !others.includes(name)), [own, theirs] = [alone(one.names, other.names), alone(other.names, one.names)];
  return own.length && theirs.length ? [`The two soles are built up unlike, for least waste: ${own.join(', ')} only on the ${one.of}, ${theirs.join(', ')} only on the ${other.of}. Press a thumb into both materials: where one gives more, leave its sheet out of the rack (making.rack) and make this list again.`] : [];
}

function stackTable(stack: ShoeStack, sheets: Stacks['sheets']): Block[] {
  const priced = isPriced(stack.layers);
  const rows = stack.layers.flatMap((layer) => layer.pieces.map((piece): Row => ({ cells: [
    `${piece.place || 'runs on'} ${layer.number} of ${layer.of}`, layer.sheet.name, `${rounded(layer.sheet.thickness, 2)}${layer.sheet.usual ? ' label' : ''}`, size(piece.size), cm2(piece.area),
    rounded(weightOf(piece.area, layer.sheet), 0), percent(groundShare(layer)), rounded(cementFor(piece.area), 0), ...(priced ? [money(costFor(piece.area, layer.sheet))] : []),
    sheets.length === 0 ? '' : `${piece.file}`,
  ] })));
  return [
    subheading(side(stack.side)),
    ...table([
      { title: 'Layer', width: 27 }, { title: 'Material', width: priced ? 32 : 44 }, { title: 'mm thick', width: 18, right: true }, { title: 'Blank mm', width: 22, right: true },
      { title: 'cm²', width: 13, right: true }, { title: 'g', width: 11, right: true }, { title: 'Ground', width: 15, right: true }, { title: 'Glue g', width: 14, right: true },
      ...(priced ? [{ title: 'Cost', width: 14, right: true }] : []), { title: 'Sheet', width: 12, right: true },
    ], rows, { size: 2.9 }),
    space(1), paragraph(`Blanks ${cm3(stack.blanks)}; body of foam ${cm3(stack.body)}, of it glue lines ${cm3(stack.glue)}; ground away ${cm3(groundAway(stack))}, ${percent(groundAway(stack) / stack.blanks)} of the blanks.`, WIDTH),
  ];
}

function sheetsSection({ sheets }: Stacks, reference: string): Block[] {
  const priced = isPriced(sheets);
  return [
    heading('Sheets'), introduction('Blanks lie head to toe as far to one corner as they go. Waste is what is neither blank nor a strip that stays whole, as a share of what is cut off.', WIDTH),
    ...table([
      { title: 'Sheet', width: 12 }, { title: 'Material', width: priced ? 30 : 36 }, { title: 'mm', width: priced ? 21 : 24, right: true }, { title: 'Blanks', width: priced ? 13 : 16, right: true },
      { title: 'Blanks cm²', width: priced ? 18 : 22, right: true }, { title: 'Waste', width: priced ? 13 : 16, right: true },
      ...(priced ? [{ title: 'Cost', width: 13, right: true }, { title: 'with waste', width: 20, right: true }] : []), { title: 'File', width: priced ? 40 : 54 },
    ], sheets.map(({ number, sheet, parts, use }): Row => {
      const waste = wasteOf(use, sheet);
      return { cells: [`${number}`, sheet.name, `${sheet.length} × ${sheet.width}`, `${parts.length}`, cm2(use.parts), percent(waste / (use.parts + waste)), ...(priced ? [money(costFor(use.parts, sheet)), money(costFor(use.parts + waste, sheet))] : []), sheetFileName(reference, number)] };
    }), { size: 2.9 }),
    ...(priced ? [space(1), paragraph(costWords(sheets), WIDTH)] : []),
  ];
}

function costWords(sheets: Stacks['sheets']): string {
  const blanks = total(sheets.map(({ sheet, use }) => costFor(use.parts, sheet))), all = total(sheets.map(({ sheet, use }) => costFor(use.parts + wasteOf(use, sheet), sheet)));
  const without = [...new Set(sheets.flatMap(({ sheet }) => (sheet.price === undefined ? [sheet.name] : [])))];
  return `Cost of the blanks ${money(blanks)}, with their waste ${money(all)}, in your own money, by the prices of a square metre (making.rack.price); strips that stay whole are not counted.${without.length ? ` Not in it, for want of a price: ${without.join(', ')}.` : ''}`;
}

function besidesSection({ shoes, fitting, fitting: { job: { reference } } }: Design, stacks: Stacks): Block[] {
  const besides = shoes.flatMap((shoe): Besides | [] => besidesFor(shoe, fitting) ?? []), isStiffened = (estimated: boolean): boolean => besides.some(({ stiffener }) => stiffener?.estimated === estimated);
  const layers = stacks.shoes.flatMap((stack) => stack.layers.flatMap(({ pieces }) => pieces.map(({ area }) => cementFor(area))));
  // Columns add up as they are shown.
  const cement = [...layers, ...besides.flatMap(({ outsole, stiffener }) => [outsole.cement, stiffener?.cement ?? 0])].reduce((sum, one) => sum + Number(rounded(one, 0)), 0);
  const rows = besides.flatMap(({ side: of, outsole, stiffener }): Row[] => [
    { cells: [side(of), `outsole, ${outsole.material}`, rounded(outsole.thickness, 1), size(outsole.size), cm2(outsole.area), grams(outsole.weight), rounded(outsole.cement, 0), `${reference}_${of}_outsole-flat.dxf`] },
    ...(stiffener ? [stiffenerRow(of, stiffener)] : []),
  ]);
  return [
    heading('Rubber, stiffener, cement'),
    ...table([
      { title: 'Shoe', width: 20 }, { title: 'Part', width: 34 }, { title: 'mm thick', width: 15, right: true }, { title: 'Blank mm', width: 20, right: true }, { title: 'cm²', width: 11, right: true }, { title: 'Weight', width: 24 },
      { title: 'Glue g', width: 12, right: true }, { title: 'Outline', width: 44 },
    ], rows, { size: 2.9 }),
    space(1),
    ...(isStiffened(true) ? [paragraph(`The stiffener is an estimate until its plies are laid out: the feather line set in by ${mm(PLY_INSET, 0)} all round, equal weights of cloth and resin in the plate. ${MIX_MORE}`, WIDTH)] : []),
    ...(isStiffened(false) ? [paragraph(`What the stiffener takes is that of its plies and core as they are to lie. ${MIX_MORE}`, WIDTH)] : []),
    paragraph(`Cement in all ${grams(cement)}: ${CEMENT.perFace} g/m² on both faces of every joint (${CEMENT.basis}).`, WIDTH),
  ];
}

const MIX_MORE = 'Mix more resin than that: some stays in brush and cup.';

function stiffenerRow(of: Side, { estimated, thickness, size: blank, area, cloth, resin, core, weight, cement }: StiffenerBesides): Row {
  const parts = [cloth !== undefined && `cloth ${grams(cloth)}`, resin !== undefined && `resin ${grams(resin)}`, core !== undefined && `core ${grams(core)}`].filter(Boolean);
  const taken = cloth === undefined ? `${grams(weight)} in all` : parts.join(', ');
  return { cells: [side(of), `stiffener${estimated ? ' (est.)' : ''}`, rounded(thickness, 1), size(blank), cm2(area), taken, rounded(cement, 0), `feather line, ${mm(PLY_INSET, 0)} set in`] };
}
