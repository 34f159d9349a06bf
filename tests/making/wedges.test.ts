import { beforeAll, describe, expect, test } from 'vitest';
import type { Fitting, SheetRocker } from '../../src/fitting/fitting.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { degrees } from '../../src/geometry/units.ts';
import { faultsOf, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import type { Point } from '../../src/geometry/point.ts';
import { pointOn } from '../../src/geometry/path.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { onBoards } from '../../src/making/cut/onBoards.ts';
import { laid } from '../../src/making/cut/placed.ts';
import { makingFindings } from '../../src/making/findings.ts';
import { isTrial, trialFor, trialOf, type Trial } from '../../src/making/wedges/trial.ts';
import { alongShift, BASE_LEAST, SKIN } from '../../src/making/wedges/base.ts';
import { baseBody, wedgeBody, wedgesFor, type ShoeWedges } from '../../src/making/wedges/wedges.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { heightAt, offsetInward, type GroundFace } from '../../src/profile/groundFace.ts';
import { meshOf } from '../../src/solid/body.ts';
import { designOf, job, JOBS, rocker, SAMPLES } from '../exports/jobs.ts';

const GAP = 0.2;
let booleans: Booleans;
beforeAll(async () => { booleans = await loadBooleans(); });

const tried = (fitting: Fitting, wedges: object = {}): Fitting => ({ ...fitting, making: { ...readMaking({ wedges, chordGap: GAP }) } });
const shoeOf = (fitting: Fitting): RockerShoe => designOf(fitting).shoes.find((shoe) => shoe.kind === 'rocker') as RockerShoe;
const trialOn = (fitting: Fitting): Trial => { const trial = trialFor(shoeOf(fitting), fitting.making.wedges!); if (!isTrial(trial)) throw new Error(trial.why); return trial; };

const alone = (fitting: Fitting): Fitting => ({ ...fitting, shoes: Object.fromEntries(Object.entries(fitting.shoes).filter(([, shoe]) => shoe.order.kind === 'rocker').slice(0, 1)) });
const CASES = { pair: tried(alone(JOBS.pair)), turned: tried(alone(JOBS.turned), { step: 4, flat: 20 }) };

describe.each(Object.entries(CASES))('the trial of %s', (_, fitting) => {
  const trial = trialOn(fitting), { shapes, setIn, planned, base } = trial;
  let made: ShoeWedges;
  beforeAll(() => { made = wedgesFor(designOf(fitting), booleans)[0]!; });

  test('is made of the sole as planned and of what was asked beside it', () => {
    const { step, flat } = fitting.making.wedges!, own = shoeOf(fitting).order.standingFlat;
    const asked = [0, flat].flatMap((long) => [-step, 0, step].map((by) => [by, long])), all = own === 0 || own === flat ? asked : [...asked, [0, own]];
    expect([...shapes, ...trial.leftOut].map(({ variant }) => variant).sort((a, b) => a.number - b.number).map(({ apexBy, flat: long }) => [apexBy, long])).toEqual(all);
    expect(shapes.filter(({ variant }) => variant.planned).map(({ variant }) => [variant.apexBy, variant.flat])).toEqual([[0, own]]);
  });

  test('all its solids are closed, and each wedge has as many holes as its number', () => {
    for (const { variant, mesh } of made.wedges) {
      expect(faultsOf(mesh)).toEqual([]);
      expect(genusOf(mesh)).toBe(variant.number);
    }
    expect([faultsOf(made.base), genusOf(made.base)]).toEqual([[], 0]);
  });

  test('base and wedge together are the shape solved by itself from a sheet that orders it', () => {
    const { side } = shoeOf(fitting), length = planned.shape.last.length;
    for (const shape of [shapes.at(-2)!]) {
      const { variant: { apexBy, flat } } = shape, order = fitting.shoes[side]!.order as SheetRocker;
      const apart: Fitting = { ...fitting, shoes: { [side]: { ...fitting.shoes[side]!, order: { ...order, apex: (planned.given.order.apexX + apexBy) / length, standingFlat: flat, seatHeightAtLeast: trial.seat } } } };
      const { solids } = shoeOf(apart), whole = volumeOf(solids.foam) + volumeOf(solids.outsole);
      expect(Math.abs((volumeOf(meshOf(baseBody(trial), GAP)) + volumeOf(meshOf(wedgeBody(trial, shape), GAP))) / whole - 1)).toBeLessThan(0.002);
    }
  });

  test('no wedge is thinner than the skin anywhere, and with a base a tenth nearer one would be', () => {
    // Slow judge: the nearest two points of both faces, each sampled along its true curve.
    const thinnest = (face: GroundFace): number => Math.min(...shapes.map(({ sole }) => nearest(sole.shape.face, face, alongShift(planned, sole), sole.bodies.whole.rim)));
    expect(thinnest(base)).toBeGreaterThan(SKIN - 0.002);
    if (setIn > SKIN) expect(thinnest(offsetInward(planned.shape.face, setIn - 0.1))).toBeLessThan(SKIN);
  });

  test('the base is thick enough, and all shapes stand at one seat height, no lower than planned', () => {
    expect(trial.baseLeft).toBeGreaterThan(BASE_LEAST - 1e-6);
    for (const { sole: { shape } } of shapes) expect(shape.upper(shape.last.seatLength / 2, 0) + shape.build).toBeCloseTo(trial.seat, 6);
    expect(trial.higher).toBeGreaterThanOrEqual(-1e-9);
  });

  test('behind the flat and the apex, shapes with the same flat are one', () => {
    const [a, b] = shapes.filter(({ variant: { flat } }) => flat === shapes[0]!.variant.flat).map(({ sole }) => sole);
    const behind = Array.from({ length: 20 }, (_, i) => a!.bodies.whole.rim.start + 1 + i * 5);
    for (const x of behind) expect(heightAt(a!.shape.face, x)).toBeCloseTo(heightAt(b!.shape.face, x + alongShift(a!, b!)), 6);
  });

  test('lettering of the templates crosses no cut line and no mark, on its part and on the board', () => {
    const { placed } = onBoards(made.parts, fitting.making.board), boards = placed.map((one) => ({ sheet: one.sheet, ...laid(one) }));
    const cut = boards.map(({ outline }) => outline.flatMap((piece) => Array.from({ length: 100 }, (_, i) => pointOn(piece, i / 100))));
    let beside = 0;
    boards.forEach((one, i) => one.letters.forEach(({ text, at: [x, y], size, turn = 0 }) => {
      const [ux, uy] = [Math.cos(turn), Math.sin(turn)], width = text.length * size * 0.7, on = (a: number, b: number): Point => [x + a * ux - b * uy, y + a * uy + b * ux];
      const box = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1].flatMap((t) => [on(t * width, 0), on(t * width, size)]);
      boards.forEach((other, j) => { if (other.sheet === one.sheet) {
        const states = new Set(box.map((point) => isInside(cut[j]!, point)));
        expect([text, other.name, states.size, j !== i && states.has(true)]).toEqual([text, other.name, 1, false]);
        if (j === i && states.has(false)) beside++;
        // Marks of the edge: no end, no tenth of them lies under a letter.
        for (const { path } of j === i ? other.marks : []) for (const piece of path) for (let k = 0; k <= 200; k++) {
          const [px, py] = pointOn(piece, k / 200), [a, b] = [(px - x) * ux + (py - y) * uy, (py - y) * ux - (px - x) * uy];
          expect([text, a > 0 && a < width && b > 0 && b < size]).toEqual([text, false]);
        }
      } });
    }));
    expect(beside).toBeGreaterThan(3);
    const { step } = fitting.making.wedges!;
    expect(made.parts[0]!.letters.map(({ text }) => text).slice(2).sort()).toEqual([`+${step}`, `-${step}`, 'apex'].sort());
    const own = `${fitting.job.reference} ${made.side.toUpperCase()}`;
    for (const { name, letters } of made.parts) expect([name, letters.some(({ text }) => text.startsWith(own))]).toEqual([name, true]);
    for (const { name, letters } of made.parts) if (/wedge \d/.test(name)) {
      const n = /wedge (\d)/.exec(name)![1]!;
      expect(letters.some(({ text, size }) => text.includes(`wedge ${n}`) && size >= 3)).toBe(true);
      expect(letters.length === 1 || letters.some(({ text, size }) => text === `${own} ${n}` && size >= 1.5) || letters.some(({ text }) => text === n)).toBe(true);
    }
  });

  test('a template from the side is as large as its solid is seen from there', () => {
    const wedge = made.parts.find(({ name }) => name.includes('wedge'))!, xs = wedge.outline.map((piece) => pointOn(piece, 0)[0]);
    const { rim } = shapes[0]!.sole.bodies.whole;
    expect(Math.max(...xs)).toBeLessThan(rim.end + 1e-6);
    expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(0.9 * (rim.end - rim.start));
  });
});

