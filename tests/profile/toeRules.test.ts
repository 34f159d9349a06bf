import { describe, expect, test } from 'vitest';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { angleAt, heightAt } from '../../src/profile/groundFace.ts';
import { tipOf } from '../../src/last/outline.ts';
import { Infeasible } from '../../src/profile/infeasible.ts';
import { remediesFor, tryMaking, withRemedy } from '../../src/profile/remedy.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { solveRocker, type RockerCase } from '../../src/profile/rocker.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { withOrder, workedCase } from '../support/cases.ts';

const toe = (order: RockerCase['order']['toe'], more: Partial<RockerCase['order']> = {}): RockerCase => withOrder(workedCase, { toe: order, ...more });
const tipX = workedCase.last.length;
const refusal = (given: RockerCase): Infeasible => { try { solveRocker(given); } catch (error) { if (error instanceof Infeasible) return error; throw error; } throw new Error('not refused'); };

describe('each rule gives what it is named for', () => {
  test('pivot-to-toe: the distance from the pivot to the place on the ground under the tip', () => {
    const { toeArc, pivot } = solveRocker(toe({ rule: 'pivot-to-toe' }));
    expect(toeArc.radius).toBeCloseTo(Math.hypot(tipX - pivot[0], pivot[1]), 9);
  });
  test('pivot-height: the height of the pivot above the ground', () => {
    const { toeArc, pivot } = solveRocker(toe({ rule: 'pivot-height' }, { apexX: 0.78 * tipX }));
    expect(toeArc.radius).toBeCloseTo(pivot[1], 9);
  });
  test('given: the radius asked', () => expect(solveRocker(toe({ rule: 'given', radius: 180 })).toeArc.radius).toBe(180));
  test.each([20, 28, 36, 45])('for-toe-spring: the tip stands %f mm above the ground', (wanted) => {
    expect(heightAt(solveRocker(toe({ rule: 'for-toe-spring', toeSpring: wanted })).face, tipX)).toBeCloseTo(wanted, 6);
  });
  test.each([15, 25, 40])('for-toe-off: the tip is on the ground at a roll of %f°', (wanted) => {
    expect(inDegrees(angleAt(solveRocker(toe({ rule: 'for-toe-off', toeOff: degrees(wanted) })).face, tipX))).toBeCloseTo(wanted, 6);
  });
  test.each([75, 100, 108])('under a crest turned to %d° the tip of the last is still where it was asked', (crest) => {
    const turned = { crestAngle: degrees(crest) };
    const sprung = solveRocker(toe({ rule: 'for-toe-spring', toeSpring: 30 }, turned)), rolled = solveRocker(toe({ rule: 'for-toe-off', toeOff: degrees(32) }, turned));
    expect(heightAt(sprung.face, rollX(sprung.line, tipOf(workedCase.last)))).toBeCloseTo(30, 6);
    expect(inDegrees(angleAt(rolled.face, rollX(rolled.line, tipOf(workedCase.last))))).toBeCloseTo(32, 6);
    expect(inDegrees(rolled.tipAngle)).toBeCloseTo(32, 6);
  });
  test('an end angle right at the tip is kept beyond it, for a sole whose edge stands out there', () => {
    const { face, toeArc } = solveRocker(toe({ rule: 'for-toe-off', toeOff: degrees(60), endAngle: degrees(60) }, { edgeBeyond: { heel: 0, ball: 3, toe: 6 } }));
    expect(inDegrees(toeArc.to)).toBeCloseTo(60, 6);
    expect(face.pieces.at(-1)!.name).toBe('beyond the end angle');
  });
  test('for-toe-spring with an end angle: arc, then straight, and the tip still where it was asked', () => {
    const { face, toeArc } = solveRocker(toe({ rule: 'for-toe-spring', toeSpring: 30, endAngle: degrees(22) }));
    expect(toeArc.to).toBeCloseTo(degrees(22), 12);
    expect(face.pieces.at(-1)!.name).toBe('beyond the end angle');
    expect(heightAt(face, tipX)).toBeCloseTo(30, 6);
  });
  test('an end angle the arc never reaches changes nothing', () => {
    expect(solveRocker(toe({ rule: 'pivot-to-toe', endAngle: degrees(50) })).face).toEqual(solveRocker(toe({ rule: 'pivot-to-toe' })).face);
  });
});

