import { describe, expect, test } from 'vitest';
import { layOn, smallestSquare } from '../../src/checks/bedFit.ts';
import { figuresOf } from '../../src/checks/figures.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { inDegrees } from '../../src/geometry/units.ts';
import { sheetJsonSchema } from '../../src/fitting/schema.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { bothRockers, changed, codesOf, designWith, type Part } from './support.ts';

const all = (code: string, change: Part = {}): Finding[] => designWith(change).findings.filter((finding) => finding.code === code);
const one = (code: string, change: Part = {}): Finding | undefined => all(code, change)[0];
const rockerWith = (change: Part = {}): RockerShoe => {
  const shoe = designWith(change).shoes[0]!;
  if (shoe.kind !== 'rocker') throw new Error('the left shoe is a rocker here');
  return shoe;
};
/** Every name of a field in a published schema. */
const namesIn = (node: unknown): string[] => typeof node !== 'object' || node === null ? []
  : Object.entries(node).flatMap(([key, value]) => [...(key === 'properties' ? Object.keys(value as object) : []), ...namesIn(value)]);
const FREE: Part = { stiff: { joint: 'toe joint', state: 'arthritic' }, ankleAngle: undefined, hipAhead: 62 };

describe('what sets the height', () => {
  test('is the tip in the worked case, with savings that come true when put in', () => {
    const found = one('GOVERNS')!, build = rockerWith().rocker.build;
    expect(found).toMatchObject({ severity: 'note', side: 'left', unit: 'mm', where: 'tip' });
    expect(found.measured).toBeCloseTo(5, 6);
    expect(found.at).toBeCloseTo(282, 1);
    const apex = build - rockerWith({ left: { order: { apex: (100 * (174.84 + 6)) / 282 } } }).rocker.build;
    const spring = build - rockerWith({ left: { last: { toeSpring: 18 } } }).rocker.build;
    expect(found.text).toBe(`The tip sets the height: 5.0 mm left at the toe. The apex 6 mm forward (order.apex) takes ${apex.toFixed(1)} mm off the whole sole; 3 mm more spring in the last (last.toeSpring) takes ${spring.toFixed(1)} mm off.`);
  });
  test('is the back edge where much is asked there, and a softer strike lowers it', () => {
    const change: Part = { left: { last: { toeSpring: 28 }, order: { minima: { edge: 14 } } } };
    const found = one('GOVERNS', change)!, build = rockerWith(change).rocker.build;
    expect(found.text).toMatch(/^The back edge sets the height: 14\.0 mm left at the back edge\. 5° less at heel strike \(foot\.strikeAngle\) takes/);
    const softer = build - rockerWith(changed(change, { left: { foot: { strikeAngle: 20 } } })).rocker.build;
    expect(found.text).toContain(`takes ${softer.toFixed(1)} mm off the whole sole`);
  });
  test('is the seat height asked for, with what thickness alone would need', () => {
    const found = one('GOVERNS', { left: { order: { seatHeightAtLeast: 42 } } })!, alone = 42 - 35.123;
    expect(found.text).toBe(`The seat height asked for (order.seatHeightAtLeast) sets the height: 42.0 mm at the seat. Thickness alone would let the sole be ${alone.toFixed(1)} mm lower.`);
  });
  test('is the other shoe where that one is higher', () => {
    const [left, right] = all('GOVERNS', bothRockers({ last: { toeSpring: 12 } }));
    expect(left!.text).toContain('The other shoe sets the height');
    expect(right!.text).toContain('The tip sets the height');
  });
  test('names only changes that leave a shape: no apex further forward than the arc can follow', () => {
    const change: Part = { left: { order: { toe: { rule: 'for-toe-spring', toeSpring: 22 }, apex: 75 } } };
    for (const [saved] of one('GOVERNS', change)!.text.matchAll(/takes ([\d.-]+|NaN) mm/g)) expect(saved).toMatch(/takes \d+\.\d mm/);
  });
});

