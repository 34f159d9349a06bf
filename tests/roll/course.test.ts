import { describe, expect, test } from 'vitest';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { atan2, cos, sin } from '../../src/geometry/trig.ts';
import { carriedBy, leverAbout } from '../../src/roll/carried.ts';
import { courseOf, rollsOf } from '../../src/roll/course.ts';
import { heightExtreme, leverExtreme } from '../../src/roll/extremes.ts';
import { bulgeOf, midTurns, turningOf } from '../../src/roll/midArc.ts';
import { rollBodyOf } from '../../src/roll/ofSole.ts';
import { ordinaryBody } from '../../src/roll/ordinary.ts';
import { anglesCovered, floorAt, placedAt, stretchAt, type RollBody } from '../../src/roll/rollBody.ts';
import { contactPath, rollOverCircle } from '../../src/roll/rollOver.ts';
import { rockersOf, SAMPLES } from './support.ts';

const [flat] = rockersOf('ferry-pilot'), [round] = rockersOf('choir-conductor');
if (!flat || !round) throw new Error('both samples have a rocker');

describe.each([['with a flat', flat], ['without', round]] as const)('the roll of a rocker %s', (_, shoe) => {
  const body = rollBodyOf(shoe), carried = carriedBy(shoe), { pivot, hip, ball } = carried, { from, to } = anglesCovered(body), mid = midTurns(shoe, body), { rocker } = shoe;

  test('runs from strike to toe-off by whole degrees, rest among them', () => {
    const rolls = rollsOf(body);
    expect([rolls[0], rolls.at(-1), rolls.includes(0)]).toEqual([expect.closeTo(from, 9), expect.closeTo(to, 9), true]);
    for (let i = 1; i < rolls.length; i++) expect(inDegrees(rolls[i]! - rolls[i - 1]!)).toBeLessThanOrEqual(1 + 1e-9);
    expect(courseOf(body, carried, [0])[0]).toMatchObject({ travelled: 0, leverPivot: expect.closeTo(hip[0] - pivot[0], 6) as number, pivot: [expect.closeTo(pivot[0], 9), expect.closeTo(pivot[1], 9)] });
  });
  test('on the heel arc the floor pushes through the ankle pivot, on the mid arc under the hip but for the flat', () => {
    for (const share of [0.01, 0.5, 0.99]) {
      const [on] = courseOf(body, carried, [from + (mid.from - from) * share]);
      expect([on!.leverPivot, on!.pivot[1]]).toEqual([expect.closeTo(0, 9), expect.closeTo(rocker.heelArc!.radius, 9)]);
      const back = mid.from * share, front = mid.to * share;
      expect(leverAbout(body, hip, back)).toBeCloseTo(-(rocker.hip[0] - rocker.mid.rearX) * cos(back), 9);
      expect(leverAbout(body, hip, front)).toBeCloseTo((rocker.mid.frontX - rocker.hip[0]) * cos(front), 9);
    }
  });
  test('a lever is how fast its point rises', () => {
    for (const roll of [-0.2, -0.02, 0.01, 0.03, 0.3]) for (const point of [pivot, hip, ball]) {
      expect((placedAt(body, point, roll + 1e-6)[1] - placedAt(body, point, roll - 1e-6)[1]) / 2e-6).toBeCloseTo(leverAbout(body, point, roll), 3);
    }
  });
  test('the arcs share the turning out among them', () => {
    const { heel, mid: middle, toe } = turningOf(body, mid);
    expect([heel, middle, toe]).toEqual([rocker.heelArc!.to - from, rocker.apex.angle - rocker.heelArc!.to, to - rocker.apex.angle].map((turn) => expect.closeTo(turn, 9) as number));
  });
  test('highest, lowest and furthest are those of a fine walk through all angles', () => {
    const begin = from + 0.001, end = to - 0.001, walk = Array.from({ length: 4001 }, (_, i) => begin + ((end - begin) * i) / 4000);
    for (const point of [pivot, hip, ball]) {
      const heights = walk.map((roll) => placedAt(body, point, roll)[1]), levers = walk.map((roll) => leverAbout(body, point, roll));
      expect(heightExtreme(body, point, [begin, end], 1).value).toBeCloseTo(Math.max(...heights), 4);
      expect(heightExtreme(body, point, [begin, end], -1).value).toBeCloseTo(Math.min(...heights), 4);
      expect(leverExtreme(body, point, [begin, end], 1).value).toBeCloseTo(Math.max(...levers), 0);
      expect(leverExtreme(body, point, [begin, end], -1).value).toBeCloseTo(Math.min(...levers), 0);
    }
  });
  test('the bulge is the deepest of the mid arc below the line between its ends', () => {
    const [rear] = stretchAt(body, mid.from), [, front] = stretchAt(body, mid.to), slope = atan2(front[1] - rear[1], front[0] - rear[0]);
    const below = contactPath(body, mid.from, mid.to).map(({ at: [x, z] }) => (x - rear[0]) * sin(slope) - (z - rear[1]) * cos(slope));
    expect(bulgeOf(body, mid)).toBeCloseTo(Math.max(...below), 3);
  });
  test('the whole roll is a wheel between toe arc and mid arc', () => {
    const { radius, misses } = rollOverCircle(body);
    expect([radius > rocker.heelArc!.radius, radius < rocker.mid.radius, misses < 5]).toEqual([true, true, true]);
  });
});

