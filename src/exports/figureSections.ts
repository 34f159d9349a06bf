import { cautionsFor } from '../checks/cautions.ts';
import { figuresOf, inWords, measuresListed, stationsOf, type Station } from '../checks/figures.ts';
import { inFull, type Finding } from '../checks/finding.ts';
import { inputOf } from '../checks/inputs.ts';
import { capital, deg, grams, mm, rounded, sentences } from '../checks/say.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { Making } from '../fitting/making.ts';
import { isEstimated, type Measure } from '../fitting/measure.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees, MM_PER_INCH, type Mm } from '../geometry/units.ts';
import { levelInWords } from '../pair/level.ts';
import { FILL_RIM, pliesWeight, PLY_INSET, rimRoundPlies } from '../making/plies.ts';
import type { RockerShoe, Shoe } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';
import { framed, heading, introduction, paragraph, space, subheading, table, type Block, type Cell, type Row } from './flow.ts';
import { jobLines, orderLines, type Line } from './orderWords.ts';

/** The sections of the paper with all figures, for a column of this width; they are set small there, so the width is that of full letters. */
export const WIDTH: Mm = 175;

const sideName = ({ side }: Pick<Shoe, 'side'>): string => `${capital(side)} shoe`;
export const bold = (text: string): Cell => ({ text, bold: true });

/** What is said of one thing after the other: what it is, then its value. */
export const ruled = (lines: readonly Line[]): Block[] =>
  table([{ title: '', width: 46 }, { title: '', width: WIDTH - 46 }], lines.map(([what, value]) => ({ cells: [bold(what), value] })));

/** What was ordered, and what the client or the last measures, the shoes beside each other. */
export function orderSection({ fitting, shoes }: Design): Block[] {
  const first = 38, width = (WIDTH - first) / shoes.length, orders = shoes.map((shoe) => new Map(orderLines(shoe.fitting)));
  const names = [...new Set(orders.flatMap((order) => [...order.keys()]))];
  return [
    heading('Order'), ...ruled(jobLines(fitting)), space(2), paragraph(levelInWords(fitting.wearer.legDifference), WIDTH),
    ...table(
      [{ title: '', width: first }, ...shoes.map((shoe) => ({ title: sideName(shoe), width }))],
      names.map((name) => ({ cells: [bold(name), ...orders.map((order) => order.get(name) ?? '')] })),
    ),
    heading('Measures'), ...measureTable(shoes, fitting),
  ];
}

/** Each measure once; what is told of it alike for both shoes is told once too. */
function measureTable(shoes: readonly Shoe[], fitting: Fitting, { units } = fitting): Block[] {
  const fields = [...new Set(shoes.flatMap((shoe) => measuresListed(shoe, fitting)))], name = 46, value = units === 'in' ? 38 : 20;
  const listed = shoes.map((shoe) => ({ shoe, own: measuresListed(shoe, fitting) }));
  return table(
    [
      { title: 'Measure', width: name }, ...shoes.map(({ side }) => ({ title: capital(side), width: value, right: true })),
      { title: 'Origin, how taken, or by which rule', width: WIDTH - name - value * shoes.length },
    ],
    fields.flatMap((field): Row[] => {
      const { label, unit, of } = inputOf(field), measures = listed.map(({ shoe, own }) => ({ side: shoe.side, measure: own.includes(field) ? of(shoe.fitting) : undefined }));
      const told = measures.flatMap(({ side, measure }) => (measure ? [{ side, text: originOf(measure, unit) }] : [])), alike = new Set(told.map(({ text }) => text)).size < 2;
      const words = alike ? (told[0]?.text ?? '') : told.map(({ side, text }) => `${side}: ${text}`).join('; ');
      return told.length ? [{ cells: [label, ...measures.map(({ measure }) => (measure ? valueCell(measure, unit, units) : '')), words] }] : [];
    }),
  );
}

/** An estimate stands in bold letters. */
const valueCell = (measure: Measure, unit: 'mm' | 'deg', units: 'mm' | 'in'): Cell => (isEstimated(measure) ? bold(valueWords(measure, unit, units)) : valueWords(measure, unit, units));
const originOf = (measure: Measure, unit: 'mm' | 'deg'): string => [measure.origin, storyOf(measure, unit)].filter(Boolean).join(': ');