/** Height of a point above the ground when the shoe is rolled, by resting the lowest of many points of its face on it. */
function heightWhenRolled({ shape: { face } }: RockerShoe, [px, pz]: Point, roll: number): number {
  const up = (x: number, z: number): number => z * Math.cos(roll) - x * Math.sin(roll);
  let lowest = Infinity;
  for (let x = 0; x <= 282; x += 0.01) lowest = Math.min(lowest, up(x, heightAt(face, x)));
  return up(px, pz) - lowest;
}

describe('standing', () => {
  test('names the pitch that gives 4 degrees, and that it means another last, and it does', () => {
    const change: Part = { left: { foot: { ankleAngle: { value: -5, how: 'heel plates and plumb line' } } } };
    const found = one('HIP_BEHIND_PIVOT', change)!, pitch = Number(/A pitch of ([\d.]+) mm/.exec(found.text)![1]);
    expect(found).toMatchObject({ severity: 'stop', side: 'left' });
    expect(found.text).toContain('gives 4°: another last, or this one altered to that pitch');
    expect(inDegrees(rockerWith(changed(change, { left: { last: { pitch } } })).rocker.stance.lean)).toBeCloseTo(4, 1);
  });
  test('says so where no pitch gives it, and asks for the plumb line where the ankle is free', () => {
    expect(one('LEAN_UNUSUAL', { left: { foot: { ankleAngle: { value: 6, how: 'heel plates and plumb line' } }, last: { pitch: 3 }, order: { apex: 75 } } })!.text).toContain('No pitch gives 4°');
    expect(one('LEAN_UNUSUAL', { left: { foot: { ...FREE, hipAhead: 20 } } })!.text).toContain('plumb line');
  });
  test('names no pitch for a prosthetic foot, but the prosthetist and the lean that was missing', () => {
    const aligned = (prosthesis: Part, last: Part = {}): Part => ({ left: { foot: { stiff: { joint: 'whole foot', state: 'prosthetic' }, ankleAngle: undefined, prosthesis }, last, order: { apex: 75 } } });
    const unsaid = aligned({ heelRise: 12 }), given = aligned({ heelRise: 12, shankLean: 8 }), pitched = aligned({ heelRise: 20, shankLean: 4 });
    expect(one('LEAN_UNUSUAL', unsaid)!.text).toContain('The sheet gives no aligned lean of the shank, so it counted as 0°. Have the prosthetist');
    expect(one('LEAN_UNUSUAL', given)!.text).toContain('Have the prosthetist');
    expect(one('LEAN_UNUSUAL', given)!.text).not.toContain('counted');
    expect(one('PROSTHESIS_HEEL_RISE', pitched)!.text).toContain('Ask the prosthetist');
    for (const change of [unsaid, given, pitched, aligned({ heelRise: 30, shankLean: -1 }), { ...aligned({ heelRise: 12, shankLean: 4 }), ...bothRockers({ last: { pitch: 15 } }) }]) {
      for (const { side, text } of designWith(change).findings) if (side === 'left') expect(text).not.toMatch(/pitch of [\d.]+ mm gives|[Cc]hange the (pitch|apex, or the pitch)/);
    }
    expect(one('BALLS_NOT_LEVEL', { ...aligned({ heelRise: 12, shankLean: 4 }), ...bothRockers({ last: { pitch: 15 } }) })!.text).toContain("Give the right last the other one's pitch");
  });
  test('an apex ahead of 8 mm behind a stiff toe joint is warned of, with the share that lies there', () => {
    const joint = (order: Part): Part => ({ left: { foot: FREE, order } }), found = one('APEX_AT_JOINT', joint({ apex: 68 }))!;
    expect(found).toMatchObject({ severity: 'warn', side: 'left', where: 'apex', limit: 189 });
    const share = Number(/An apex of ([\d.]+) %/.exec(found.text)![1]);
    expect(Math.abs((share / 100) * 282 - 189)).toBeLessThan(0.29);
    expect(found.text).toContain('only 5.2 mm behind the big-toe joint');
    expect(codesOf(joint({ apex: share }))).not.toContain('APEX_AT_JOINT');
    expect(codesOf(joint({ apex: share + 0.1 }))).toContain('APEX_AT_JOINT');
    expect(codesOf(joint({ apex: undefined }))).not.toContain('APEX_AT_JOINT');
    expect(codesOf(joint({ apex: undefined, toe: { rule: 'pivot-height' } }))).not.toContain('APEX_AT_JOINT');
    expect(one('APEX_AT_JOINT', joint({ apex: 72 }))!.text).toContain('6.0 mm ahead of the big-toe joint');
    expect(codesOf({ left: { order: { apex: 72 } } })).not.toContain('APEX_AT_JOINT');
  });
  test('a hip behind the pivot also stands off the mid arc', () =>
    expect(codesOf({ left: { foot: { ankleAngle: { value: -5, how: 'heel plates and plumb line' } } } })).toContain('STANDING_OFF_ARC'));
  test('a flat lets the hip rise by what rolling the shoe shows', () => {
    const change: Part = { left: { order: { standingFlat: 40, apex: 65 } } }, shoe = rockerWith(change), { heelArc, apex, hip } = shoe.rocker;
    const back = heightWhenRolled(shoe, hip, heelArc!.to) - hip[1], front = heightWhenRolled(shoe, hip, apex.angle) - hip[1];
    const found = one('FLAT_RISE', change)!;
    expect(found.text).toContain(`rise ${back.toFixed(1)} mm at the heel joint and ${front.toFixed(1)} mm at the apex`);
    expect(found.measured).toBeCloseTo(Math.max(back, front), 4);
    expect(codesOf(change)).not.toContain('FLAT_BITES');
  });
  test('a flat cut off under the ankle lets the hip rise on its front half, as rolling shows', () => {
    const change: Part = { left: { foot: { ankleAngle: { value: -3, how: 'heel plates and plumb line' } }, order: { standingFlat: 60 } } };
    const shoe = rockerWith(change), { apex, hip, pivot, mid } = shoe.rocker, found = one('FLAT_BITES', change)!;
    expect(mid.rearX).toBe(pivot[0]);
    expect(found.measured).toBeCloseTo(heightWhenRolled(shoe, hip, apex.angle) - hip[1], 3);
    expect(codesOf(change)).not.toContain('FLAT_RISE');
  });
  test('without a flat the hip keeps its height, so the two tests above can fail', () => {
    const shoe = rockerWith(), { hip, apex } = shoe.rocker;
    expect(heightWhenRolled(shoe, hip, apex.angle) - hip[1]).toBeCloseTo(0, 4);
    expect(codesOf()).not.toContain('FLAT_RISE');
  });
  test('a flat is offered for a fixed ankle or a balance risk, never where there is one', () => {
    expect(codesOf()).toContain('FLAT_OFFERED');
    expect(codesOf({ left: { order: { standingFlat: 30 } } })).not.toContain('FLAT_OFFERED');
    expect(codesOf({ left: { foot: FREE } })).not.toContain('FLAT_OFFERED');
    expect(one('FLAT_OFFERED', { left: { foot: FREE }, wearer: { risks: ['fall within a year'] } })!.text).toContain('risk of falling');
  });
  test('the flat that is offered can be made', () => {
    for (const apex of [57, 60, 62]) {
      const change: Part = { left: { order: { apex } } }, found = one('FLAT_OFFERED', change);
      const rises = (text: string): number[] => [...text.matchAll(/([\d.]+) mm at the/g)].map(([, rise]) => Number(rise));
      if (!found) continue;
      const tried = one('FLAT_RISE', changed(change, { left: { order: { standingFlat: found.limit } } }))!;
      expect(rises(found.text)).toEqual(rises(tried.text));
      expect(rises(found.text)).toHaveLength(2);
    }
  });
  test('a goniometer alone warns with how far 4 degrees move the standing point', () => {
    const change: Part = { left: { foot: { ankleAngle: { value: 0, how: 'goniometer' } } } };
    const moved = rockerWith({ left: { foot: { ankleAngle: 2 } } }).rocker.stance.standing - rockerWith({ left: { foot: { ankleAngle: -2 } } }).rocker.stance.standing;
    expect(one('GONIOMETER_ALONE', change)!.measured).toBeCloseTo(moved, 0);
    expect(codesOf()).not.toContain('GONIOMETER_ALONE');
  });
  test('a goniometer alone says from where to where the standing point may lie, against the mid arc of the shoe', () => {
    const gonio = (angle: number): Part => ({ left: { foot: { ankleAngle: { value: angle, how: 'goniometer' } } } }), found = one('GONIOMETER_ALONE', gonio(0))!;
    const [least, most, back, front] = [...found.text.matchAll(/from (\d+) to (\d+) mm/g)].flatMap(([, from, to]) => [Number(from), Number(to)]) as [number, number, number, number];
    const standing = (angle: number): number => rockerWith({ left: { foot: { ankleAngle: angle }, order: { apex: 80 } } }).rocker.stance.standing;
    expect([least, most]).toEqual([Math.round(standing(-4)), Math.round(standing(4))]);
    const { rocker: { stance, mid, apex } } = rockerWith(gonio(0));
    expect([mid.frontX, front]).toEqual([stance.standing, Math.round(apex.point[0])]);
    expect(back).toBe(60);
    expect(found).toMatchObject({ severity: 'warn', unit: 'mm' });
    expect(found.limit).toBeCloseTo(Math.min(stance.standing - 59.743, 174.84 - stance.standing), 2);
    const behind = /the hip stands ([\d.]+) mm behind the ankle pivot/;
    expect(Number(behind.exec(found.text)![1])).toBeCloseTo(stance.pivot[0] - standing(-4), 1);
    expect(one('GONIOMETER_ALONE', gonio(1))!.text).not.toMatch(behind);
  });
  test('where the sign of a typed ankle angle is in question neither apex nor pitch is offered, and not where the pitch itself may be the slip', () => {
    const turned: Part = { left: { foot: { ankleAngle: 2 }, last: { pitch: 18 }, order: { apex: 75 } } };
    const asked = designWith(turned).findings.filter(({ code }) => ['LEAN_UNUSUAL', 'STANDING_OFF_ARC'].includes(code)).map(({ text }) => text);
    expect(asked.length).toBeGreaterThan(0);
    for (const text of asked) {
      expect(text).toContain('With -2.0° the leg would lean 3.9°');
      expect(text).not.toMatch(/order\.apex|last\.pitch|pitch of/);
    }
    // A pitch of 1.8 typed for 18: the other sign would do, but it is not the angle that is wrong.
    const slip: Part = { left: { foot: { ankleAngle: -3 }, last: { pitch: 1.8 } } };
    const said = designWith(slip).findings.map(({ text }) => text);
    expect(said.join(' ')).not.toContain('sign of ankleAngle');
    expect(one('TAKEN_TWICE', slip)!.text).toContain('1.8 cm would be 18 mm');
    expect(designWith(changed(slip, { left: { last: { pitch: { value: 1.8, twice: true } } } })).findings.map(({ text }) => text).join(' ')).toContain('sign of ankleAngle');
  });
  test('an estimated hip is said once, with its error', () => {
    const change: Part = { left: { foot: { ...FREE, hipAhead: undefined } } };
    expect(one('HIP_AHEAD_ESTIMATED', change)!.text).toContain('13.0 mm further back or forward');
    expect(all('ESTIMATED', change).filter(({ text }) => text.includes('hip ahead'))).toEqual([]);
    expect(codesOf({ left: { foot: FREE } })).not.toContain('HIP_AHEAD_ESTIMATED');
  });
});

