import { beforeAll, describe, expect, test } from 'vitest';
import { designJson } from '../../src/exports/designJson.ts';
import { gaugeFiles, wedgeFiles } from '../../src/exports/gaugeFiles.ts';
import { printable } from '../../src/exports/pdf.ts';
import { repairCardPdf } from '../../src/exports/repairCard.ts';
import { sha256 } from '../../src/exports/sha256.ts';
import { weldedStl } from '../../src/geometry/stlMesh.ts';
import { trialRecordPdf } from '../../src/exports/trialRecord.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { boundsOf, faultsOf, volumeOf } from '../../src/geometry/mesh.ts';
import { enclosedArea } from '../../src/geometry/path.ts';
import { loadBooleans } from '../../src/making/booleans.ts';
import { madeFor, needsKernel, type Made } from '../../src/making/made.ts';
import { designOf, JOBS } from './jobs.ts';
import { readPdf } from './pdfReader.ts';

const fitting = { ...JOBS.pair, making: readMaking({ gauges: {}, wedges: {}, chordGap: 0.2 }) }, design = designOf(fitting);
let made: Made, files: ReturnType<typeof gaugeFiles>;
beforeAll(async () => { made = madeFor(design, await loadBooleans()); files = [...gaugeFiles(design, made), ...wedgeFiles(design, made)]; });
const file = (name: string): Uint8Array => files.find((one) => one.name === `K-204_${name}`)!.bytes;
const said = (text: string): string => Buffer.from(printable(text), 'latin1').toString('latin1');

test('gauges need no solid kernel, wedges do', () => {
  expect([needsKernel(readMaking({ gauges: {} })), needsKernel(readMaking({ wedges: {} }))]).toEqual([false, true]);
});

test('each shoe has its gauges, and the rocker its trial', () => expect(files.map(({ name }) => name.replace('K-204_', ''))).toEqual([
  'left_gauges.dxf', 'left_profile-gauge-inner-side.stl', 'left_profile-gauge-outer-side.stl', 'left_height-gauge.stl', 'left_heel-block-slot-above.stl', 'left_heel-block-slot-below.stl',
  'left_toe-spring-wedge.stl', 'left_repairers-gauge.stl', 'left_repair-card.pdf',
  'right_gauges.dxf', 'right_profile-gauge-inner-side.stl', 'right_profile-gauge-outer-side.stl', 'right_height-gauge.stl', 'right_toe-spring-wedge.stl', 'right_repairers-gauge.stl', 'right_repair-card.pdf',
  'left_trial-base.stl', ...[1, 2, 3, 4, 5, 6].map((n) => `left_trial-wedge-${n}.stl`), 'left_trial-templates.dxf', 'left_trial-record.pdf',
]));

test('every solid is closed; a flat one is as thick as the board, and its area times that', () => {
  for (const { name, bytes } of files) if (name.endsWith('.stl')) expect([name, faultsOf(weldedStl(bytes))]).toEqual([name, []]);
  const { thickness } = fitting.making.board, part = made.gauges[0]!.parts[0]!, solid = weldedStl(file('left_profile-gauge-inner-side.stl')), { least, most } = boundsOf(solid);
  expect(most[2] - least[2]).toBeCloseTo(thickness, 5);
  expect(volumeOf(solid) / (enclosedArea(part.outline) * thickness)).toBeCloseTo(1, 3);
});

