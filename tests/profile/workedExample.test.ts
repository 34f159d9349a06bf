import { expect, test } from 'vitest';
import { inDegrees } from '../../src/geometry/units.ts';
import { heightAt, startOf } from '../../src/profile/groundFace.ts';
import { solveRocker, thicknessAt } from '../../src/profile/rocker.ts';
import { workedCase } from '../support/cases.ts';

/** Values to three places on which two calculations, made independently of this project and of each other, agree. */
const rocker = solveRocker(workedCase);
const { stance, pivot, hip, apex, face, build } = rocker;
const [tipX, seatEnd, tread] = [282, 56, 202];

const expected: ReadonlyArray<readonly [what: string, value: number, wanted: number]> = [
  ['tilt of the foot', inDegrees(stance.tilt), 3.945],
  ['lean of the leg', inDegrees(stance.lean), 3.945],
  ['build', build, 23.123],
  ['pivot from the heel', pivot[0], 67.495],
  ['pivot height', pivot[1], 114.594],
  ['standing point', hip[0], 123.362],
  ['standing point ahead of the pivot', hip[0] - pivot[0], 55.867],
  ['heel radius', rocker.heelArc!.radius, 112.669],
  ['mid radius', rocker.mid.radius, 924.669],
  ['toe radius', rocker.toeArc.radius, 243.196],
  ['heel and mid arc meet at', inDegrees(rocker.heelArc!.to), -3.945],
  ['heel joint from the heel', startOf(face.pieces[2]!)[0], 59.743],
  ['heel joint height', startOf(face.pieces[2]!)[1], 2.191],
  ['apex angle', inDegrees(apex.angle), 3.191],
  ['apex from the heel', apex.point[0], 174.84],
  ['apex height', apex.point[1], 1.434],
  ['slope at the tip', inDegrees(rocker.tipAngle), 29.756],
  ['toe spring of the shoe', heightAt(face, tipX), 33.123],
  ['rise at the back edge of the heel', heightAt(face, 0), 21.75],
  ['seat above ground', build + 12, 35.123],
  ['thickness at the back', thicknessAt(rocker, 0), 13.373],
  ['thickness at the pivot', thicknessAt(rocker, pivot[0]), 33.222],
  ['thickness at the seat end', thicknessAt(rocker, seatEnd), 32.611],
  ['thickness at the apex', thicknessAt(rocker, apex.point[0]), 22.78],
  ['thickness at the tread', thicknessAt(rocker, tread), 18.636],
  ['thickness at the tip', thicknessAt(rocker, tipX), 5],
];

test.each(expected)('%s is %f, wanted %f', (_, value, wanted) => {
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(0.001);
});

test('the tip sets the height', () => {
  expect(rocker.governs).toMatchObject({ zone: 'tip', minimum: 5 });
});