describe('heights', () => {
  test('what is built up on purpose is not to be mended by the arcs', () => {
    const high = one('SEAT_HIGH', { left: { order: { seatHeightAtLeast: 62 } } })!, other = all('SEAT_HIGH', changed(bothRockers(), { left: { order: { seatHeightAtLeast: 62 } } }))[1]!;
    expect(high.text).toContain('Ask for less seat height');
    expect(other.text).toContain('Bring the other shoe down');
  });
});

describe('rolling', () => {
  test('a heel that ends before the strike angle says what it reaches', () => {
    const found = one('STRIKE_NOT_REACHED', { left: { foot: { strikeAngle: 40 } } })!;
    expect(found).toMatchObject({ severity: 'warn', where: 'back edge' });
    const asked = Number(/ask for ([\d.]+)°/.exec(found.text)![1]);
    expect(codesOf({ left: { foot: { strikeAngle: asked } } })).not.toContain('STRIKE_NOT_REACHED');
  });
  test('a small strike angle leaves no heel arc', () => {
    expect(codesOf({ left: { foot: { strikeAngle: 3 } } })).toContain('NO_HEEL_ARC');
    expect(codesOf()).not.toContain('NO_HEEL_ARC');
  });
  test('an end angle beyond the tip slope does nothing', () => {
    expect(codesOf({ left: { order: { toe: { rule: 'pivot-to-toe', endAngle: 40 } } } })).toContain('END_ANGLE_IDLE');
    expect(codesOf({ left: { order: { toe: { rule: 'pivot-to-toe', endAngle: 20 } } } })).not.toContain('END_ANGLE_IDLE');
  });
});

