import { expect, test } from 'vitest';
import { svgText } from '../../src/exports/svg.ts';
import { onA6, tradeOffSheet } from '../../src/exports/tradeOffDrawing.ts';
import { targetsOn } from '../../src/targets/shoeTargets.ts';
import { withTaken } from '../../src/targets/taken.ts';
import { changed, fittingOf, type Json } from '../fitting/sheets.ts';
import { greatestToeOff, judged, mixtures } from '../judges/everyShoe.ts';
import { rockerCase, type RockerFitting } from '../../src/profile/fromFitting.ts';
import { answerTo, sampleWith } from './support.ts';

const sheet = sampleWith('market-gardener', 'right', { seatHeightAtMost: 30, free: ['apex', 'toe radius'] });
const [found] = targetsOn(fittingOf(sheet)), { curve, answer } = found!, { points } = curve;

test('from the least height there is a shoe at to the one it is ordered at, a millimetre more always turns further', () => {
  expect(points.length).toBeGreaterThanOrEqual(8);
  points.slice(1).forEach(({ limit, best }, i) => {
    expect(limit).toBeGreaterThan(points[i]!.limit);
    expect(best.figures.toeOff).toBeGreaterThan(points[i]!.best.figures.toeOff);
  });
  for (const { limit, best } of points) expect(best.figures.seatHeight).toBeLessThanOrEqual(limit + 1e-9);
  expect(points.at(-1)!.limit - curve.ordered!.seatHeight).toBeLessThan(0.1);
  expect(answerTo(changed(sheet, { 'right.order.targets.seatHeightAtMost': Number((points[0]!.limit - 0.2).toFixed(1)) }), 'right').ok).toBe(false);
});

test('no shoe of a grid turns further at any height of the curve, and the grid comes near enough to tell', () => {
  const given = rockerCase(fittingOf(sampleWith('market-gardener', 'right', { seatHeightAtMost: 30, free: ['apex'] })).shoes.right as RockerFitting);
  const along = (least: number, most: number, count: number): number[] => Array.from({ length: count }, (_, i) => least + (i * (most - least)) / (count - 1));
  // Over all of both spans: 52 % to where the joint lets the apex be, the pivot's height to twice its distance to the toe; and finer where shoes turn furthest.
  const values = [...mixtures([along(52, 66.9, 5), along(80, 430, 8)]), ...mixtures([[66.4, 66.9], along(205, 260, 12)])];
  const cases = values.map(([apex, radius]) => ({ ...given, order: { ...given.order, apexX: (apex! / 100) * given.last.length, toe: { rule: 'given' as const, radius: radius! } } }));
  const greatest = greatestToeOff(cases, points.map(({ limit }) => limit));
  // A step of the sheet, 0.1 mm of the radius or 0.1 % of the apex, is less than this.
  points.forEach(({ limit, best }, i) => expect([limit, best.figures.toeOff > greatest[i]! - 0.03]).toEqual([limit, true]));
  expect(points.filter(({ best }, i) => best.figures.toeOff < greatest[i]! + 0.5).length).toBeGreaterThan(6);
});

test('every point is a shoe of its own: its values, put on the sheet, give what it promises', () => {
  for (const { best, limit } of [points[0]!, points[5]!]) {
    const made = judged(rockerCase(fittingOf(withTaken(sheet, 'right', best) as Json).shoes.right as RockerFitting))!;
    expect(made.toeOff).toBeCloseTo(best.figures.toeOff, 9);
    expect(made.seat).toBeLessThanOrEqual(limit + 1e-9);
  }
});

test('the drawing has a dot for each point where its axes say, a name to press it by, and a cross for the order', () => {
  const { drawing, dots: places } = tradeOffSheet(found!, 'K-204', onA6('mm')), text = svgText(drawing);
  const dots = drawing.marks.filter((mark) => mark.of?.startsWith('tradeOff.')), words = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
  expect(dots.map(({ of }) => of)).toEqual(points.map((_, i) => `tradeOff.${i}`));
  const tick = (label: string): number => { const mark = words.find((one) => one.text === label)!; return label.endsWith('°') ? mark.at[1] - 1 : mark.at[0]; };
  const [dot] = dots, centre = dot!.kind === 'fill' && dot!.path[0]!.kind === 'arc' ? dot!.path[0]!.centre : [NaN, NaN];
  expect(places[0]).toEqual(centre);
  expect((centre[0]! - tick('28')) / (tick('29') - tick('28'))).toBeCloseTo(points[0]!.limit - 28, 6);
  expect((centre[1]! - tick('24°')) / (tick('26°') - tick('24°'))).toBeCloseTo((points[0]!.best.figures.toeOff - 24) / 2, 6);
  for (const said of ['Seat height at most, mm', 'Toe-off angle reached (est.)', 'as ordered', 'K-204, right shoe: what height buys']) expect(text).toContain(said);
  expect(answer.ok).toBe(true);
  // An inch is 25.4 mm exactly (international yard and pound agreement, 1959): the same dots where an axis in inches says.
  const inches = tradeOffSheet(found!, 'K-204', { lengths: 'in', paper: { width: 110, height: 80 }, headed: false }), said = inches.drawing.marks.flatMap((mark) => (mark.kind === 'text' && mark.text.includes('.') && Number(mark.text) ? [mark] : []));
  const [low, high] = [said[0]!, said.at(-1)!], share = (inches.dots[3]![0] - low.at[0]) / (high.at[0] - low.at[0]);
  expect((Number(low.text) + share * (Number(high.text) - Number(low.text))) * 25.4).toBeCloseTo(points[3]!.limit, 6);
  expect(svgText(inches.drawing)).toContain('Seat height at most, in');
});
