import { deg, mm, rounded, sentences } from '../checks/say.ts';
import type { Design } from '../checks/design.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { benchTestOf, CLAMP_BEHIND, HAND_LAID_WITHIN, type BenchTest, type Hanging, type ReadingRow } from '../making/plies/bench.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { GRADE_UP_TO } from '../stiffener/grades.ts';
import { BENCH_MOMENT } from '../stiffener/loads.ts';
import { limitOf } from '../stiffener/search.ts';
import { arrowHead, drawn, filled, polyline, stroke, words, type Mark } from './drawing.ts';
import { framed, heading, paragraph, table, type Block, type Column } from './flow.ts';
import { WIDTH } from './textPaper.ts';

/** The page on which a pack is proved: how it is clamped and loaded, what is to be read, and what a reading means. */
export function plyBench(design: Design, { side, pack, pack: { asked, stiffener } }: ShoePlies): Block[] {
  const bench = benchTestOf(pack);
  const title: Block = { ...heading(`Bench test: ${side} shoe of ${design.fitting.job.reference}`), newPage: true };
  if (!bench) return [title, paragraph('The pack is too short behind or ahead of the ball to be clamped and loaded like this.', WIDTH)];
  return [
    title, framed(['Stand clear, goggles on. Hang the mass low, a hand above the floor, feet away.'], WIDTH),
    setUp(bench), ...howTo(bench, stiffener.edges ?? 0, pack.underFoam ?? false), ...readingsTable(bench, asked.mass), ...meaning(bench, wantedWords(asked)), ...writing(bench),
  ];
}

const kg = (value: number): string => `${rounded(value, 2).replace(/\.?0+$/, '')} kg`;
const hundredths = (value: Mm): string => mm(value, 2);

/** A sketch from the side: clamp, pack, both gauges, the mass hung low. */
function setUp({ bare }: BenchTest): Block {
  return {
    height: 49,
    marks: (left, top) => {
      const y = top + 17, clamp = left + 62, ball = left + 76, load = left + 128, tip = left + 140, floor = y + 31, block = (from: Mm, to: Mm): Mark[] => {
        const path = polyline([[left + 22, from], [clamp, from], [clamp, to], [left + 22, to]], true);
        return [filled(path, 'foam'), drawn(path, 'visible')];
      };
      const gauge = (x: Mm, name: string): Mark[] => [stroke([x, y - 11], [x, y - 2.6], 'thin', 'ink'), arrowHead([x, y - 1], [0, 1], 'ink'), ...ring([x, y - 13.5], 2.5), words(name, [x + 4.5, y - 12], { bold: true })];
      const place = (x: Mm, down: Mm, text: string, to: Mm): Mark[] => [stroke([x, y + 1], [x, y + down], 'thin', 'pencil'), stroke([x, y + down], [to - 1, y + down], 'thin', 'pencil'), words(text, [to, y + down + 1.1])];
      const bent = polyline([[clamp, y + 0.5], [ball + 16, y + 1.4], [load - 18, y + 4.2], [load, y + 7.2], [tip, y + 9.3]]);
      return [
        ...block(y - 11, y - 0.9), ...block(y + 0.9, y + 11), drawn(polyline([[left + 14, y], [tip, y]]), 'visible'), drawn(bent, 'hidden'),
        stroke([left + 4, y + 11], [clamp, y + 11], 'visible', 'ink'), words('bench', [left + 4, y + 15]), words('hardwood blocks', [left + 42, y + 7], { anchor: 'middle' }), words('pack, foot side down', [left + 14, y - 13.5]),
        ...gauge(load, 'gauge 1'), ...gauge(ball, 'gauge 2'), ...place(clamp, 20, `clamp ends at ${mm(bare.clampAt, 0)}`, left + 66), ...place(ball, 13, `ball line at ${mm(bare.ball, 0)}`, left + 80),
        stroke([load, y + 1], [load, y + 20], 'thin', 'ink'), drawn(polyline([[load - 6, y + 20], [load + 6, y + 20], [load + 6, y + 28], [load - 6, y + 28]], true), 'visible'), words(kg(bare.mass), [load + 8, y + 25.5], { bold: true }),
        words(`load line at ${mm(bare.loadAt, 0)}`, [load + 3, y + 15]), words('droop', [tip + 2, y + 6]), stroke([left + 96, floor], [left + 160, floor], 'thin', 'ink'), words('floor', [left + 162, floor + 1]),
      ];
    },
  };
}

const ring = ([x, y]: readonly [Mm, Mm], radius: Mm): Mark[] => [drawn([0, Math.PI].map((start) => ({ kind: 'arc', centre: [x, y], radius, start, sweep: Math.PI }) as const), 'thin')];
function howTo({ bare, finished }: BenchTest, edges: Mm, underFoam: boolean): Block[] {
  const ratio = (bare.loadAt - bare.clampAt) / CLAMP_BEHIND;
  return [
    sentences(`Clamp the pack foot side down between hardwood blocks cut to its camber, both ending square across at ${mm(bare.clampAt, 0)} from the heel end of the last`, 'A camber pressed flat by the blocks is lost to the test', edges > 0 ? 'The lower block goes between the turned-up edges' : '', underFoam ? 'Here the bare pack is the foam body with plies on both faces, before the outsole' : ''),
    'Loop at the load line, stopped with tape. Dial gauges that show hundredths: gauge 1 on the load line, gauge 2 on the ball line, both on the middle of the pack; zero both with the empty loop on.',
    'Lower the mass on slowly, read after half a minute, take it off: both must come back to 0.1 mm, else the clamp slipped. Three times; write each down.',
    sentences(`Where gauge 2 shows more than it should, the clamp gives: take ${mm(ratio / 100, 2)} off gauge 1 for each hundredth`, 'Where that comes to more than a fifth, clamp better instead'),
    `The finished shoe likewise, sole up, last in, upper between padded blocks, ${kg(finished.mass)} on a strap round the toe at ${mm(finished.loadAt, 0)}. Foam and upper give: put gauge 1 right by gauge 2.`,
  ].map((text, i) => paragraph(`${i + 1}. ${text}`, WIDTH));
}

