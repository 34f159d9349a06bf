import { describe, expect, test } from 'vitest';
import { sin, tan } from '../../src/geometry/trig.ts';
import { degrees, GRAVITY } from '../../src/geometry/units.ts';
import { FOAMS, OUTSOLES } from '../../src/materials/materials.ts';
import { carriedBy } from '../../src/roll/carried.ts';
import { layersOf } from '../../src/roll/layer.ts';
import { midTurns } from '../../src/roll/midArc.ts';
import { rollBodyOf } from '../../src/roll/ofSole.ts';
import { floorAt, lengthOn, placedAt } from '../../src/roll/rollBody.ts';
import { SLOPES, standingOn } from '../../src/roll/slopes.ts';
import { perDegree, standingUnder } from '../../src/roll/standing.ts';
import { swayOf } from '../../src/roll/sway.ts';
import { stationAt } from '../../src/checks/stations.ts';
import { rockersOf } from './support.ts';

const [flat] = rockersOf('ferry-pilot'), [round] = rockersOf('choir-conductor');
if (!flat || !round) throw new Error('both samples have a rocker');

describe('room for the weight', () => {
  const body = rollBodyOf(flat), carried = carriedBy(flat), mid = midTurns(flat, body), { flat: still, mid: arc, sole } = swayOf(body, carried, mid), { mid: { radius } } = flat.rocker;
  test('on a flat of 30 it is 15 to either side before the shoe rolls', () => expect([still.back, still.front]).toEqual([expect.closeTo(15, 6), expect.closeTo(15, 6)]));
  test('then the length of the mid arc, then of the rest', () => {
    expect(arc.back).toBeCloseTo(15 + radius * -mid.from, 6);
    expect(arc.front).toBeCloseTo(15 + radius * mid.to, 6);
    expect(sole.back + sole.front).toBeCloseTo(body.pieces.reduce((all, piece) => all + lengthOn(piece), 0), 6);
    expect([sole.back > arc.back, sole.front > arc.front]).toEqual([true, true]);
  });
});

describe.each([['with a flat', flat], ['without', round]] as const)('on slopes, a rocker %s', (_, shoe) => {
  const body = rollBodyOf(shoe), carried = carriedBy(shoe), { hip } = carried;
  /** Plumb line from the hip in the frame of the slope: it leans back by the slope. */
  const plumb = (roll: number, slope: number): number => { const [forward, height] = placedAt(body, hip, roll); return forward - height * Math.tan(slope); };
  test('uphill the contact goes ahead of the plumb line, downhill behind it; by radius times slope while it stays on the mid arc', () => {
    for (const slope of SLOPES) {
      const { ahead, contact } = standingOn(body, carried, slope);
      expect(ahead).toBeCloseTo(floorAt(body, slope) - plumb(slope, slope), 9);
      if (slope !== 0) expect(Math.sign(ahead)).toBe(Math.sign(slope));
      if (shoe === round && slope > 0 && slope < shoe.rocker.apex.angle) {
        // A wheel touches where its hub stands square to the slope: R sin(slope) further along at rest, R tan(slope) ahead of the plumb line.
        expect([contact[0] - hip[0], ahead]).toEqual([expect.closeTo(hip[1] * sin(slope), 6), expect.closeTo(hip[1] * tan(slope), 6)]);
      }
    }
  });
  test('leaning as one piece the hip comes to stand over the contact, the more so the steeper', () => {
    const tilts = SLOPES.map((slope) => {
      const { leaning } = standingOn(body, carried, slope);
      if (!leaning) throw new Error('the soles of both samples are long enough');
      if (slope !== 0) expect(plumb(leaning.roll, slope)).toBeCloseTo(floorAt(body, leaning.roll), 6);
      expect(leaning.tilt).toBeCloseTo(leaning.roll - slope, 12);
      return leaning.tilt;
    });
    for (let i = 1; i < tilts.length; i++) expect(tilts[i]!).toBeGreaterThan(tilts[i - 1]! - 1e-9);
  });
  test('where the sole ends first there is no such place', () => expect(standingOn(body, carried, degrees(30)).leaning).toBeUndefined());
});

test('a flat holds a slope so gentle that the plumb line stays on it', () => {
  const body = rollBodyOf(flat), carried = carriedBy(flat), most = Math.atan(15 / carried.hip[1]);
  expect(standingOn(body, carried, most * 0.99).leaning).toMatchObject({ roll: 0, tilt: expect.closeTo(-most * 0.99, 12) as number });
  expect(standingOn(body, carried, most * 1.01).leaning!.roll).toBeGreaterThan(flat.rocker.apex.angle);
});

describe('the layer that gives', () => {
  const layer = layersOf(round)('softest'), { stiffener, outsole: { thickness, material }, foam } = round.order;
  test('is foam and outsole as the stations have them, each by its own modulus', () => {
    for (const x of [60, 100, 150, 200]) {
      const station = stationAt(round.shape, x);
      expect(layer.thick(x)).toBeCloseTo(station.foam + thickness, 6);
      expect(layer.give(x)).toBeCloseTo(station.foam / FOAMS[foam].modulus[0] + thickness / OUTSOLES[material].modulus[0], 6);
      expect(station.thickness - layer.thick(x)).toBeGreaterThan(stiffener * 0.9);
    }
  });
  test('is as wide as the sole: wider at the ball than at the waist, nothing beyond its ends', () => {
    const { rim: { start, end } } = round.bodies.whole;
    expect([layer.width(200) > layer.width(110), layer.width(start - 1) < 8, layer.width(end + 1) < 8]).toEqual([true, true, true]);
  });
});

describe('standing', () => {
  const body = rollBodyOf(flat), under = standingUnder(flat, body, 85);
  test('needs mass × gravity × hip height: 85 kg on a hip 969 mm up, 14.1 N·m for each degree', () => {
    expect(perDegree(under('hardest', 2).needs)).toBeCloseTo((85 * GRAVITY * 0.969 * Math.PI) / 180, 1);
  });
  test('on two feet each sinks less than one alone, and hard foam less than soft', () => {
    const depth = (softness: 'softest' | 'hardest', feet: 1 | 2): number => under(softness, feet).depth;
    expect([depth('softest', 2) < depth('softest', 1), depth('hardest', 2) < depth('softest', 2), depth('hardest', 2) < depth('hardest', 1)]).toEqual([true, true, true]);
    expect(under('softest', 1, 'hard EVA').depth).toBeLessThan(depth('softest', 1));
  });
  test('the floor carries the weight: mean pressure times contact comes near it', () => {
    const { pressure, length, from, to } = under('softest', 1), width = layersOf(flat)('softest').width((from + to) / 2);
    expect((pressure * length * width) / (85 * GRAVITY)).toBeGreaterThan(1);
    expect((pressure * length * width * (2 / 3)) / (85 * GRAVITY)).toBeLessThan(1);
  });
  test('without a flat two soles just hold an upright body, like a wheel; with one they hold it with much to spare', () => {
    const { holdsAll, needs } = standingUnder(round, rollBodyOf(round), 74)('hardest', 2);
    expect(holdsAll / needs).toBeCloseTo(1, 1);
    expect(under('hardest', 2).holdsAll / under('hardest', 2).needs).toBeGreaterThan(1.5);
  });
});