function valueWords({ value }: Measure, unit: 'mm' | 'deg', units: 'mm' | 'in'): string {
  if (unit === 'deg') return deg(inDegrees(value));
  return units === 'in' ? `${mm(value)} (${rounded(value / MM_PER_INCH, 3)} in)` : mm(value);
}

const storyOf = ({ how, twice, rule, error, accuracy = error }: Measure, unit: 'mm' | 'deg'): string =>
  [how, twice && 'taken twice', rule, accuracy !== undefined && `± ${unit === 'deg' ? deg(inDegrees(accuracy)) : mm(accuracy)}`].filter(Boolean).join('; ');

/** Every figure, the shoes beside each other where they have it in common. */
export function figuresSection({ fitting, shoes }: Design): Block[] {
  const columns = shoes.map((shoe) => new Map(figuresOf(shoe, fitting).map((figure) => [figure.label, inWords(figure)])));
  const labels = [...new Set(columns.flatMap((column) => [...column.keys()]))], value = 32;
  return [
    heading('Figures'),
    introduction(`Heights above the ground with the shoe at rest; "est." rests on a measure that was estimated or left to a default.${fitting.wearer.mass ? '' : ' Squash of the foam is left out: no body mass on the sheet (wearer.mass).'}`, WIDTH),
    ...table(
      [{ title: 'Figure', width: WIDTH - value * shoes.length }, ...shoes.map((shoe) => ({ title: sideName(shoe), width: value, right: true }))],
      labels.map((label) => ({ cells: [label, ...columns.map((column) => column.get(label) ?? '')] })),
    ),
    ...pliesWords(shoes), ...centresTable(shoes),
  ];
}

/** Where the arcs are struck from, as far as that is off most drawings. */
function centresTable(shoes: readonly Shoe[]): Block[] {
  const columns = shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [{ shoe, centres: new Map(centresOf(shoe)) }] : [])), names = [...new Set(columns.flatMap(({ centres }) => [...centres.keys()]))];
  const width = 42, words = (point: Point | undefined): string => (point ? point.map((one) => rounded(one, 1)).join(', ') : '');
  return columns.length === 0 ? [] : [
    subheading('Where the arcs are struck from'),
    ...table(
      [{ title: 'mm from the heel along the walking line, above the ground', width: WIDTH - width * columns.length }, ...columns.map(({ shoe }) => ({ title: sideName(shoe), width, right: true }))],
      names.map((name) => ({ cells: [name, ...columns.map(({ centres }) => words(centres.get(name)))] })),
    ),
  ];
}

function centresOf({ rocker: { pivot, hip, heelArc, mid, toeArc } }: RockerShoe): (readonly [string, Point])[] {
  const flat = mid.frontX > mid.rearX;
  return [
    ...(heelArc ? [['Heel arc: the ankle pivot', pivot] as const] : []),
    ...(flat ? [['Mid arc, rear half', [mid.rearX, mid.radius]], ['Mid arc, front half', [mid.frontX, mid.radius]]] as const : [['Mid arc: the hip', hip]] as const),
    ['Toe arc', toeArc.centre],
  ];
}

/** Where only a thickness is known the figures reckon with a plate out to the edge, and what is laid up is less; the rim is filled whatever is laid. */
function pliesWords(shoes: readonly Shoe[]): Block[] {
  const stiff = shoes.flatMap((shoe) => (shoe.kind === 'rocker' && shoe.shape.stiffener > 0 ? [shoe] : [])), [first] = stiff;
  if (!first) return [];
  const lighter = stiff.filter(({ order }) => order.packGrams === undefined).map(({ side, shape }) => `${side} ${grams(pliesWeight(shape))}`);
  const plies = `plies that stay ${mm(PLY_INSET, 0)} inside the feather line`, rim = rimRoundPlies(first.shape);
  const words = lighter.length === 0 ? [`With ${plies} ${rim}`]
    : [`${capital(plies)} weigh less than the stiffener counted out to the edge: ${lighter.join(', ')}`, `With them ${rim}`];
  return [space(1), paragraph(sentences(...words, FILL_RIM), WIDTH)];
}

const STATION_COLUMNS = [
  ['ground', 'ground'], ['thick', 'thickness'], ['square', 'square'], ['upper', 'upper'], ['foam', 'foam'],
] as const satisfies readonly (readonly [string, keyof Station])[];

const stationCells = (station: Station | undefined): string[] => STATION_COLUMNS.map(([, key]) => (station ? rounded(station[key], 1) : ''));

