import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../src/checks/figures.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { all, changed, codesOf, designOf, designWith, one, type Part } from './support.ts';

describe('the pair', () => {
  test('one shoe alone warns', () => {
    expect(one('ONE_SHOE', { right: undefined })!.text).toContain('Enter the right shoe');
    expect(codesOf()).not.toContain('ONE_SHOE');
  });
  test('the raise is said in words, with which foot stands higher', () => {
    expect(one('RAISE')!.text).toBe('The right shoe gets 12.1 mm more under the seat and 12.1 mm more at the ball. Both feet are to stand at one height.');
    const lower = one('RAISE', { wearer: { legDifference: { correct: 6, shorter: 'left' } } })!;
    expect(lower.text).toContain('gets 6.1 mm more under the seat');
    expect(lower.text).toContain('The left foot is to stand 6.0 mm higher than the other.');
  });
  test('what becomes of the pitch of a raised shoe is said where it is felt, and warned of where it changes much', () => {
    const raised = (seatHeightNow: number): Finding => one('RAISE', { right: { order: { seatHeightNow, ballHeightNow: 14 } } })!, quiet = one('RAISE')!;
    expect([quiet.severity, quiet.text.includes('pitch')]).toEqual(['note', false]);
    expect(raised(28)).toMatchObject({ severity: 'note', text: expect.stringContaining('The pitch of the right shoe goes from 14.0 mm to 12.0 mm') });
    expect(raised(30)).toMatchObject({ severity: 'warn', text: expect.stringContaining('The pitch of the right shoe goes from 16.0 mm to 12.0 mm: try it on blocks first') });
  });
  test('lasts that differ much in length or width are asked about', () => {
    expect(codesOf()).not.toContain('LASTS_DIFFER');
    const found = one('LASTS_DIFFER', { right: { last: { length: 274 } } })!;
    expect(found).toMatchObject({ severity: 'warn', measured: 8, limit: 5, unit: 'mm', text: expect.stringContaining('left 282.0 mm, right 274.0 mm') });
    expect(one('LASTS_DIFFER', { right: { last: { ballWidth: 88 } } })!.text).toContain('in ball width');
  });
  test('an outline drawn from a guess is warned of, once a shoe', () => {
    expect(codesOf()).not.toContain('OUTLINE_GUESSED');
    const found = all('OUTLINE_GUESSED', { left: { last: { length: undefined, ballWidth: undefined } } });
    expect(found.map(({ side, severity }) => [side, severity])).toEqual([['left', 'warn']]);
    expect(found[0]!.text).toContain('(last.length, last.ballWidth)');
  });
  test('a level shoe needs none', () => {
    const found = designWith({ right: { order: { seatHeightNow: 39, ballHeightNow: 27 } } }).findings.filter(({ side }) => side === 'right');
    expect(found.filter(({ code }) => code.startsWith('RAISE') || code === 'CANNOT_BE_RAISED').map(({ code, text }) => [code, text.includes('no raise')])).toEqual([['RAISE', true]]);
  });
  test('a shoe that stands too high stops, and what is advised makes it level', () => {
    const change: Part = { right: { order: { seatHeightNow: 45, ballHeightNow: 33 } } }, found = one('CANNOT_BE_RAISED', change)!;
    expect(found).toMatchObject({ severity: 'stop', side: 'right', unit: 'mm' });
    expect(found.text).toContain('go down 5.9 mm at the seat and down 5.9 mm at the ball');
    const by = Number(/Build the left shoe up by ([\d.]+) mm/.exec(found.text)![1]), typed = Number(/order\.seatHeightAtLeast ([\d.]+) mm/.exec(found.text)![1]);
    expect(codesOf(changed(change, { left: { order: { seatHeightAtLeast: typed } } }))).not.toContain('CANNOT_BE_RAISED');
    expect(codesOf(changed(change, { left: { order: { seatHeightAtLeast: typed - 0.2 } } }))).toContain('CANNOT_BE_RAISED');
    expect(codesOf(changed(change, { left: { order: { seatHeightAtLeast: 35.123 + by + 0.1 } } }))).not.toContain('CANNOT_BE_RAISED');
  });
  test.each([[38, 20], [37, 35], [36.8, 24.85]])('whatever it stands at (%d and %d mm), what is advised was put in: taken off its own sole it comes level', (seatHeightNow, ballHeightNow) => {
    const found = one('CANNOT_BE_RAISED', { right: { order: { seatHeightNow, ballHeightNow } } })!, more = Number(/up by ([\d.]+) mm/.exec(found.text)![1]);
    expect(more).toBeGreaterThan(0);
    expect(found.measured!).toBeLessThan(found.limit!);
    const lower = { right: { order: { seatHeightNow: seatHeightNow - more, ballHeightNow: ballHeightNow - more } } };
    expect(codesOf(lower)).not.toContain('CANNOT_BE_RAISED');
  });
  const raise = (order: Part): Part => ({ right: { order } });
  test('a tip thicker than the raise is there is told, with what there is', () => {
    expect(one('RAISE_TIP_LEVEL', raise({ tip: 45 }))).toMatchObject({ severity: 'note', limit: 45 });
    expect(codesOf(raise({ tip: 8 }))).not.toContain('RAISE_TIP_LEVEL');
  });
  const works = (found: Finding | undefined): number => Number(/([\d.]+) mm at the tip works \(order\.tip\)/.exec(found!.text)![1]);
  test('thin foam at the tip of a raise is mended by the tip that is named, and no stiffener is spoken of', () => {
    const ofRight = (order: Part): Finding[] => all('THIN_FOAM', raise(order)).filter(({ side }) => side === 'right'), [found] = ofRight({ tip: 3.5 });
    expect(found).toMatchObject({ severity: 'warn', side: 'right', where: 'at the toe' });
    expect(found!.text).not.toContain('stiffener');
    expect(ofRight({ tip: works(found) })).toEqual([]);
  });
  test('under a rocker the minimum that is named leaves enough, and a little less does not', () => {
    const thin = (tip: number): Part => ({ left: { order: { stiffener: 1.5, minima: { tip } } } }), found = one('THIN_FOAM', thin(5))!;
    const [, now, enough] = /order\.minima\.tip, now ([\d.]+) mm; ([\d.]+) mm leaves enough/.exec(found.text)!;
    expect(Number(now)).toBe(5);
    expect(codesOf(thin(Number(enough)))).not.toContain('THIN_FOAM');
    expect(codesOf(thin(Number(enough) - 0.6))).toContain('THIN_FOAM');
  });
  test('where foam is thin at the back edge, the value that is named leaves enough', () => {
    // Under a steep heel the outsole takes more upright than it is thick: what is missing is not enough.
    const foamOf = (edge: number): Finding | undefined => {
      const sheet = JSON.parse(readFileSync('samples/market-gardener/sheet.json', 'utf8')) as { right: { last: object; foot: object; order: object } }, { last, foot, order } = sheet.right;
      const right = { ...sheet.right, last: { ...last, pitch: 2, toeSpring: 25 }, foot: { ...foot, strikeAngle: 25 }, order: { ...order, stiffener: 1.5, minima: { edge, seat: 8, waist: 8, tread: 12, tip: 10 } } }, reading = readSheet(JSON.stringify({ ...sheet, right, making: {} }));
      if (!reading.ok) throw new Error(reading.faults.map(({ text }) => text).join(' '));
      return designOf(reading.fitting).findings.find(({ code, side }) => code === 'THIN_FOAM' && side === 'right');
    };
    const found = foamOf(1)!, enough = Number(/order\.minima\.edge, now 1\.0 mm; ([\d.]+) mm leaves enough/.exec(found.text)![1]);
    expect([found.where, foamOf(enough), foamOf(enough - 0.6)?.where]).toEqual(['at the back edge', undefined, 'at the back edge']);
  });
  test('where the whole raise is thin the tip does not help, and what is named does', () => {
    const low = { seatHeightNow: 35.6, ballHeightNow: 23.6 }, found = all('THIN_FOAM', raise(low)).find(({ side }) => side === 'right')!;
    const thinner = Number(/outsole ([\d.]+) mm thinner/.exec(found.text)![1]);
    expect(found.text).toContain('does not help');
    expect(all('THIN_FOAM', raise({ ...low, outsole: { thickness: 2 - thinner } })).filter(({ side }) => side === 'right')).toEqual([]);
  });
  test('a low tip of a raise is noted, but not twice where the raise itself takes of the toe spring', () => {
    const { shoes, fitting } = designWith(), spring = figuresOf(shoes[1]!, fitting).find(({ key }) => key === 'toeSpringOfShoe')!.value;
    expect(one('RAISE_TOE_CLEARANCE', { right: { last: { toeSpring: 6 } } })).toMatchObject({ severity: 'note', side: 'right', limit: 15 });
    const sprung = (toeSpring: number, order: Part = {}): string[] => all('RAISE_TOE_CLEARANCE', { right: { last: { toeSpring }, order } }).map(({ code }) => code);
    expect([sprung(8 + 15.1 - spring), sprung(8 + 14.9 - spring).length]).toEqual([[], 1]);
    expect([sprung(12, { seatHeightNow: 24, ballHeightNow: 12, tip: 20 }), codesOf({ right: { last: { toeSpring: 12 }, order: { seatHeightNow: 24, ballHeightNow: 12, tip: 20 } } }).includes('RAISE_TOE_LOW')]).toEqual([[], true]);
  });
  test('less than 6 mm of foam under the ball is noted with what leaves enough, put in, under a raise and under a rocker', () => {
    const low = { seatHeightNow: 32, ballHeightNow: 20 }, of = (change: Part, side: string): Finding[] => all('BALL_FOAM', change).filter((found) => found.side === side), [found] = of(raise(low), 'right');
    expect(found).toMatchObject({ severity: 'note', limit: 6, where: 'ball', at: 202 });
    const thinner = Number(/outsole ([\d.]+) mm thinner/.exec(found!.text)?.[1] ?? NaN), higher = Number(/the left shoe up by ([\d.]+) mm/.exec(found!.text)![1]), stands = figuresOf(designWith().shoes[0]!, designWith().fitting).find(({ key }) => key === 'seatHeight')!.value;
    expect(of({ ...raise(low), left: { order: { seatHeightAtLeast: stands + higher + 0.01 } } }, 'right')).toEqual([]);
    expect(of({ ...raise(low), left: { order: { seatHeightAtLeast: stands + higher - 0.2 } } }, 'right')).toHaveLength(1);
    if (!Number.isNaN(thinner)) expect(of(raise({ ...low, outsole: { thickness: 2 - thinner } }), 'right')).toEqual([]);
    const flat = (tread: number): Part => ({ left: { foot: { strikeAngle: 12 }, last: { toeSpring: 30 }, order: { minima: { tread, tip: 4 } } } }), [rolled] = of(flat(8), 'left'), tread = Number(/([\d.]+) mm asked for at the tread/.exec(rolled!.text)![1]);
    expect([of(flat(tread), 'left'), of(flat(tread - 0.7), 'left').length]).toEqual([[], 1]);
    expect(of({}, 'left')).toEqual([]);
  });
  test('a toe that turns up too steeply is mended by the tip that is named', () => {
    const steep = { seatHeightNow: 15, ballHeightNow: 4, tip: 4.5 }, found = one('RAISE_TIP_STEEP', raise(steep))!;
    expect(found).toMatchObject({ severity: 'warn', side: 'right', limit: 25, unit: 'deg' });
    expect(found.text).toContain('of foam left');
    expect(codesOf(raise({ ...steep, tip: works(found) }))).not.toContain('RAISE_TIP_STEEP');
    expect(codesOf(raise({ ...steep, tip: works(found) - 0.2 }))).toContain('RAISE_TIP_STEEP');
    expect(codesOf()).not.toContain('RAISE_TIP_STEEP');
  });
  test('a raise that takes the toe spring of its shoe is warned of, with a tip that keeps it', () => {
    const low = { seatHeightNow: 24, ballHeightNow: 12, tip: 20 }, sprung = (order: object) => ({ right: { last: { toeSpring: 12 }, order: { ...low, ...order } } });
    const found = one('RAISE_TOE_LOW', sprung({}))!;
    expect(found).toMatchObject({ severity: 'warn', side: 'right', unit: 'mm', limit: 9 });
    expect(found.measured!).toBeLessThan(9);
    const named = Number(/([\d.]+) mm at the tip \(order\.tip\) keeps/.exec(found.text)![1]);
    expect(codesOf(sprung({ tip: named }))).not.toContain('RAISE_TOE_LOW');
    expect(codesOf(sprung({ tip: named + 0.2 }))).toContain('RAISE_TOE_LOW');
  });
  test('where there is not the foam that is wanted, a raise does not give up its toe for a little of it', () => {
    const { shoes, fitting } = designWith({ right: { last: { toeSpring: 9 }, order: { seatHeightNow: 35.6, ballHeightNow: 23.6 } } }), raised = shoes.find(({ side }) => side === 'right')!;
    const figure = (key: string): number => figuresOf(raised, fitting).find((one) => one.key === key)!.value;
    expect(figure('foamLeft')).toBeLessThan(2);
    expect(figure('toeSpringOfShoe')).toBeGreaterThan(3);
  });
  test('more than 10 mm may go inside in part', () => {
    expect(codesOf()).toContain('RAISE_INSIDE');
    expect(codesOf({ right: { order: { seatHeightNow: 29.2, ballHeightNow: 17 } } })).not.toContain('RAISE_INSIDE');
  });
  test('a raise glued to a toe spring that nobody measured warns, and only there', () => {
    const found = one('MATCH_SPRING_GUESSED', { right: { last: { toeSpring: undefined } } })!;
    expect(found).toMatchObject({ severity: 'warn', side: 'right', measured: 8, unit: 'mm' });
    expect(found.text).toContain('about a mm of thickness at the tip');
    expect(codesOf()).not.toContain('MATCH_SPRING_GUESSED');
    expect(codesOf({ right: { last: { toeSpring: undefined }, order: { seatHeightNow: 39, ballHeightNow: 27 } } })).not.toContain('MATCH_SPRING_GUESSED');
  });
  test('a raised foot that bends is remembered', () => expect(one('RAISE_BENDS')!.text).toContain('groove'));
});