describe('making', () => {
  test('the cutter must stick out 5 mm beyond the part', () => {
    const { least, most } = heightsOf(rockerWith()), needed = most - least + 5;
    const reach = (value: number): string[] => codesOf({ making: { tool: { diameter: 12, reach: value } } }).filter((code) => code === 'TOOL_REACH');
    expect(reach(needed - 0.01)).toHaveLength(1);
    expect(reach(needed)).toHaveLength(0);
    expect(codesOf()).not.toContain('TOOL_REACH');
    const named = Number(/one that reaches (\d+) mm/.exec(one('TOOL_REACH', { making: { tool: { diameter: 12, reach: 10 } } })!.text)![1]);
    expect([reach(named), reach(named - 1)]).toEqual([[], ['TOOL_REACH']]);
  });
  const heightsOf = ({ solids: { foam } }: RockerShoe): { least: number; most: number } => {
    const heights = [...foam.positions].filter((_, i) => i % 3 === 2);
    return { least: Math.min(...heights), most: Math.max(...heights) };
  };
  const bed = (x: number, y = x, z = 200): Part => ({ making: { printBed: { x, y, z } } });
  test('a small bed warns with a size that takes the sole, a large one is silent, one between has it turned', () => {
    const found = one('PRINT_BED', bed(220))!, size = Number(/A bed of (\d+) ×/.exec(found.text)![1]);
    expect(codesOf(bed(size)).filter((code) => code.startsWith('PRINT'))).toEqual(expect.arrayContaining(['PRINT_TURNED']));
    const turned = one('PRINT_TURNED', bed(size))!;
    expect([turned.unit, `long axis ${turned.measured!.toFixed(0)}°`]).toEqual(['deg', /long axis \d+°/.exec(turned.text)![0]]);
    expect(codesOf(bed(size))).not.toContain('PRINT_BED');
    expect(codesOf(bed(size - 2))).toContain('PRINT_BED');
    expect(codesOf(bed(300)).filter((code) => code.startsWith('PRINT'))).toEqual([]);
    expect(codesOf(bed(120, 300)).filter((code) => code.startsWith('PRINT'))).toEqual([]);
  });
  test('a low printer warns with the height that works', () => {
    const found = one('PRINT_BED', bed(300, 300, 40))!, height = Number(/needs (\d+) mm of height/.exec(found.text)![1]);
    expect(codesOf(bed(300, 300, height))).not.toContain('PRINT_BED');
  });
  /** A bar of a width with round ends, length over all. */
  const bar = (length: number, width: number): Point[] => [-1, 1].flatMap((end) => Array.from({ length: 181 }, (_, i): Point => {
    const angle = ((i - 90) * Math.PI) / 180, radius = width / 2;
    return [end * (length / 2 - radius + radius * Math.cos(angle)), radius * Math.sin(angle)];
  }));
  test.each([[220, 257.6], [235, 278.8], [256, 308.5]])('a bed of %d mm takes a bar of %d mm, 95 round at the ends, laid diagonally', (side, length) => {
    // Plain geometry: (side - 2 margin - width) times the root of 2, and the width.
    expect(length).toBeCloseTo((side - 10 - 95) * Math.SQRT2 + 95, 1);
    const laid = layOn(bar(length - 0.1, 95), { x: side, y: side }, 5);
    expect(laid.fits).toBe(true);
    expect(inDegrees(laid.turn)).toBeCloseTo(45, 0);
    expect(smallestSquare(bar(length - 0.1, 95), 5).side).toBeCloseTo(side, 0);
    expect(layOn(bar(length + 0.2, 95), { x: side, y: side }, 5).fits).toBe(false);
  });
});

