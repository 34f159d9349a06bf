import { beforeAll, describe, expect, test } from 'vitest';
import { figuresOf, inWords, stationsOf } from '../../src/checks/figures.ts';
import { cautionsFor } from '../../src/checks/cautions.ts';
import type { Design } from '../../src/checks/design.ts';
import { designJson } from '../../src/exports/designJson.ts';
import { filesFor, type NamedFile } from '../../src/exports/fileSet.ts';
import { allFiguresPdf } from '../../src/exports/allFigures.ts';
import type { Checksum } from '../../src/exports/figureSections.ts';
import { printable } from '../../src/exports/pdf.ts';
import { sha256 } from '../../src/exports/sha256.ts';
import { weldedStl } from '../../src/geometry/stlMesh.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import type { MouldOrder } from '../../src/fitting/making.ts';
import type { Measure } from '../../src/fitting/measure.ts';
import { boundsOf, faultsOf, volumeOf } from '../../src/geometry/mesh.ts';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { ALL_JOBS, designOf, filesOf, JOBS, madeOf, remembered, workedOut } from './jobs.ts';
import { readPdf, type PdfPage } from './pdfReader.ts';

let booleans: Booleans;
beforeAll(async () => { booleans = await loadBooleans(); });

const MOULD: MouldOrder = {
  part: 'foam body', cast: { name: 'self-skinning PU', density: 0.5, densityBasis: 'as on the sheet', shrinkBasis: 'as on the sheet' }, by: 'routed', closing: 'clamps', bolt: 6.6, ledge: 20,
  draft: degrees(3), shrink: [1.012, 1.012, 1.02], rim: 20, floor: 12, dowel: 8, pourHole: 12, ventHole: 3, split: false,
};
const withMould = (fitting: Fitting, change: Partial<MouldOrder> = {}): Fitting => ({ ...fitting, making: { ...fitting.making, mould: { ...MOULD, ...change } } });
const jsonOf = (design: Design): string => designJson(design, madeOf(design));
const sheetOf = (design: Design, sums: readonly Checksum[] = []): Uint8Array => allFiguresPdf(design, sums, madeOf(design));
const names = (files: readonly NamedFile[]): string[] => files.map(({ name }) => name);
const file = (files: readonly NamedFile[], ending: string): Uint8Array => files.find(({ name }) => name.endsWith(ending))!.bytes;

describe('the files of a job', () => {
  test('each shoe its solids and outlines, then drawing, numbers, job sheet and all figures', () => expect(names(filesOf(JOBS.pair))).toEqual([
    'K-204_left_sole.stl', 'K-204_left_foam.stl', 'K-204_left_outsole.stl', 'K-204_left_side.dxf', 'K-204_left_outlines.dxf', 'K-204_left_outsole-flat.dxf',
    'K-204_right_sole.stl', 'K-204_right_foam.stl', 'K-204_right_outsole.stl', 'K-204_right_side.dxf', 'K-204_right_outlines.dxf', 'K-204_right_outsole-flat.dxf',
    'K-204_drawing.svg', 'K-204_rolling.svg', 'K-204_rolling.pdf', 'K-204_design.json', 'K-204_job-sheet.pdf', 'K-204_all-figures.pdf',
  ]));

  test('a mould comes when the sheet asks for one, in halves where it is split', () => {
    expect(names(filesOf(withMould(JOBS.alone))).filter((name) => name.includes('mould'))).toEqual(['K-206_right_mould-cavity.stl', 'K-206_right_mould-lid.stl', 'K-206_right_mould.dxf']);
    expect(names(filesOf(withMould(JOBS.turned, { split: true }))).filter((name) => name.includes('right_mould')))
      .toEqual(['K-207_right_mould-cavity-inner.stl', 'K-207_right_mould-cavity-outer.stl', 'K-207_right_mould-lid.stl', 'K-207_right_mould.dxf']);
  });

  test('a mould the sole cannot leave, or one without the kernel, is refused in words', () => {
    expect(() => filesOf(withMould(JOBS.turned))).toThrow(/the right sole flares out by 6.0°/);
    expect(() => filesFor(designOf(withMould(JOBS.alone)))).toThrow(/needs the solid kernel/);
  });

  test('while a stop is left that nobody took on his own name there are no files, and the codes are said', () => {
    expect(() => filesOf({ ...JOBS.alone, overrides: [] })).toThrow(/^nothing may be made while there are stops .*got OPEN_WOUND/);
    expect(() => filesOf({ ...JOBS.alone, overrides: [{ ...JOBS.alone.overrides[0]!, side: 'left' }] })).toThrow(RangeError);
    expect(filesOf(JOBS.alone).length).toBeGreaterThan(6);
  });

  test.each(Object.keys(ALL_JOBS))('%s: every solid is closed when read back, none is empty', (name) => {
    for (const { bytes } of filesOf(ALL_JOBS[name]!).filter((one) => one.name.endsWith('.stl'))) {
      expect(bytes.length).toBe(84 + 50 * new DataView(bytes.buffer).getUint32(80, true));
      expect(faultsOf(weldedStl(bytes))).toEqual([]);
    }
  });

  test('a right shoe leaves as the mirror image of its left twin', () => {
    const right = JOBS.alone.shoes.right!, twin = { ...JOBS.alone, shoes: { left: { ...right, side: 'left' } } } satisfies Fitting;
    const [a, b] = [filesOf(JOBS.alone), filesOf(twin)].map((files) => weldedStl(file(files, '_foam.stl'))), [ra, rb] = [boundsOf(a!), boundsOf(b!)];
    expect([ra.least[1], ra.most[1]]).toEqual([-rb.most[1], -rb.least[1]]);
    expect(volumeOf(a!)).toBeCloseTo(volumeOf(b!), 6);
    expect(ra.least[1]).not.toBeCloseTo(rb.least[1], 1);
  });

  test('the same sheet gives the same bytes', () => {
    const sums = (files: readonly NamedFile[]): string[] => files.map(({ name: file, bytes }) => `${file} ${sha256(bytes)}`);
    expect(sums(filesFor(workedOut(JOBS.turned), booleans))).toEqual(sums(filesOf(JOBS.turned)));
  });

  test('another number on the sheet gives other bytes, so the check above can fail', () => {
    const changed = { ...JOBS.pair, job: { ...JOBS.pair.job, date: '2025-03-02' } };
    expect(sha256(file(filesOf(changed), '.pdf'))).not.toBe(sha256(file(filesOf(JOBS.pair), '.pdf')));
  });
});

