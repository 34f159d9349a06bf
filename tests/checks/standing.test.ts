import { describe, expect, test } from 'vitest';
import { inDegrees } from '../../src/geometry/units.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { bothRockers, all, changed, codesOf, designWith, FREE, one, rockerWith, type Part } from './support.ts';

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
    expect(found.text).toContain(`rise ${back.toFixed(1)} mm where heel and mid arc meet and ${front.toFixed(1)} mm at the apex`);
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
      const rises = (text: string): number[] => [...text.matchAll(/([\d.]+) mm (?:at the apex|where)/g)].map(([, rise]) => Number(rise));
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