describe('measures', () => {
  test('an unusual one asks for a second reading, once taken twice no more', () => {
    const found = one('TAKEN_TWICE', { left: { foot: { pivotForward: 80 } } })!;
    expect(found).toMatchObject({ severity: 'warn', side: 'left', measured: 80, limit: 75, unit: 'mm' });
    expect(codesOf({ left: { foot: { pivotForward: { value: 80, twice: true } } } })).not.toContain('TAKEN_TWICE');
  });
  test('an unusual one that would be usual in another unit is asked after', () => {
    expect(one('TAKEN_TWICE', { left: { last: { toeSpring: 1.4 } } })!.text).toContain('1.4 cm would be 14 mm');
    expect(one('TAKEN_TWICE', { left: { foot: { pivotForward: 80 } } })!.text).toMatch(/when both readings agree\.$/);
    expect(one('TAKEN_TWICE', { wearer: { mass: 140 } })!.text).not.toContain('would be');
  });
  test('a sheet that does not say whether risks were asked about is asked back; an empty list says there are none', () => {
    const silent = designWith({ wearer: { risks: undefined } });
    expect(silent.findings.find(({ code }) => code === 'RISKS_NOT_ASKED')).toMatchObject({ severity: 'warn', text: expect.stringContaining('(wearer.risks; [] for none)') });
    for (const risks of [[], ['child']]) expect(codesOf({ wearer: { risks } })).not.toContain('RISKS_NOT_ASKED');
  });
  test('a leg difference finer than can be found is asked after, with what it would be in centimetres', () => {
    const correct = (value: number, change: Part = {}): Part => changed({ wearer: { legDifference: { correct: value, shorter: 'left', found: 'blocks' } } }, change);
    expect(one('LEG_DIFFERENCE_FINE', correct(1.2))).toMatchObject({ severity: 'warn', measured: 1.2, limit: 3, unit: 'mm' });
    expect(one('LEG_DIFFERENCE_FINE', correct(1.2))!.text).toContain('1.2 cm would be 12 mm');
    expect(codesOf(correct(2.9))).toContain('LEG_DIFFERENCE_FINE');
    expect(codesOf(correct(3))).not.toContain('LEG_DIFFERENCE_FINE');
    expect(codesOf()).not.toContain('LEG_DIFFERENCE_FINE');
  });
  test('an unusual spring of the last is said once', () =>
    expect(designWith({ left: { last: { toeSpring: 27 } } }).findings.filter(({ text, severity }) => severity === 'warn' && /spring/i.test(text))).toHaveLength(1));
  test('one about the client belongs to no side', () => expect('side' in one('TAKEN_TWICE', { wearer: { mass: 140 } })!).toBe(false));
  test('every estimate has one note with its rule and error', () => {
    const found = all('ESTIMATED', { wearer: { crotchHeight: 800 }, left: { foot: { hipHeight: undefined }, last: { seatLength: undefined } } }).filter(({ side }) => side === 'left');
    expect(found.map(({ text }) => text.split(' was')[0])).toEqual(['The hip height', 'The seat length']);
    expect(found[0]!.text).toMatch(/± 19\.3 mm: hip height = 0\.97289 × crotch height/);
    expect(found[0]!.basis).toContain('Gordon');
    expect(found[1]!.text).toContain('a quarter of the last length');
  });
  test('an estimate of a match is named only where a figure rests on it', () => {
    const said = (change: Part = {}): string[] => all('ESTIMATED', change).filter(({ side }) => side === 'right').map(({ text }) => text.split(' was')[0]!);
    expect(new Set(said())).toEqual(new Set(['The inflare', 'The inner toe joint on the last', 'The outer toe joint on the last']));
    expect(said({ right: { last: { pitch: undefined, toeSpring: undefined } } })).toEqual(['The toe spring of the last', ...said()]);
    expect(said({ right: { order: { seatHeightNow: 39, ballHeightNow: 27 } } })).toEqual([]);
  });
  test('angles are said in degrees', () => expect(one('ESTIMATED', { left: { foot: { strikeAngle: undefined } } })).toMatchObject({ unit: 'deg', measured: expect.closeTo(25, 9) }));
  test('a tape is not trusted with the leg difference', () => {
    const found = one('LEG_BY_TAPE', { wearer: { legDifference: { found: 'tape' } } })!;
    expect(found.text).toContain('7 of 20');
    expect(found.basis).toBe('J Rheumatol 2014;41:1689');
    for (const way of ['blocks', 'x-ray', 'none found']) expect(codesOf({ wearer: { legDifference: { found: way } } })).not.toContain('LEG_BY_TAPE');
  });
  test('prescriber and date are asked for', () => {
    expect(one('PRESCRIPTION_MISSING', { job: { prescriber: undefined } })!.text).toContain('who prescribed the shoes. A rocker is prescribed: enter it before cutting (job.prescriber)');
    expect(all('PRESCRIPTION_MISSING', { job: { prescriber: undefined, prescribed: undefined } })).toHaveLength(1);
    const short = { wearer: { legDifference: { correct: 6, shorter: 'left' } }, job: { prescribed: undefined } } as const;
    expect(one('PRESCRIPTION_MISSING', short)!.text).toContain('when they were prescribed. A rocker and a leg difference are prescribed');
    expect(codesOf().filter((code) => code.startsWith('PRESCRI'))).toEqual([]);
  });
});

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
    const by = Number(/Build the left shoe up by ([\d.]+) mm/.exec(found.text)![1]);
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

