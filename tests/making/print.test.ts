import { beforeAll, describe, expect, test } from 'vitest';
import { layOn } from '../../src/checks/bedFit.ts';
import type { Finding } from '../../src/checks/finding.ts';
import type { PrintOrder } from '../../src/fitting/making.ts';
import { boundsOf, faultsOf, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import type { Point, Point3 } from '../../src/geometry/point.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { laidOn, placedOn } from '../../src/making/print/bed.ts';
import { jointOf } from '../../src/making/print/joint.ts';
import { bestOf, judged, orientationsOf } from '../../src/making/print/orient.ts';
import { printOf } from '../../src/making/print/print.ts';
import { after, applied, centreOf, heading, mirroredTurn, toDown, turned, type Turn } from '../../src/making/print/turns.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { sweptSurface } from '../../src/solid/soleShape.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { designWith, type Part } from '../checks/support.ts';
import { shapes } from '../support/cases.ts';
import { chanceFrom } from '../support/random.ts';

const order: PrintOrder = { part: 'foam body', split: true, pin: 6, clearance: 0.25 };
let kernel: Booleans;
beforeAll(async () => { kernel = await loadBooleans(); });

/** An upright prism over a convex outline. */
function prism(outline: readonly Point[], low: number, high: number): Mesh {
  const n = outline.length, positions = [low, high].flatMap((z) => outline.flatMap(([x, y]) => [x, y, z])), triangles: number[] = [];
  for (let i = 0; i < n; i++) { const j = (i + 1) % n; triangles.push(i, j, n + j, i, n + j, n + i); }
  for (let i = 1; i + 1 < n; i++) triangles.push(0, i + 1, i, n, n + i, n + i + 1);
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}
const box = (x: number, y: number, low: number, high: number): Mesh => prism([[0, 0], [x, 0], [x, y], [0, y]], low, high);
/** A wedge on its edge, 10 long, whose lower face climbs at an angle from level over a run. */
const wedge = (angle: number, run: number): Mesh => turned(prism([[0, 0], [run, run * Math.tan((angle * Math.PI) / 180)], [0, 100]], 0, 10), [[1, 0, 0], [0, 0, -1], [0, 1, 0]]);

describe('what hangs over', () => {
  test('is nothing under a block, and all of a slab in the air, with the air under it', () => {
    expect(judged(box(20, 10, 0, 8))).toEqual({ overhang: 0, under: 0, contact: 200, height: 8, firm: true });
    expect(judged(box(20, 10, 5, 8))).toMatchObject({ overhang: 200, under: 1000, contact: 0 });
  });
  test('counts faces that climb by less than 45° from level, in full, and none that climb by more', () => {
    // By hand: 20 mm of run at 30°, 10 mm long; its air is a prism of the same run.
    const { overhang, under } = judged(wedge(30, 20)), slope = Math.tan(Math.PI / 6);
    expect(overhang).toBeCloseTo((20 / Math.cos(Math.PI / 6)) * 10, 9);
    expect(under).toBeCloseTo((20 * 10 * 20 * slope) / 2, 0);
    expect(judged(wedge(44, 20)).overhang).toBeGreaterThan(0);
    expect(judged(wedge(46, 20)).overhang).toBe(0);
  });
  test('a bar lies on its widest face: each way to lay it with its own face down', () => {
    const ways = new Map(orientationsOf(box(100, 30, 0, 10), kernel).map((one) => [one.name, one]));
    expect(ways.get('upper face down')).toMatchObject({ contact: 3000, overhang: 0, height: 10 });
    expect(ways.get('on its inner edge')).toMatchObject({ height: 30 });
    expect(ways.get('on its inner edge')!.contact).toBeCloseTo(1000, 6);
    expect(ways.has('toe end up')).toBe(false);
    expect(orientationsOf(box(100, 30, 0, 10), kernel, true).find(({ name }) => name === 'toe end up')).toMatchObject({ firm: false });
  });
  test('advice leaves out what sways or does not go on the bed, while anything else does', () => {
    const [a, b, c] = [[9, true], [5, true], [0, false]].map(([overhang, firm]) => ({ overhang, firm, under: 0, contact: 0, height: 1, name: 'upper face down', turn: heading(0) })) as Parameters<typeof bestOf>[0];
    expect(bestOf([a!, b!, c!], () => true)).toBe(b);
    expect(bestOf([a!, b!, c!], (one) => one !== b)).toBe(a);
    expect(bestOf([b!, c!], (one) => one === c)).toBe(c);
  });
});

describe('turns', () => {
  const chance = chanceFrom(5), one = (): number => chance.between(-1, 1), any = (): Point3 => { const v = [one(), one(), one()] as const, size = Math.hypot(...v); return [v[0] / size, v[1] / size, v[2] / size]; };
  test('bring a direction straight down and keep lengths and handedness', () => {
    for (const n of [...Array.from({ length: 40 }, any), [0, 0, 1], [0, 0, -1], [1, 0, 0]] as Point3[]) {
      const turn = toDown(n), down = applied(turn, n);
      [0, 0, -1].forEach((value, k) => expect(down[k]).toBeCloseTo(value, 9));
      const block = turned(box(2, 3, 0, 4), turn);
      expect(volumeOf(block)).toBeCloseTo(24, 9);
    }
  });
  test('of the mirrored part are the mirror of the turned part', () => {
    const turn = after(heading(0.7), toDown(any())), p: Point3 = [3, 5, 7], [x, y, z] = applied(turn, p), mirroredFirst = applied(mirroredTurn(turn), [3, -5, 7]);
    [x, -y, z].forEach((value, k) => expect(mirroredFirst[k]).toBeCloseTo(value, 12));
  });
  test('centre of mass of a wedge, by the handbook a third of the way', () => {
    const [x, y, z] = centreOf(prism([[0, 0], [30, 0], [0, 60]], 2, 12));
    [10, 20, 7].forEach((value, k) => expect([x, y, z][k]).toBeCloseTo(value, 9));
  });
});

describe('on the bed', () => {
  test('a long bar goes on from corner to corner, and the turn that is given does it', () => {
    const bar = box(240, 20, 0, 10), bed = { x: 200, y: 200, z: 50 }, { fits, heading: angle } = laidOn(bar, bed);
    expect(fits).toBe(true);
    const { least, most } = boundsOf(turned(bar, heading(angle)));
    for (const k of [0, 1] as const) expect(most[k] - least[k]).toBeLessThanOrEqual(190 + 1e-6);
    // Closed form: at 45° a bar takes (long + wide) / √2.
    expect(laidOn(bar, { x: 260 / Math.SQRT2 + 10.01, y: 260 / Math.SQRT2 + 10.01, z: 50 }).fits).toBe(true);
    expect(laidOn(bar, { x: 260 / Math.SQRT2 + 9.9, y: 260 / Math.SQRT2 + 9.9, z: 50 }).fits).toBe(false);
    expect(laidOn(bar, { ...bed, z: 14.9 }).fits).toBe(false);
  });
  test('parts stand apart, on the bed, and on the next where it is full', () => {
    const turn: Turn = heading(0), parts = [80, 80, 80, 80, 80].map((long) => ({ mesh: box(long, 60, -5, 5), turn })), placed = placedOn(parts, { x: 200, y: 150, z: 50 });
    expect(placed.map(({ bed }) => bed)).toEqual([0, 0, 0, 0, 1]);
    for (const { by: [x, y, z] } of placed) { expect(x).toBeGreaterThanOrEqual(5); expect(x + 80).toBeLessThanOrEqual(195); expect(y + 60).toBeLessThanOrEqual(145); expect(z).toBe(5); }
    placed.forEach((a, i) => placed.slice(i + 1).filter((b) => b.bed === a.bed).forEach((b) => expect(Math.abs(a.by[0] - b.by[0]) >= 85 || Math.abs(a.by[1] - b.by[1]) >= 65).toBe(true)));
    expect(placedOn(parts, undefined).every(({ bed }) => bed === 0)).toBe(true);
  });
});

describe.each(Object.keys(shapes))('%s in two parts', (name) => {
  const { shape, bodies } = soleFrom(shapes[name]!), parts = { shape, bodies, solids: solidsOf(bodies, 0.4) };

  test('are closed, and add up to the sole less gap and pins', () => {
    const { pieces: [heel, fore], joint } = printOf(parts, order, kernel), { waist, key, bores } = joint!;
    for (const { mesh } of [heel!, fore!]) expect(faultsOf(mesh)).toEqual([]);
    // Slow judge: columns of the sole over the slot but not the key; then what both bores take, which run through all of it but 3 mm.
    const top = bodies.foam.upper, under = sweptSurface(bodies.foam.lower, shape.line), tilt = (key.head - key.neck) / key.long, step = 0.05, aside = 0.25 * Math.hypot(1, tilt);
    let gapVolume = 0, keyArea = 0;
    for (let x = step / 2; x < key.long + 0.25; x += step) {
      const half = key.neck + x * tilt, inKey = x < key.long, deep = top(waist.x + x, key.middle) - under(waist.x + x, key.middle);
      gapVolume += 2 * (inKey ? aside : half + aside) * step * deep;
      keyArea += inKey ? 2 * half * step : 0;
    }
    const bore = bores.length ? (Math.PI / 4) * 6.5 ** 2 * (waist.outer - waist.inner - 3 - 2 * aside) : 0;
    const lost = volumeOf(parts.solids.foam) - volumeOf(heel!.mesh) - volumeOf(fore!.mesh);
    // Bores run on through what a flared wall stands out beyond the narrower face.
    expect(Math.abs(lost / (gapVolume + bore) - 1)).toBeLessThan(0.07);
    expect(boundsOf(heel!.mesh).most[0]).toBeCloseTo(waist.x + key.long, 2);
    expect(boundsOf(fore!.mesh).least[0]).toBeCloseTo(waist.x, 2);
    expect(keyArea).toBeGreaterThan(150);
  });

  test('hold each other: the head is wider than the slot at its mouth, the slot wider than the key, and pins stay inside', () => {
    const { waist, key, pinMost, bores } = jointOf(bodies.foam, order), mouth = key.neck + 0.25 * Math.hypot(1, (key.head - key.neck) / key.long);
    expect(key.head).toBeGreaterThan(mouth + 2);
    expect(waist.outer - (key.middle + key.head)).toBeGreaterThan(10);
    expect(waist.x).toBeGreaterThan(shape.last.seatLength);
    expect(waist.x + key.long).toBeLessThan(Math.min(shape.last.innerBall, shape.last.outerBall));
    const under = sweptSurface(bodies.foam.lower, shape.line);
    for (const { from: [x, , z], diameter } of bores) for (let y = waist.inner; y <= waist.outer; y += 2) for (const dx of [-1, 0, 1]) {
      expect(bodies.foam.upper(x + (dx * diameter) / 2, y) - z - diameter / 2).toBeGreaterThan(3 - 0.1);
      expect(z - diameter / 2 - under(x + (dx * diameter) / 2, y)).toBeGreaterThan(3 - 0.1);
    }
    expect(bores.length).toBe(pinMost >= 6 ? 2 : 0);
  });
});

describe('what is found before it is printed', () => {
  const found = (code: string, print: Part | undefined, x: number, z = 200): Finding[] =>
    designWith({ making: { chordGap: 0.5, ...(print && { print }), printBed: { x, y: x, z } }, right: undefined }).findings.filter((finding) => finding.code === code);

  test('a bed that two parts go on: the split is offered, and it works', () => {
    const [whole] = found('PRINT_BED', undefined, 210);
    expect(whole!.text).toMatch(/In two parts, joined at the waist, it goes on: put making\.print\.split to true\.$/);
    expect(found('PRINT_BED', { split: true }, 210)).toEqual([]);
    expect(found('PRINT_BED', {}, 210)[0]!.where).toBe('foam body');
  });
  test('a bed too small for both parts, with one that takes them', () => {
    const [whole] = found('PRINT_BED', undefined, 120), side = Number(/it wants a bed of (\d+) × /.exec(whole!.text)![1]);
    expect(found('PRINT_BED', { part: 'whole sole', split: true }, side)).toEqual([]);
    const [halves] = found('PRINT_BED', { part: 'whole sole', split: true }, side - 2);
    expect(halves!.text).toMatch(new RegExp(`^Even in two parts .* It wants a bed of ${side} × ${side} mm\\.$`));
    expect(Math.ceil(halves!.limit!)).toBe(side);
    const height = Number(/It needs (\d+) mm of height/.exec(found('PRINT_BED', { split: true }, 300, 20)[0]!.text)![1]);
    expect(found('PRINT_BED', { split: true }, 300, height)).toEqual([]);
  });
  test('pins too thick for the waist, with some that are not', () => {
    const thin = (print: Part): Finding[] => designWith({ making: { chordGap: 0.5, print } }).findings.filter(({ code }) => code === 'PRINT_PIN');
    const [raise] = thin({ split: true, pin: 12 });
    expect(raise!.side).toBe('right');
    expect(thin({ split: true, pin: Number(/Pins of ([\d.]+) mm have room/.exec(raise!.text)![1]) })).toEqual([]);
    expect(thin({ pin: 12 })).toEqual([]);
  });
  test('the outline laid on the bed by the finding is that of the part: the piece itself goes on where it says so', () => {
    const { shape, bodies } = soleFrom(shapes['worked']!), parts = { shape, bodies, solids: solidsOf(bodies, 0.4) };
    const plan = ({ positions }: Mesh): Point[] => Array.from({ length: positions.length / 3 }, (_, i): Point => [positions[i * 3]!, positions[i * 3 + 1]!]);
    for (const { mesh, laid } of printOf(parts, order, kernel, { x: 210, y: 210, z: 200 }).pieces) expect([layOn(plan(mesh), { x: 210, y: 210 }, 5).fits, laid!.fits]).toEqual([true, true]);
  });
});

test('a bed is held against what is printed: the sole is not where the mould alone is', () => {
  const codes = (making: Part): string[] => designWith({ making: { printBed: { x: 120, y: 120, z: 250 }, ...making } }).findings.map(({ code }) => code);
  expect([codes({ mould: { by: 'printed' } }).includes('PRINT_BED'), codes({ mould: { by: 'printed' }, print: {} }).includes('PRINT_BED'), codes({ mould: { by: 'routed' } }).includes('PRINT_BED')]).toEqual([false, true, true]);
});