describe('the all-figures paper', () => {
  const pagesOf = remembered((fitting: Fitting): PdfPage[] => readPdf(sheetOf(designOf(fitting), [{ name: 'K_left_sole.stl', sha256: 'ab'.repeat(32) }])));
  const all = (pages: readonly PdfPage[]): string => pages.flatMap(({ words }) => words).join(' ');
  const said = (text: string): string => Buffer.from(printable(text), 'latin1').toString('latin1');

  test.each(Object.keys(ALL_JOBS))('%s: 100 mm are 100 mm on the paper, both ways', (name) => {
    const pages = pagesOf(ALL_JOBS[name]!);
    expect([pages[0]!.width, pages[0]!.height]).toEqual([expect.closeTo(210, 1), expect.closeTo(297, 1)]);
    for (const { strokes } of pages.slice(0, 1)) {
      const lengths = strokes.map(({ from: [ax, ay], to: [bx, by] }) => [Math.abs(bx - ax), Math.abs(by - ay)] as const);
      expect(lengths.some(([x, y]) => Math.abs(x - 100) < 0.001 && y < 0.001)).toBe(true);
      expect(lengths.some(([x, y]) => x < 0.001 && Math.abs(y - 100) < 0.001)).toBe(true);
    }
    expect(pages[0]!.words).toContain('100 mm on paper, both ways: else the print is not to scale');
  });

  test.each(Object.keys(ALL_JOBS))('%s: every figure, every measure, every finding and every caution is there', (name) => {
    const fitting = ALL_JOBS[name]!, design = designOf(fitting), text = all(pagesOf(fitting));
    for (const shoe of design.shoes) {
      for (const figure of figuresOf(shoe, fitting)) expect(text).toContain(said(inWords(figure)));
      for (const { x } of stationsOf(shoe)) expect(text).toContain(` ${Number(x.toFixed(1))} `);
    }
    const words = (sentence: string): string[] => said(sentence).split(' ').slice(0, 6);
    for (const sentence of [...design.findings.map((finding) => finding.text), ...cautionsFor(fitting)]) for (const word of words(sentence)) expect(text).toContain(word);
    expect(text).toContain('ab'.repeat(32));
  });

  test('every page names job, date and its number, and says what the sheet does not do', () => {
    const pages = pagesOf(JOBS.pair);
    pages.forEach(({ words }, i) => {
      for (const text of [`sheet ${i + 1} of ${pages.length}`, 'K-204   2025-03-01', 'This sheet computes shape, not therapy; the prescriber decides.']) expect(words).toContain(text);
    });
  });

  test('a stop somebody took on his own name stands on every page, and only then', () => {
    const taken = 'STOP taken by Dr A. Example: wound closed since 2025-02-20, dressing removed';
    for (const { words } of pagesOf(JOBS.alone)) expect(words.join(' ')).toContain(taken);
    expect(all(pagesOf(JOBS.pair))).not.toContain('STOP taken');
  });

  test('where a measure came from is said beside it', () => {
    const text = all(pagesOf(JOBS.pair));
    for (const word of ['converted', 'estimated', 'default', 'trochanter to floor, standing', '35.04 in × 25.4']) expect(text).toContain(said(word));
  });

  test('risks are said to be none only where they were asked about', () => {
    const { wearer } = JOBS.pair, risks = (risksAsked: boolean): string => all(pagesOf({ ...JOBS.pair, wearer: { ...wearer, risksAsked } }));
    expect(risks(true)).toMatch(/Risks named none/);
    expect(risks(false)).toMatch(/Risks named not asked about/);
  });

  test('a default that no figure rests on is no measure of the job, one that was given is', () => {
    const pitch = { value: 12, origin: 'default', rule: '12 mm for an ordinary shoe (common practice)' } as const, right = JOBS.pair.shoes.right!;
    const withPitch = (one: Measure): Fitting => ({ ...JOBS.pair, shoes: { right: { ...right, last: { ...right.last, pitch: one } }, left: JOBS.pair.shoes.left! } });
    expect(all(pagesOf(withPitch(pitch)))).not.toContain('for an ordinary shoe');
    expect(all(pagesOf(withPitch({ value: 12, origin: 'measured', how: 'rule beside the heel' })))).toContain('rule beside the heel');
    expect(all(pagesOf(JOBS.pair))).toContain('tilt at heel strike');
  });

  test('says that thickness is upright, which face of a cast is wider, and that no cutter was on the sheet', () => {
    const plain = withMould(JOBS.pair), tooled: Fitting = { ...JOBS.pair, making: { ...JOBS.pair.making, tool: { diameter: 12, reach: 60, end: 'ball' } } };
    const text = all(pagesOf(JOBS.pair)), design = designOf(plain);
    expect(text).toContain('the least thicknesses asked for are upright too');
    expect(text).toContain('Cutter reach not checked: no tool on the sheet');
    expect(all(pagesOf(tooled))).not.toContain('Cutter reach');
    expect(all(readPdf(sheetOf(design)))).toContain('wider by the draft at the face under the last: trim it there to the feather line');
  });

  test('a sheet in inches has its measures in inches too', () => expect(all(pagesOf({ ...JOBS.pair, units: 'in' }))).toContain('282.0 mm (11.102 in)'));
});