describe('the field to change', () => {
  const ORDERS: readonly (readonly [code: string, field: string, change: Part])[] = [
    ['THIN_FOAM', 'order.minima.tip', { left: { order: { stiffener: 1.2, outsole: { thickness: 2 } } } }],
    ['SIDE_TIPPING', 'order.taper', { left: { last: { heelWidth: 58 } } }],
    ['SIDE_TIPPING', 'order.edgeBeyond', { left: { last: { heelWidth: 58 } } }],
    ['STRIKE_NOT_REACHED', 'foot.strikeAngle', { left: { foot: { strikeAngle: 40 } } }],
    ['FLAT_OFFERED', 'order.standingFlat', {}],
    ['CANNOT_BE_RAISED', 'order.seatHeightAtLeast', { right: { order: { seatHeightNow: 45, ballHeightNow: 33 } } }],
    ['PRINT_BED', 'making.printBed', { making: { printBed: { x: 100, y: 100, z: 20 } } }],
  ];
  test.each(ORDERS)('%s names %s in brackets', (code, field, change) => expect(one(code, change)?.text).toContain(`(${field}`));
  test('is a field of the sheet', () => {
    const known = new Set(namesIn(sheetJsonSchema()));
    const texts = ORDERS.flatMap(([, , change]) => designWith(change).findings.map(({ text }) => text));
    const fields = texts.flatMap((text) => [...text.matchAll(/\(((?:foot|last|order|making|wearer|job)\.[\w.]+\w)/g)].map(([, field]) => field!));
    expect(new Set(fields).size).toBeGreaterThan(8);
    for (const step of fields.flatMap((field) => field.split('.'))) expect(known.has(step), step).toBe(true);
  });
});
