import { expect, test } from 'vitest';
import { svgText } from '../../src/exports/svg.ts';
import { tradeOffDrawing } from '../../src/exports/tradeOffDrawing.ts';
import { targetsOn } from '../../src/targets/shoeTargets.ts';
import { withTaken } from '../../src/targets/taken.ts';
import { changed, fittingOf, type Json } from '../fitting/sheets.ts';
import { judged } from '../judges/everyShoe.ts';
import { rockerCase, type RockerFitting } from '../../src/profile/fromFitting.ts';
import { answerTo, sampleWith } from './support.ts';

const sheet = sampleWith('market-gardener', 'right', { seatHeightAtMost: 30, free: ['apex', 'toe radius'] });
const [found] = targetsOn(fittingOf(sheet)), { curve, answer } = found!, { points } = curve;

test('from the least height there is a shoe at to the one where nothing more is won, a millimetre more never loses more', () => {
  expect(points.length).toBeGreaterThanOrEqual(10);
  points.slice(1).forEach(({ limit, best }, i) => {
    expect(limit).toBeGreaterThan(points[i]!.limit);
    expect(best.loss.weighed).toBeLessThanOrEqual(points[i]!.best.loss.weighed + 1e-9);
  });
  for (const { limit, best } of points) expect(best.figures.seatHeight).toBeLessThanOrEqual(limit + 1e-9);
  expect(points.at(-1)!.best.loss.weighed).toBeLessThan(0.05);
  expect(answerTo(changed(sheet, { 'right.order.targets.seatHeightAtMost': Number((points[0]!.limit - 0.2).toFixed(1)) }), 'right').ok).toBe(false);
});

test('every point is a shoe of its own: its values, put on the sheet, give what it promises', () => {
  for (const { best, limit } of [points[0]!, points[5]!]) {
    const made = judged(rockerCase(fittingOf(withTaken(sheet, 'right', best) as Json).shoes.right as RockerFitting))!;
    expect(made.toeOff).toBeCloseTo(best.figures.toeOff, 9);
    expect(made.seat).toBeLessThanOrEqual(limit + 1e-9);
  }
});

test('the drawing has a dot for each point where its axes say, a name to press it by, and a cross for the order', () => {
  const drawing = tradeOffDrawing(found!, 'K-204'), text = svgText(drawing);
  const dots = drawing.marks.filter((mark) => mark.of?.startsWith('tradeOff.')), words = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
  expect(dots.map(({ of }) => of)).toEqual(points.map((_, i) => `tradeOff.${i}`));
  const tick = (label: string): number => { const mark = words.find((one) => one.text === label)!; return label.endsWith('°') ? mark.at[1] - 1 : mark.at[0]; };
  const [dot] = dots, centre = dot!.kind === 'fill' && dot!.path[0]!.kind === 'arc' ? dot!.path[0]!.centre : [NaN, NaN];
  expect((centre[0]! - tick('28')) / (tick('29') - tick('28'))).toBeCloseTo(points[0]!.limit - 28, 6);
  expect((centre[1]! - tick('25°')) / (tick('26°') - tick('25°'))).toBeCloseTo(points[0]!.best.figures.toeOff - 25, 6);
  for (const said of ['Seat height at most, mm', 'Toe-off angle reached (est.)', 'as ordered', 'K-204, right shoe: what a millimetre buys']) expect(text).toContain(said);
  expect(answer.ok).toBe(true);
});