describe('the numbers for other programs', () => {
  interface Read { version: number; shoes: { side: string; figures: { key: string; value: number; unit: string; estimated: boolean }[]; profile?: { kind: string; radiusMm?: number; fromDeg?: number }[]; stations: object[]; roll?: object; measures: Record<string, { value: number; origin: string }> }[]; findings: object[]; cautions: string[] }
  const read = (text: string): Read => JSON.parse(text) as Read;

  test.each(Object.keys(ALL_JOBS))('%s: every figure with its unit, every piece of the profile, stations and findings', (name) => {
    const design = designOf(ALL_JOBS[name]!), json = read(jsonOf(design));
    expect([json.version, json.shoes.length, json.findings.length]).toEqual([1, design.shoes.length, design.findings.length]);
    design.shoes.forEach((shoe, i) => {
      const own = json.shoes[i]!, figures = figuresOf(shoe, design.fitting);
      expect(own.figures.map(({ key }) => key)).toEqual(figures.map(({ key }) => key));
      figures.forEach(({ value, unit, estimated }, k) => expect([own.figures[k]!.unit, own.figures[k]!.estimated, Math.abs(own.figures[k]!.value - value) < 1e-6]).toEqual([unit, estimated, true]));
      expect(own.stations).toHaveLength(stationsOf(shoe).length);
      expect(own.roll !== undefined).toBe(shoe.kind === 'rocker');
      const pieces = partsOf(shoe)?.shape.face.pieces ?? [];
      expect(own.profile?.length ?? 0).toBe(pieces.length);
      pieces.forEach((piece, k) => {
        if (piece.kind !== 'arc') return;
        expect(own.profile![k]!.radiusMm).toBeCloseTo(piece.radius, 5);
        expect(own.profile![k]!.fromDeg).toBeCloseTo(inDegrees(piece.from), 5);
      });
    });
  });

  test('measures keep where they came from, angles are in degrees', () => {
    const { measures } = read(jsonOf(designOf(JOBS.pair))).shoes[0]!;
    expect(measures['foot.strikeAngle']).toMatchObject({ value: 25, unit: 'deg', origin: 'estimated' });
    expect(measures['foot.hipHeight']).toMatchObject({ value: 890, origin: 'converted' });
  });

  test('the order stands as numbers beside its words, in mm and degrees', () => {
    const [left, right] = (JSON.parse(jsonOf(designOf(JOBS.turned))) as { shoes: { orderNumbers: object }[] }).shoes;
    expect(left!.orderNumbers).toMatchObject({ kind: 'match', seatHeightNowMm: 22, ballHeightNowMm: 9, tipMm: 4, outsole: { material: 'microcellular rubber', thicknessMm: 2 } });
    expect(right!.orderNumbers).toEqual({
      kind: 'rocker', apexMm: 0.62 * 268, apexPercent: 62, apexByDefault: false, toe: { rule: 'pivot-to-toe' }, standingFlatMm: 0, crestAngleDeg: 97, strikeDeg: 25,
      stiffenerMm: 1.5, leastThicknessMm: { edge: 4, seat: 8, waist: 8, tread: 8, tip: 5 }, outsole: { material: 'microcellular rubber', thicknessMm: 2 }, foam: 'firm EVA',
      leanDeg: { heelInner: 5, heelOuter: -6, foreInner: 3, foreOuter: 4 }, edgeBeyondMm: { heel: 2, ball: 3, toe: 1 },
    });
    const [alone] = (JSON.parse(jsonOf(designOf(JOBS.alone))) as { shoes: { orderNumbers: { toe: object } }[] }).shoes;
    expect(alone!.orderNumbers.toe).toEqual({ rule: 'given', radiusMm: 260, endAngleDeg: 24 });
  });

  test('what the workshop has and each mould: pieces as in the file names, what is poured, and what it weighs', () => {
    const plain = withMould(JOBS.alone), fitting: Fitting = { ...plain, making: { ...plain.making, tool: { diameter: 12, reach: 60, end: 'ball' }, printBed: { x: 300, y: 220, z: 200 } } };
    const files = filesOf(fitting), json = JSON.parse(Buffer.from(file(files, '_design.json')).toString('utf8')) as { making: object; shoes: { mould: { pieces: string[]; fillMm3: number; partMm3: number; wedgeMm3: number; fillG: number } }[] };
    expect(json.making).toMatchObject({
      tool: { diameterMm: 12, reachMm: 60, end: 'ball' }, printBed: { xMm: 300, yMm: 220, zMm: 200 },
      mould: { part: 'foam body', draftDeg: 3, shrinkPercent: { length: 1.2, width: 1.2, height: 2 }, rimMm: 20, floorMm: 12, dowelMm: 8, pourHoleMm: 12, ventHoleMm: 3, split: false },
    });
    const { mould } = json.shoes[0]!;
    expect(mould.pieces.map((piece) => `K-206_right_mould-${piece}.stl`)).toEqual(names(files).filter((name) => /mould.*stl/.test(name)));
    expect(mould.fillMm3).toBeCloseTo(mould.partMm3 + mould.wedgeMm3, 5);
    const foam = volumeOf(weldedStl(file(files, '_foam.stl')));
    expect(mould.partMm3 / (foam * 1.012 * 1.012 * 1.02)).toBeCloseTo(1, 6);
    // By hand: the cast weighs 0.5 g a cubic centimetre, and the wedge of the draft shrinks with the part.
    expect(mould.fillG).toBeCloseTo(((foam / 1000) * 0.5 * mould.fillMm3) / mould.partMm3, 3);
    expect(JSON.parse(jsonOf(designOf(JOBS.pair)))).toMatchObject({ making: {} });
  });

  test('no more than six places, never minus nought, a new line at the end', () => {
    const text = jsonOf(designOf(JOBS.turned));
    expect(text).not.toMatch(/\d\.\d{7}|-0[,\n]|\de-/);
    expect(text.endsWith('}\n')).toBe(true);
    expect(jsonOf(designOf(JOBS.turned))).toBe(text);
  });
});
