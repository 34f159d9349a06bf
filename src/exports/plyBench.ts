import { ADDED_SIDES, bandWords, droopWords, kgWords, readingWords, timesNumber } from '../checks/benchWords.ts';
import { deg, mm, rounded, sentences } from '../checks/say.ts';
import type { Design } from '../checks/design.ts';
import { inDegrees, MM_PER_INCH, type Mm, type Rad } from '../geometry/units.ts';
import { CLAMP_BEHIND } from '../stiffener/hung.ts';
import { benchTestOf, type BenchTest, type Hanging, type ReadingRow } from '../making/plies/bench.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { directionWords } from '../stiffener/fibres.ts';
import { GRADE_UP_TO, limitOf } from '../stiffener/grades.ts';
import { BENCH_MOMENT } from '../stiffener/loads.ts';
import { HAND_LAID_WITHIN } from '../stiffener/reading.ts';
import { stroke, words } from './drawing.ts';
import { table, type Block, type Column } from './flow.ts';
import type { Lettering } from './letters.ts';
import { flowIn, type FlowIn } from './flowIn.ts';
import { benchSketch } from './plyBenchSketch.ts';
import { WIDTH } from './textPaper.ts';

/** The page on which a pack is proved: how it is clamped and loaded, what is to be read, and what a reading means. */
export function plyBench(design: Design, one: ShoePlies): Block[] {
  const { side, pack, pack: { asked, stiffener } } = one, bench = benchTestOf(pack), flow = flowIn(design.fitting.units);
  const title: Block = { ...flow.heading(`Bench test: ${side} shoe of ${design.fitting.job.reference}`), newPage: true };
  if (!bench) return [title, flow.paragraph('The pack is too short behind or ahead of the tread line to be clamped and loaded like this.', WIDTH)];
  return [
    title, flow.framed(['Stand clear, goggles on. Hang the mass low, a hand above the floor, feet away.'], WIDTH),
    benchSketch(bench.bare, flow.said), ...howTo(bench, stiffener.edges ?? 0, pack.underFoam ?? false, flow), ...readingsTable(bench, one, flow), ...meaning(bench, wantedWords(asked), one, flow), ...writing(bench, flow),
  ];
}

/** All of the test is one page, whatever is told of it. */
const SMALL: Lettering = { size: 2.8 };

function howTo({ bare, finished }: BenchTest, edges: Mm, underFoam: boolean, { paragraph, units }: FlowIn): Block[] {
  const ratio = (bare.loadAt - bare.clampAt) / CLAMP_BEHIND, step = units === 'in' ? 'thousandth' : 'hundredth';
  return [
    sentences(`Clamp the pack foot side down between hardwood blocks cut to its camber, both ending square across on the clamp line, ${mm(bare.clampAt, 0)} from the heel end of the last: it is marked on every ply template`, 'A camber pressed flat by the blocks is lost to the test', edges > 0 ? 'The lower block goes between the turned-up edges' : '', underFoam ? 'Here the bare pack is the foam body with plies on both faces, before the outsole' : ''),
    `Loop on the load line, stopped with tape. Dial gauges that show ${step}s: gauge 1 on the load line, gauge 2 on the tread line (square across; not the ball line from joint to joint, which slants). Both on the middle of the pack; zero both with the empty loop on.`,
    'Lower the mass on slowly, read after half a minute, take it off: both must come back to 0.02 mm, else the clamp slipped. Three times; write each down.',
    sentences(`Where gauge 2 shows more than it should, the clamp gives: take ${rounded(ratio, 1)} ${step}s off gauge 1 for each ${step} of that`, 'Where that comes to more than a fifth, clamp better instead'),
    `The finished shoe likewise, sole up, last in, upper between padded blocks, ${kgWords(finished.mass)} on a strap round the toe at ${mm(finished.loadAt, 0)}. Foam and upper give: put gauge 1 right by gauge 2.`,
  ].map((text, i) => paragraph(`${i + 1}. ${text}`, WIDTH, SMALL));
}