describe('a stiff toe joint', () => {
  const design = designOf(tried(SAMPLES.baker!)), shoe = design.shoes[0] as RockerShoe, leftOut = (step: number) => { const trial = trialOf(shoe, { step, flat: 30 }); return isTrial(trial) ? trial.leftOut : undefined; };

  test('keeps the apex behind it: what lies ahead is left out, and the step that is named works', () => {
    const [found] = makingFindings(design).filter(({ code, side }) => code === 'WEDGE_LEFT_OUT' && side === shoe.side);
    expect(found!.text).toMatch(/apex 5\.0 mm forward.* ahead of where the stiff toe joint lets it be/);
    const step = Number(/with a step of (\d+) mm/.exec(found!.text)![1]);
    expect(step).toBeLessThan(5);
    expect([leftOut(step), leftOut(step + 1)?.length]).toEqual([[], 2]);
  });

  test('there are no findings where no wedges are ordered', () => {
    expect(makingFindings({ ...design, fitting: SAMPLES.baker! })).toEqual([]);
    // Both shoes of this client roll and are tried alike; beside a shoe that is only raised, that one is told to be raised more.
    const higher = (of: typeof design): string => makingFindings(of).find(({ code }) => code === 'TRIAL_STANDS_HIGHER')!.text;
    expect(higher(design)).toContain('trial of the other shoe stands as much higher');
    expect(higher({ ...design, shoes: [shoe] })).toMatch(/Put \d\.\d mm under the other shoe too/);
  });
});

