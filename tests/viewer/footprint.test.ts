import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../viewer/desk/outcome.ts';
import type { Handle, SoleSeen } from '../../viewer/desk/protocol.ts';
import { limitWords, pinWords, railOf, spokenWords } from '../../viewer/parts/holding.ts';
import { footprint, readPrint, type Print } from '../../viewer/pressure/footprint.ts';

const PRINTS = { left: readPrint(readFileSync('viewer/pressure/MUN104L.csv', 'utf8')), right: readPrint(readFileSync('viewer/pressure/MUN104R.csv', 'utf8')) };
const seen = (name: string): readonly SoleSeen[] => {
  const { outcome } = outcomeOf({ sheet: readFileSync(`samples/${name}/sheet.json`, 'utf8'), paper: { width: 320, height: 172 }, chordGap: 0.01 });
  if (outcome.kind !== 'shown') throw new Error(outcome.kind);
  return outcome.shown.plan!.soles;
};
const SOLES = ['market-gardener', 'baker'].flatMap((name) => seen(name).map((sole) => [`${name}, ${sole.side}`, sole] as const));

/** Whether a place lies within a closed line, by the angle the line turns around it. */
function around(outline: SoleSeen['outline'], [x, y]: readonly [number, number]): boolean {
  const turns = outline.map(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!, turn = Math.atan2(by - y, bx - x) - Math.atan2(ay - y, ax - x);
    return Math.atan2(Math.sin(turn), Math.cos(turn));
  });
  return Math.abs(turns.reduce((sum, turn) => sum + turn, 0)) > 6;
}

describe('the mean footprint on a sole', () => {
  test.each(SOLES)('%s: the peak lies on the ball line', (_, sole) => {
    const peak = footprint(PRINTS[sole.side], sole).find(({ share }) => share === 1)!.at, [[ax, ay], [bx, by]] = sole.ball;
    const off = ((bx - ax) * (peak[1] - ay) - (by - ay) * (peak[0] - ax)) / Math.hypot(bx - ax, by - ay);
    expect(Math.abs(off)).toBeLessThan(0.01);
    expect(Math.sign(peak[1] - ay)).toBe(Math.sign(by - peak[1]));
  });

  test.each(SOLES)('%s: every cell lies inside the outline, heel and toes too', (_, sole) => {
    const cells = footprint(PRINTS[sole.side], sole);
    expect(cells.length).toBeGreaterThan(350);
    expect(cells.filter(({ at: [x, y] }) => !around(sole.outline, [x, y]))).toEqual([]);
    expect(Math.min(...cells.map(({ at: [x] }) => x))).toBeLessThan(15);
  });

  test.each(SOLES)('%s: the big toe presses on the inner side, the waist on the outer', (_, sole) => {
    const cells = footprint(PRINTS[sole.side], sole), inward = sole.side === 'left' ? -1 : 1, ballX = Math.max(sole.ball[0][0], sole.ball[1][0]);
    const toes = cells.filter(({ at: [x] }) => x > ballX + 15), big = toes.reduce((most, cell) => cell.share > most.share ? cell : most);
    expect(big.at[1] * inward).toBeGreaterThan(5);
    const waist = cells.filter(({ at: [x] }) => x > ballX * 0.5 && x < ballX * 0.7), mean = waist.reduce((sum, { at: [, y] }) => sum + y, 0) / waist.length;
    expect(mean * inward).toBeLessThan(0);
  });

  test('the other foot\'s print would be told', () => {
    const [, sole] = SOLES.find(([, { side }]) => side === 'left')!, ballX = Math.max(sole.ball[0][0], sole.ball[1][0]);
    const toes = footprint(PRINTS.right, sole).filter(({ at: [x] }) => x > ballX + 15);
    expect(toes.reduce((most, cell) => cell.share > most.share ? cell : most).at[1]).toBeGreaterThan(0);
  });

  test('the peak of the data lies at 75 % of its print, and an empty print lays nothing', () => {
    const rows = PRINTS.left.map((row) => Math.max(...row)), pressed = rows.flatMap((most, i) => most > 0 ? [i] : []), peak = rows.indexOf(Math.max(...rows));
    expect((peak - pressed[0]!) / (pressed.at(-1)! - pressed[0]!)).toBeCloseTo(0.75, 1);
    expect(footprint([[0, 0], [0, 0]] satisfies Print, SOLES[0]![1])).toEqual([]);
  });
});

describe('what is said of a held pin', () => {
  const handle: Handle = { id: 'left.apex', label: 'left apex', at: [100, 50], moves: 'along', path: 'left.order.apex', value: 63, unit: '%', perPaper: 0.5, perMm: 0.4, least: 50, most: 80 };
  test('the value and its range; where it was stopped, the limit', () => {
    expect(limitWords(handle, 63.04, false, 'in')).toEqual(['left apex 63 %', 'from 50 % to 80 %']);
    expect(limitWords(handle, 80, true, 'mm')[1]).toBe('stops here: the most is 80 %');
    expect(limitWords(handle, 50, true, 'mm')[1]).toBe('stops here: the least is 50 %');
  });
  // One inch is 25.4 mm exactly (international yard and pound agreement, 1959).
  test('lengths are said in the unit shown, whatever the sheet is written in; angles stay', () => {
    const seat: Handle = { ...handle, label: 'left seat height', unit: 'in', value: 1.5, least: 0.5, most: 4 }, inMm = { ...seat, unit: 'mm', value: 38.1, least: 12.7, most: 101.6 };
    expect(limitWords(seat, 1.5, false, 'mm')).toEqual(['left seat height 38.1 mm', 'from 12.7 mm to 101.6 mm']);
    expect(limitWords(inMm, 38.1, false, 'in')).toEqual(['left seat height 1.5 in', 'from 0.5 in to 4 in']);
    expect([pinWords(inMm, 38.1, 'mm'), pinWords(seat, 1.5, 'in'), pinWords({ unit: '°' }, 4.25, 'in')]).toEqual(['38.1 mm', '1.5 in', '4.3°']);
  });
  test('read out, it says why it was stopped', () => {
    expect([spokenWords(handle, 63, false, 'mm'), spokenWords(handle, 80, true, 'mm')]).toEqual(['63 %', '80 %, stops here: the most is 80 %']);
  });
  test('the rail ends where the limits lie, or at the edge of the paper without a mark', () => {
    expect(railOf(handle, { width: 300, height: 100 })).toEqual({ from: [74, 50], to: [134, 50], limits: [[74, 50], [134, 50]] });
    expect(railOf(handle, { width: 120, height: 100 })).toEqual({ from: [74, 50], to: [120, 50], limits: [[74, 50]] });
    expect(railOf({ ...handle, moves: 'up' }, { width: 300, height: 70 }).limits).toEqual([[100, 16]]);
  });
});