function readingsTable({ bare, finished }: BenchTest, { pack: { asked: { mass }, assessed: { bench, walking } } }: ShoePlies, flow: FlowIn): Block[] {
  const row = ({ of, mass: hung, loadAt, ball, moment, strain, droop, band, atBall }: Hanging): string[] =>
    [of, kgWords(hung), mm(loadAt - ball, 0), `${rounded(moment, 1)} N·m`, `${rounded(strain * 100, 2)} %`, droopWords(droop), band ? bandWords(band) : 'none', droopWords(atBall)];
  return [
    flow.heading('What is to be read'),
    ...flow.table([
      { title: '', width: 28 }, { title: 'Mass', width: 19, right: true }, { title: 'Lever', width: 17, right: true }, { title: 'Moment', width: 22, right: true }, { title: 'Plies', width: 18, right: true }, { title: 'Gauge 1', width: 24, right: true }, { title: 'good from to', width: 36, right: true }, { title: 'Gauge 2', width: 22, right: true },
    ], [bare, finished].map((one) => ({ cells: row(one) })), SMALL),
    flow.paragraph(sentences(
      `Lever and moment from the tread line; the shoe gets ${BENCH_MOMENT} N·m for each kg of body mass (${rounded(mass, 0)} kg)`,
      bare.band ? `Good: whatever keeps to bend, walking and stumble, with plies off by up to ${rounded(HAND_LAID_WITHIN * 100, 0)} % and the core as soft or stiff as it is sold` : 'No reading makes this pack good: even as reckoned it does not keep to what must be (first page)',
      bare.strain < 0.001 ? `More than ${kgWords(bare.mass)} is too much to hang: plies are strained by less than 0.1 % here` : '',
      `Bench and walking are not alike: under ${rounded(bench.load.moment / 1000, 1)} N·m on the bench the sole bends ${deg(inDegrees(bench.bend), 2)}, under the ${rounded(walking.load.moment / 1000, 0)} N·m that walking asks ${deg(inDegrees(walking.bend), 2)}`,
    ), WIDTH, SMALL),
    flow.paragraph(`Type into the sheet (order.stiffener.bench): mass ${kgWords(bare.mass)}, lever ${mm(bare.loadAt - bare.ball, 0)}, droop: gauge 1 as read, atTread: gauge 2 as read. It puts gauge 1 right by gauge 2 itself.`, WIDTH, SMALL),
  ];
}

const wantedWords = (asked: ShoePlies['pack']['asked']): string => (limitOf(asked) === GRADE_UP_TO[asked.wanted] ? `"${asked.wanted}"` : `at most ${deg(inDegrees(limitOf(asked)))}`);

/** Spans of readings; the last has no end. Ends are told in whole steps of the gauge, so that every reading belongs to one row. */
function meaning({ bare, rows, more }: BenchTest, wanted: string, { side }: ShoePlies, flow: FlowIn): Block[] {
  const step = flow.units === 'in' ? MM_PER_INCH / 1000 : 0.01, down = (droop: Mm): Mm => Math.floor(droop / step + 1e-9) * step, from = (droop: Mm): string => rounded(down(droop) + step, 2);
  const read = ({ droop: [a, b] }: ReadingRow): string => (b === Infinity ? `over ${droopWords(down(a))}` : a === 0 ? `up to ${droopWords(down(b))}` : `${from(a)} to ${droopWords(down(b))}`);
  const times = ({ span: { from: a, to: b } }: ReadingRow): string => (b === Infinity ? `over ${timesNumber(a)}` : a === 0 ? `up to ${timesNumber(b)}` : `${timesNumber(a)} to ${timesNumber(b)}`);
  const bends = ({ span: { reading }, bend: [a, b] }: ReadingRow): string => (reading.means === 'test again' ? '–' : b === Infinity ? `over ${degrees(a)}` : `${degrees(a)} to ${degrees(b)}`);
  return [
    flow.heading(`What it means: bare pack, ${kgWords(bare.mass)}, gauge 1; wanted ${wanted}`),
    ...flow.table([{ title: 'You read', width: 32, right: true }, { title: 'Times as far as reckoned', width: 40, right: true }, { title: 'Finished sole, bench', width: 38, right: true }, { title: 'It is', width: WIDTH - 110 }],
      rows.map((row) => ({ cells: [{ text: read(row), bold: true }, times(row), bends(row), { text: readingWords(row.span.reading), bold: true }] })), SMALL),
    flow.paragraph(sentences(
      rows.some(({ span: { reading } }) => reading.means === 'add') ? `Added: ${more.ply.name}, ${directionWords(more, side)}, all along (${ADDED_SIDES}), on faces roughened wet and wiped clean; put it into the sheet (order.stiffener.plies) and prove it again` : '',
      'A stiffer reading tells of less bend; it never makes a pack stronger',
    ), WIDTH, SMALL),
  ];
}
const degrees = (bend: Rad): string => deg(inDegrees(bend), 2);

const ROW: Mm = 8;
function writing({ bare, finished }: BenchTest, { units }: FlowIn): Block[] {
  const columns: readonly Column[] = [{ title: `Read, ${units}`, width: 34 }, ...['1st', '2nd', '3rd', 'Gauge 2', 'Put right', 'Weight, g', 'Thick, tread', 'Date, who'].map((title) => ({ title, width: 19 }))];
  const line = (text: string, last: boolean): Block => ({
    height: ROW, staysWithNext: !last,
    marks: (left, top) => [words(text, [left + 1.2, top + ROW / 2 + 1], { bold: true }), stroke([left, top + ROW], [left + WIDTH, top + ROW], 'thin', 'ink'), ...columns.slice(1).map((_, i) => stroke([left + 34 + i * 19, top], [left + 34 + i * 19, top + ROW], 'thin', 'ink'))],
  });
  return [...table(columns, [], SMALL), line(`bare, ${kgWords(bare.mass)}`, false), line(`shoe, ${kgWords(finished.mass)}`, true)];
}