/** The sole every 10 mm. A pen line at each station on both walls is ground down to. */
export function stationSection({ shoes }: Design): Block[] {
  const tables = shoes.map((shoe) => ({ shoe, stations: new Map(stationsOf(shoe).map((station) => [station.x, station])) })).filter(({ stations }) => stations.size > 0);
  const places = [...new Set(tables.flatMap(({ stations }) => [...stations.keys()]))].sort((a, b) => a - b), first = 15, width = (WIDTH - first) / Math.max(8, 5 * tables.length);
  const of = (side: Shoe['side'], title: string): string => (tables.length > 1 ? `${side === 'left' ? 'L' : 'R'} ${title}` : title);
  return [
    heading('The sole every 10 mm'),
    introduction('On the long axis, mm from the heel. Ground: ground face above the ground. Thick: the whole stack, measured upright; the least thicknesses asked for are upright too. Square: the same, square to the ground face, so it reads less where the face is steep. Upper: the face the sole is glued to, above the ground. Foam: what stays between stiffener and outsole, upright.', WIDTH),
    ...table(
      [{ title: 'From heel', width: first, right: true }, ...tables.flatMap(({ shoe: { side } }) => STATION_COLUMNS.map(([title]) => ({ title: of(side, title), width, right: true })))],
      places.map((x) => ({ cells: [bold(rounded(x, x === Math.round(x) ? 0 : 1)), ...tables.flatMap(({ stations }) => stationCells(stations.get(x)))] })),
    ),
  ];
}

const SEVERITY = { stop: 'STOP', warn: 'WARNING', note: 'note' } as const;
const whereWords = ({ side, where }: Finding): string => [side, where].filter(Boolean).join(', ');

/** What to know before cutting, worst first; a stop is framed, with the name of whoever took it. */
export function findingsSection({ findings }: Design): Block[] {
  const stops = findings.filter(({ severity }) => severity === 'stop'), others = findings.filter(({ severity, code }) => severity !== 'stop' && code !== ESTIMATED);
  return [
    heading('Findings'),
    ...stops.map((finding) => framed(stopWords(finding), WIDTH)),
    ...(others.length || stops.length ? [] : [paragraph('Nothing found.', WIDTH)]),
    ...(others.length ? table(
      [{ title: '', width: 21 }, { title: 'Where', width: 26 }, { title: 'Finding', width: WIDTH - 47 }],
      others.map((finding) => ({ cells: [bold(SEVERITY[finding.severity]), whereWords(finding), inFull(finding)] })),
    ) : []),
  ];
}

function stopWords(finding: Finding): string[] {
  const { text, overriddenBy: taken } = finding;
  return [`STOP (${whereWords(finding)}): ${text}`, ...(taken ? [`STOP taken by ${taken.by}: ${taken.reason}`] : [])];
}

const ESTIMATED = 'ESTIMATED';

/** Measures that were not taken, and what stands in for them. */
export function estimatesSection({ findings }: Design): Block[] {
  const estimates = findings.filter(({ code }) => code === ESTIMATED);
  if (estimates.length === 0) return [heading('Estimates'), paragraph('Every measure the shape rests on was taken.', WIDTH)];
  return [
    heading('Estimates'),
    ...table([{ title: 'Shoe', width: 18 }, { title: 'What was not measured', width: WIDTH - 18 }], estimates.map((finding) => ({ cells: [bold(finding.side ?? 'both'), inFull(finding)] }))),
  ];
}

export const cautionsSection = ({ fitting }: Design): Block[] =>
  [heading('Cautions'), ...cautionsFor(fitting).flatMap((caution, i) => [paragraph(`${i + 1}. ${caution}`, WIDTH)])];

/** A file that goes with the sheet, and what its bytes add up to. */
export interface Checksum { readonly name: string; readonly sha256: string }

/** @param making what the workshop has: a cutter that is not on the sheet cannot be held against the part */
export function filesSection(files: readonly Checksum[], { tool, block }: Making): Block[] {
  return [
    heading('Files'), introduction('All sizes in mm. The row of figures and letters beside a file (SHA-256) changes with the file: it tells whether a file is still the one these papers were made with.', WIDTH),
    ...(tool || block ? [] : [introduction('Cutter reach not checked: no tool on the sheet (making.tool).', WIDTH)]),
    ...table([{ title: 'File', width: 56 }, { title: 'SHA-256', width: WIDTH - 56 }], files.map(({ name, sha256 }) => ({ cells: [name, sha256] }))),
  ];
}
