import { describe, expect, test } from 'vitest';
import { see } from '../../src/checks/seen.ts';
import { carriesStance } from '../../src/checks/walk.ts';
import type { Finding } from '../../src/checks/finding.ts';
import type { Foot, SheetRocker } from '../../src/fitting/fitting.ts';
import { degrees } from '../../src/geometry/units.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { walkingOf } from '../../src/walk/walking.ts';
import { designOf, job, rocker } from '../exports/jobs.ts';

const measured = (value: number) => ({ value: degrees(value), origin: 'measured' } as const);
interface Walked { readonly contact: number; readonly toeOff: number; readonly order?: Partial<SheetRocker>; readonly foot?: Partial<Foot> }
const designed = ({ contact, toeOff, order = {}, foot = {} }: Walked) => designOf(job('K-9', { left: rocker('left', order, {}, { ...foot, walk: { kind: 'angles', contact: measured(contact), midStance: measured(8), toeOff: measured(toeOff) } }) }));
const leftOf = (walked: Walked): RockerShoe => { const [shoe] = designed(walked).shoes; if (shoe?.kind !== 'rocker') throw new Error('the left shoe is a rocker'); return shoe; };
const found = (walked: Walked, pace: 'careful' | 'quick' = 'careful'): Finding[] => carriesStance(see(leftOf(walked), designed(walked).fitting, pace));
/** What the whole program says of a shoe that is ordered so. */
const carried = (walked: Walked): number => 100 * walkingOf(designed(walked)).shoes[0]!.figures.carried;

const SHORT = { contact: -30, toeOff: 55, order: { toe: { rule: 'given', radius: 260 } } } as const;

describe('a sole that carries too little of a step that was seen', () => {
  test('names a strike angle and a toe radius; each, ordered so, carries enough, and a step less does not', () => {
    const [finding] = found(SHORT), [, strike, share] = /(\d+)° asked for at heel strike \(foot\.strikeAngle, now 25\.0°\) carries (\d+) %/.exec(finding!.text)!.map(Number), [, radius] = /a toe arc of (\d+)\.0 mm \(order\.toe\.radius, now 260\.0 mm\) carries/.exec(finding!.text)!.map(Number);
    const asked = (angle: number): number => carried({ ...SHORT, foot: { strikeAngle: measured(angle) } }), arc = (of: number): number => carried({ ...SHORT, order: { toe: { rule: 'given', radius: of } } });
    expect([asked(strike!) >= 80, Math.round(asked(strike!)), asked(strike! - 1) >= 80]).toEqual([true, share, false]);
    expect([arc(radius!) >= 80, arc(radius! + 5) >= 80]).toEqual([true, false]);
  });

  test('names a pair where neither end alone is enough', () => {
    const walked = { contact: -40, toeOff: 70, order: { toe: { rule: 'for-toe-off', toeOff: degrees(28) } } } as const, [finding] = found(walked);
    const [, strike, slope] = /(\d+)° asked for at heel strike .* with a slope of (\d+)° at the tip/.exec(finding!.text)!.map(Number);
    const as = (at: number, toeOff: number): number => carried({ ...walked, order: { toe: { rule: 'for-toe-off', toeOff: degrees(toeOff) } }, foot: { strikeAngle: measured(at) } });
    expect([as(strike!, slope!) >= 80, as(strike!, 28) >= 80, as(25, slope!) >= 80]).toEqual([true, false, false]);
  });

  test('says so where nothing that was tried is enough', () => {
    expect(found({ contact: -55, toeOff: 84 })[0]!.text).toMatch(/Nothing that was tried at one end or at both carries 80 % \(foot\.strikeAngle, order\.edgeBeyond\.heel, order\.toe\.radius, order\.apex\)\.$/);
  });

  test('tells nothing of it while a hand drags', () => {
    const [quick] = found(SHORT, 'quick');
    expect(quick!.text).not.toMatch(/asked for at heel strike|A toe arc of|Nothing that was tried/);
    expect(quick!.text).toMatch(/carries \d+ % of stance/);
  });
});