describe('what cannot be is refused with the measure and numbers', () => {
  test('a toe arc too short names the radius that just reaches: run / (1 - sin of the apex angle)', () => {
    const trouble = refusal(toe({ rule: 'given', radius: 90 }));
    expect(trouble.trouble).toBe('TOE_ARC_TOO_SHORT');
    const named = Number(/more than ([\d.]+) mm/.exec(trouble.message)![1]);
    expect(named).toBeGreaterThan((tipX - workedCase.order.apexX) * 1.05);
    expect(named).toBeLessThan(120);
  });
  test('a toe spring out of reach names both ends of what can be had', () => {
    const trouble = refusal(toe({ rule: 'for-toe-spring', toeSpring: 3 }));
    const [, least, most] = /between ([\d.]+) and ([\d.]+) mm/.exec(trouble.message)!.map(Number);
    expect(least).toBeGreaterThan(3);
    expect(heightAt(solveRocker(toe({ rule: 'for-toe-spring', toeSpring: least! + 3 })).face, tipX)).toBeCloseTo(least! + 3, 6);
    expect(most).toBeGreaterThan(60);
    expect(refusal(toe({ rule: 'for-toe-spring', toeSpring: most! + 15 })).trouble).toBe('TOE_SPRING_OUT_OF_REACH');
  });
  test('an apex line that comes too near the standing point, square to itself, is refused; on the long axis alone it would pass', () => {
    const { stance: { standing } } = solveRocker(workedCase), apexX = standing + 10.1;
    expect(solveRocker(toe({ rule: 'given', radius: 400 }, { apexX })).apex.point[0]).toBe(apexX);
    expect(refusal(toe({ rule: 'given', radius: 400 }, { apexX, crestAngle: degrees(75) })).message).toBe(
      'the apex line passes 9.8 mm ahead of the standing point; it must pass at least 10 mm ahead');
    expect(refusal(toe({ rule: 'given', radius: 400 }, { apexX: standing - 5 })).message).toContain('5.0 mm behind the standing point');
  });
  test('a seat height at which the toe arc would grow too tight is refused, not lowered in silence', () => {
    let onlyLow = 0;
    for (let spring = 14; spring < 30; spring += 0.25) {
      const low = toe({ rule: 'for-toe-spring', toeSpring: spring, endAngle: degrees(14) });
      const built = tryMaking(low, solveRocker), high = tryMaking(withOrder(low, { seatAtLeast: { height: 75, by: 'order' } }), solveRocker);
      if (built.ok && !high.ok) onlyLow++;
      if (high.ok) expect(high.made.build + high.made.upper(workedCase.last.seatLength / 2, 0)).toBeGreaterThan(75 - 1e-9);
    }
    expect(onlyLow).toBeGreaterThan(0);
  });
  test('an end angle or toe-off angle passed at the apex', () => {
    expect(refusal(toe({ rule: 'pivot-to-toe', endAngle: degrees(3) })).trouble).toBe('END_ANGLE_TOO_SMALL');
    expect(refusal(toe({ rule: 'for-toe-off', toeOff: degrees(3) })).trouble).toBe('TOE_OFF_OUT_OF_REACH');
  });
  test('a toe arc that is a corner', () => {
    expect(refusal(toe({ rule: 'given', radius: 6, endAngle: degrees(20) })).trouble).toBe('TOE_ARC_TOO_TIGHT');
  });
});

describe('an apex too near the standing point', () => {
  const given = withOrder(workedCase, { standingFlat: 60, apexX: 0.5 * tipX }), trouble = refusal(given);
  const remedies = [...remediesFor(given, trouble, soleFrom)];

  test('offers the largest flat, the rearmost apex and a pitch, each of which works', () => {
    expect(trouble.trouble).toBe('APEX_TOO_NEAR');
    expect(remedies.map((remedy) => remedy[0]!.measure)).toEqual(expect.arrayContaining(['standingFlat', 'apexX', 'pitch']));
    for (const remedy of remedies) expect(() => soleFrom(withRemedy(given, remedy))).not.toThrow();
  });
  test('the flat is the largest: 2 (apex - standing point - 10), and a tenth more fails', () => {
    const flat = remedies.find((remedy) => remedy[0]!.measure === 'standingFlat')![0]!.value;
    const { stance } = solveRocker(withRemedy(given, [{ measure: 'standingFlat', value: flat }]));
    expect(2 * (given.order.apexX - stance.standing - 10) - flat).toBeLessThan(0.1);
    expect(() => soleFrom(withRemedy(given, [{ measure: 'standingFlat', value: flat + 0.1 }]))).toThrow(Infeasible);
  });
  test('the apex is the rearmost to a tenth of a per cent', () => {
    const apex = remedies.find((remedy) => remedy[0]!.measure === 'apexX')![0]!.value;
    expect(() => soleFrom(withRemedy(given, [{ measure: 'apexX', value: apex - tipX / 1000 }]))).toThrow(Infeasible);
  });
});

test('two things wrong at once are mended by a pair of changes', () => {
  const given = toe({ rule: 'for-toe-spring', toeSpring: 60, endAngle: degrees(10) }, { apexX: 125 });
  const making = tryMaking(given, soleFrom);
  if (making.ok) throw new Error('should be refused');
  const [remedy] = making.remedies;
  expect(remedy!.length).toBeGreaterThanOrEqual(1);
  expect(() => soleFrom(withRemedy(given, remedy!))).not.toThrow();
});

test('walls that lean in too far are refused, and the cap offered works', () => {
  const lean = degrees(60), given = withOrder(workedCase, { taper: { heelInner: lean, heelOuter: lean, foreInner: lean, foreOuter: lean } });
  const making = tryMaking(given, soleFrom);
  if (making.ok) throw new Error('should be refused');
  expect(making.trouble.trouble).toBe('WALLS_MEET');
  const [remedy] = making.remedies;
  expect(remedy![0]!.measure).toBe('taper');
  expect(() => soleFrom(withRemedy(given, remedy!))).not.toThrow();
});