function readingsTable({ bare, finished }: BenchTest, mass: number): Block[] {
  const row = ({ of, mass: hung, loadAt, ball, moment, strain, droop, band, atBall }: Hanging): string[] =>
    [of, kg(hung), `${mm(loadAt - ball, 0)}`, `${rounded(moment, 1)} N·m`, `${rounded(strain * 100, 2)} %`, mm(droop, 2), `${rounded(band[0], 2)} to ${mm(band[1], 2)}`, hundredths(atBall)];
  return [
    heading('What is to be read'),
    ...table([
      { title: '', width: 28 }, { title: 'Mass', width: 19, right: true }, { title: 'Lever', width: 17, right: true }, { title: 'Moment', width: 22, right: true }, { title: 'Plies', width: 18, right: true }, { title: 'Gauge 1', width: 24, right: true }, { title: 'good from to', width: 36, right: true }, { title: 'Gauge 2', width: 22, right: true },
    ], [bare, finished].map((one) => ({ cells: row(one) }))),
    paragraph(`Lever and moment from the ball line; the shoe gets ${BENCH_MOMENT} N·m for each kg of body mass (${rounded(mass, 0)} kg). Good: plies off by up to ${rounded(HAND_LAID_WITHIN * 100, 0)} %, the core as soft or stiff as it is sold, a camber flattened or whole.${bare.strain < 0.001 ? ` More than ${kg(bare.mass)} is too much to hang: plies are strained by less than 0.1 % here.` : ''}`, WIDTH),
    paragraph(`On the sheet (order.stiffener.bench): mass ${kg(bare.mass)}, lever ${mm(bare.loadAt - bare.ball, 0)}, droop: gauge 1, put right, times ${rounded(bare.onSheet, 2)}.`, WIDTH),
  ];
}

const wantedWords = (asked: ShoePlies['pack']['asked']): string => (limitOf(asked) === GRADE_UP_TO[asked.wanted] ? `"${asked.wanted}"` : `at most ${deg(inDegrees(limitOf(asked)))}`);

/** So many additions are told with what they do. */
const TOLD = 3;

function meaning({ bare, rows, additions }: BenchTest, wanted: string): Block[] {
  const add = ({ add: one }: ReadingRow): string => (one === 'nothing' ? 'nothing' : one?.words ?? 'lay it anew, stiffer');
  const softer = (share: number): string => (Math.abs(share) < 0.005 ? 'as reckoned' : `${rounded(Math.abs(share) * 100, 0)} % ${share > 0 ? 'softer' : 'stiffer'}`), [first] = additions;
  return [
    heading(`What it means: bare pack, ${kg(bare.mass)}, gauge 1`),
    ...table([{ title: 'You read', width: 24, right: true }, { title: 'The pack is', width: 32 }, { title: 'The finished sole bends', width: 44, right: true }, { title: 'which is', width: 26 }, { title: `For ${wanted} add`, width: WIDTH - 126 }],
      rows.map((row) => ({ cells: [{ text: mm(row.droop, 2), bold: true }, softer(row.softer), deg(inDegrees(row.bend)), row.grade, add(row)] }))),
    paragraph(sentences(
      first ? `Added: ${first.ply}, reckoned for this pack: ${additions.slice(0, TOLD).map(({ words: what, bends }) => `${what} ${rounded((1 - bends) * 100, 0)} % less bend`).join(', ')}` : '',
      'Only on faces roughened wet and wiped clean; prove it again',
    ), WIDTH),
  ];
}

const ROW: Mm = 8.5;
function writing({ bare, finished }: BenchTest): Block[] {
  const columns: readonly Column[] = [{ title: 'Read, mm', width: 34 }, ...['1st', '2nd', '3rd', 'Gauge 2', 'Put right', 'Weight, g', 'Thick, ball', 'Date, who'].map((title) => ({ title, width: 19 }))];
  const line = (text: string, last: boolean): Block => ({
    height: ROW, staysWithNext: !last,
    marks: (left, top) => [words(text, [left + 1.2, top + ROW / 2 + 1], { bold: true }), stroke([left, top + ROW], [left + WIDTH, top + ROW], 'thin', 'ink'), ...columns.slice(1).map((_, i) => stroke([left + 34 + i * 19, top], [left + 34 + i * 19, top + ROW], 'thin', 'ink'))],
  });
  return [...table(columns, []), line(`bare, ${kg(bare.mass)}`, false), line(`shoe, ${kg(finished.mass)}`, true)];
}