test('of one arc the whole roll is that arc', () => {
  const wheel: RollBody = { pieces: [{ kind: 'arc', centre: [40, 300], radius: 300, from: degrees(-20), to: degrees(20) }] };
  expect(rollOverCircle(wheel)).toEqual({ centre: [expect.closeTo(40, 6), expect.closeTo(300, 6)], radius: expect.closeTo(300, 6) as number, misses: expect.closeTo(0, 6) as number });
});

describe('an ordinary shoe of the same heights', () => {
  const { rim } = flat.bodies.whole, carried = carriedBy(flat), { pivot, ball } = carried, body = ordinaryBody(carried, rim.start);
  test('drops its ankle as a sharp corner does: h cos + d sin less h', () => {
    const strike = flat.order.strike, behind = pivot[0] - rim.start;
    expect(placedAt(body, pivot, -strike)[1] - heightExtreme(body, pivot, [-strike, 0], -1).value).toBeCloseTo(pivot[1] * Math.cos(strike) + behind * Math.sin(strike) - pivot[1], 9);
  });
  test('toe down it stays on the ball line', () => {
    for (const angle of [1, 20, 40]) expect([floorAt(body, degrees(angle)), placedAt(body, [ball[0], 0], degrees(angle))]).toEqual([ball[0], [ball[0], 0]].map((place) => Array.isArray(place) ? place.map((x) => expect.closeTo(x!, 9) as number) : expect.closeTo(place, 9) as number));
  });
  test('stands where the rocker stands', () => expect(placedAt(body, pivot, 0)).toEqual(pivot.map((x) => expect.closeTo(x, 9) as number)));
});

/**
 * Shod walkers with free ankles let theirs drop 12.8 mm (one walker, marker table A.1 of Winter's textbook) to 22 mm (an
 * open example of gait, one man in shoes) from heel contact to mid stance. A stiff square heel should lie among them.
 */
test.each(Object.keys(SAMPLES))('%s: an ordinary shoe drops the ankle about as much as was measured on people, the rocker not at all', (name) => {
  for (const shoe of rockersOf(name)) {
    const carried = carriedBy(shoe), { pivot } = carried, turn = [-shoe.order.strike, 0] as const;
    const drop = (body: RollBody): number => placedAt(body, pivot, turn[0])[1] - heightExtreme(body, pivot, turn, -1).value, ordinary = drop(ordinaryBody(carried, shoe.bodies.whole.rim.start));
    expect([ordinary > 12.8, ordinary < 22]).toEqual([true, true]);
    expect(Math.abs(drop(rollBodyOf(shoe)))).toBeLessThan(1e-9);
  }
});