describe('the papers', () => {
  const papers = ['left_repair-card.pdf', 'right_repair-card.pdf', 'left_trial-record.pdf'];
  const pagesIn = (name: string) => readPdf(file(name)), wordsIn = (name: string): string => pagesIn(name).flatMap(({ words }) => words).join(' ');

  test.each(papers)('%s has two lines of 100 mm on each page, and the job', (name) => {
    for (const { strokes, words } of pagesIn(name)) {
      const bars = strokes.map(({ from: [ax, ay], to: [bx, by] }) => [Math.abs(bx - ax), Math.abs(by - ay)] as const);
      expect([bars.filter(([x, y]) => Math.abs(x - 100) < 0.001 && y < 0.001).length, bars.filter(([x, y]) => Math.abs(y - 100) < 0.001 && x < 0.001).length]).toEqual([1, 1]);
      expect(words.join(' ')).toContain('K-204');
    }
  });

  test('the card names the rubber, what to leave, and the gauge in true size', () => {
    const card = wordsIn('left_repair-card.pdf');
    for (const words of ['microcellular rubber, 2.0 mm', 'Leave as it is', 'do not drill, nail or heat it', 'worn 2 mm', "LEFT repairer's gauge", 'true size, 1 : 1', 'Never one shoe only']) expect(card).toContain(said(words));
    // Straight strokes of the gauge on paper: its base is as long as the part.
    const { outline } = made.gauges[0]!.parts.at(-1)!, base = outline[0]!, length = base.kind === 'line' ? Math.abs(base.to[0] - base.from[0]) : NaN;
    const [first, second] = pagesIn('left_repair-card.pdf').slice(1, 3), level = (page: typeof first) => page!.strokes.filter(({ width }) => width > 0.4).map(({ from, to }) => Math.abs(to[0] - from[0])).sort((a, b) => b - a)[1]!;
    expect(level(first) + level(second)).toBeCloseTo(length + 10, 1);
  });

  test('the card counts all its pages, and tells the toe spring as the wedge is cut', () => {
    for (const { side, toeEnd } of made.gauges) {
      const pages = pagesIn(`${side}_repair-card.pdf`), counts = pages.flatMap(({ words }) => words.flatMap((one) => /(?:sheet|page) (\d+) of (\d+)/.exec(one)?.slice(1).map(Number).join('/') ?? []));
      expect(counts).toEqual(pages.map((_, i) => `${i + 1}/${pages.length}`));
      expect(wordsIn(`${side}_repair-card.pdf`)).toContain(`${toeEnd.height.toFixed(1)} mm`);
      expect(made.gauges.find((one) => one.side === side)!.parts.find(({ name }) => name.includes('wedge'))!.letters.some(({ text }) => text.startsWith(toeEnd.height.toFixed(1)))).toBe(true);
    }
  });

  test('the card and the gauge of a raise have no word of a rocker', () => {
    const rolling = /\barcs?\b|\bflat\b|level sole is wrong|\brolls?\b|stiffener: do|carbon|epoxy/, lettersOf = (i: number): string => made.gauges[i]!.parts.at(-1)!.letters.map(({ text }) => text).join(' ');
    expect([rolling.test(wordsIn('left_repair-card.pdf')), rolling.test(lettersOf(0))]).toEqual([true, true]);
    // A raise may rise to the toe on an arc of its own, and its outsole is drawn laid flat.
    const told = (text: string): string | undefined => rolling.exec(text.replace(/toe arc|laid flat/gi, ''))?.[0];
    expect([told(wordsIn('right_repair-card.pdf')), told(lettersOf(1))]).toEqual([undefined, undefined]);
  });

  test('the record has a row for each wedge, the signs, the cautions, and who decides', () => {
    const record = wordsIn('left_trial-record.pdf');
    for (const words of ['apex 5.0 mm back, no flat', 'planned', 'What is seen, and what to change', "prescriber's figure", 'never alone', 'The prescriber decides', 'physiotherapist']) expect(record).toContain(said(words));
    expect(record).toContain(said(`put ${made.wedges[0]!.trial.higher.toFixed(1)} mm under the right shoe too`));
  });
});

test('cures are told in the step and the flat that are ordered', () => {
  const order = { step: 6, flat: 20 }, record = readPdf(trialRecordPdf(design, { ...made.wedges[0]!, order })).flatMap(({ words }) => words).join(' ');
  for (const words of ['apex 6.0 mm back', 'apex 6.0 mm forward', 'a flat of 20.0 mm']) expect(record).toContain(words);
});

test('no cure is told that the set has no wedge for, and of a pair of rockers how the other one stands', () => {
  const [one] = made.wedges, { trial } = one!, wordsOf = (on: typeof design, trialOf: typeof trial): string => readPdf(trialRecordPdf(on, { ...one!, trial: trialOf })).flatMap(({ words }) => words).join(' ');
  const without = wordsOf(design, { ...trial, shapes: trial.shapes.filter(({ variant: { apexBy } }) => apexBy <= 0) });
  expect([without.includes('mm forward, or a flat'), without.includes('the set has no wedge with the apex moved'), without.includes('5.0 mm back, or')]).toEqual([false, true, true]);
  const both = designOf({ ...JOBS.rockers, making: readMaking({ wedges: {}, chordGap: 0.2 }) });
  expect(wordsOf(both, { ...trial, higher: 9 })).toMatch(/on its own trial base and wedge meanwhile; put [\d.]+ mm more under it, heel to toe\. Where it is walked on as it is, put 9\.0 mm/);
});

test('the numbers of both stand beside the shoe', () => {
  const { shoes, making } = JSON.parse(designJson(design, made));
  expect([making.gauges, making.wedges]).toEqual([{ depthMm: 30 }, { stepMm: 5, flatMm: 30 }]);
  expect(shoes[0].gauges.heights[0]).toMatchObject({ place: 'edge at seat', withinMm: 1 });
  expect([shoes[0].trial.leastSkinMm, shoes[0].trial.wedges.length, shoes[1].trial]).toEqual([1.5, 6, undefined]);
});

test('the same design gives the same bytes', () => {
  expect(sha256(repairCardPdf(design, made.gauges[1]!))).toBe(sha256(file('right_repair-card.pdf')));
  expect(sha256(trialRecordPdf(design, made.wedges[0]!))).toBe(sha256(file('left_trial-record.pdf')));
});