test('a flat with no room before the apex is left out, and the flat that is named works', () => {
  const near = (wedges: object): Fitting => tried(job('K-210', { left: rocker('left', { apex: 0.57 }) }), wedges), { leftOut } = trialOn(near({ flat: 60 })), one = leftOut.find(({ works }) => works.flat !== undefined)!;
  expect(one.why).toMatch(/apex line passes/);
  const works = (flat: number): boolean => trialOn(near({ flat })).shapes.some(({ variant }) => variant.apexBy === one.variant.apexBy && variant.flat === flat);
  expect([works(one.works.flat!), works(one.works.flat! + 1)]).toEqual([true, false]);
});

test('a toe arc too tight for any base is told with a step that works', () => {
  const tight = job('K-211', { left: rocker('left', { toe: { rule: 'given', radius: 9, endAngle: degrees(26) } }) }), asked = tried(tight, { step: 8 });
  const [found] = makingFindings(designOf(asked)).filter(({ code }) => code === 'NO_TRIAL');
  expect(isTrial(trialFor(shoeOf(asked), asked.making.wedges!))).toBe(false);
  const step = Number(/A step of (\d+) mm works/.exec(found!.text)![1]);
  expect(isTrial(trialFor(shoeOf(tight), { step, flat: 30 }))).toBe(true);
});

/** Euler's number of a closed skin is 2 - 2 x holes. */
const genusOf = ({ positions, triangles }: Mesh): number => { return (2 - (positions.length / 3 - triangles.length / 2 + triangles.length / 3)) / 2; };

/** Counts how often a ray to the side crosses a closed line. */
const isInside = (line: readonly Point[], [x, y]: Point): boolean =>
  line.filter(([ax, ay], i) => { const [bx, by] = line[(i + 1) % line.length]!; return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay); }).length % 2 === 1;

const STEP = 0.5;
function nearest(face: GroundFace, base: GroundFace, shift: number, { start, end }: { readonly start: number; readonly end: number }): number {
  const points = (of: GroundFace, from: number, by: number): Point[] => Array.from({ length: Math.ceil((end - start) / STEP) + 1 }, (_, i): Point => { const x = from + i * STEP; return [x + by, heightAt(of, x)]; }).filter(([, z]) => Number.isFinite(z));
  const above = points(base, start - shift, shift);
  return Math.min(...points(face, start, 0).filter(([x]) => x <= end).map(([x, z]) => Math.min(...above.slice(Math.max(0, Math.floor((x - start) / STEP) - 20), Math.floor((x - start) / STEP) + 21).map(([bx, bz]) => Math.hypot(bx - x, bz - z)))));
}
