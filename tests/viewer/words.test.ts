import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/finding.ts';
import { blankSheet } from '../../src/fitting/blankSheet.ts';
import { outcomeOf } from '../../viewer/desk/outcome.ts';
import type { FaultShown } from '../../viewer/desk/protocol.ts';
import { readText, sheetText, toeRuled, valueAt, withValue, type Sheet } from '../../viewer/keep/sheet.ts';
import { mindWords } from '../../viewer/parts/clientWords.ts';
import { faultWords } from '../../viewer/parts/message.ts';
import { lengthTyped } from '../../viewer/parts/numbers.ts';

const sample = (name: string): Sheet => { const read = readText(readFileSync(`samples/${name}/sheet.json`, 'utf8')); if (!read.ok) throw new Error(read.text); return read.sheet; };
const faultsOf = (sheet: Sheet): readonly FaultShown[] => {
  const { outcome } = outcomeOf({ sheet: sheetText(sheet), paper: { width: 320, height: 172 }, chordGap: 0.6 });
  return outcome.kind === 'faults' ? outcome.faults : [];
};

describe('what may be left out of a sheet', () => {
  test('of an empty one the optional groups, and nothing that must be there', () => {
    const faults = faultsOf(blankSheet('ankle', 'left') as Sheet), out = new Set(faults.flatMap(({ leaveOut }) => leaveOut ?? []));
    expect([out.has('left.foot.heelPlates'), out.has('right.last.toeSpring'), out.has('job.prescriber')]).toEqual([true, true, true]);
    const none = faultsOf(withValue(blankSheet('ankle', 'left') as Sheet, 'wearer.legDifference.correct', 0));
    expect(none.find(({ path }) => path === 'wearer.legDifference.shorter')?.leaveOut).toBe('wearer.legDifference.shorter');
    expect(faults.find(({ path }) => path === 'left.foot.length')).toMatchObject({ value: 'null' });
    expect([...out].filter((path) => /foot\.length$|^(left|right)(\.(foot|last|order))?$|^wearer$/.test(path))).toEqual([]);
  });
  test('each that is offered mends its fault when it is taken out', () => {
    const blank = blankSheet('ankle', 'left') as Sheet;
    for (const { path, leaveOut } of faultsOf(blank)) if (leaveOut) {
      const left = faultsOf(withValue(blank, leaveOut, undefined)).map((fault) => fault.path);
      expect([leaveOut, left.includes(path), left.includes(leaveOut)]).toEqual([leaveOut, false, false]);
    }
  });
});

test('a fault is told by the name of the field, and an empty one only asked for', () => {
  const [fault] = faultsOf(withValue(sample('market-gardener'), 'right.foot.length', 24.9));
  expect(faultWords(fault!, 'Right foot, foot length')).toMatch(/^Right foot, foot length must be 99 to 484\.5 mm; got 24\.9\. .*24\.9 cm/);
  expect(faultWords(fault!)).toMatch(/^must be 99/);
  const empty = faultsOf(blankSheet('ankle', 'left') as Sheet).find(({ path }) => path === 'left.foot.length')!;
  expect(faultWords(empty, 'Left foot, foot length')).toMatch(/^Left foot, foot length: nothing is there yet\./);
});

test('a length may be typed with its unit', () => {
  expect(['62', '6,2 cm', '62mm', '2,5 in', '1"', 'x', '6 ft'].map((text) => lengthTyped(text, 'mm'))).toEqual([62, 62, 62, 63.5, 25.4, undefined, undefined]);
  expect(lengthTyped('25,4 mm', 'in')).toBe(1);
});

test('another toe rule takes with it what only the rule before asked for', () => {
  const drawn = withValue(withValue(sample('market-gardener'), 'right.order.toe.rule', 'for-toe-spring'), 'right.order.toe.toeSpring', 30);
  const back = toeRuled(drawn, 'right.order.toe.rule', 'pivot-to-toe');
  expect([valueAt(back, 'right.order.toe.rule'), valueAt(back, 'right.order.toe.toeSpring'), faultsOf(back)]).toEqual(['pivot-to-toe', undefined, []]);
  expect(valueAt(toeRuled(drawn, 'right.order.toe.rule', 'for-toe-spring'), 'right.order.toe.toeSpring')).toBe(30);
});

describe('what a client is to mind', () => {
  const finding = (code: string, severity: Finding['severity'], overriddenBy?: Finding['overriddenBy']): Finding => ({ code, severity, unit: '', where: 'client', text: '', basis: '', ...(overriddenBy ? { overriddenBy } : {}) });
  test('four things always, and those of this client before them', () => {
    expect(mindWords([])).toHaveLength(4);
    expect(mindWords([finding('FALL_RISK', 'warn'), finding('REDUCED_FEELING', 'warn')]).slice(0, 2)).toEqual([expect.stringContaining('fallen'), expect.stringContaining('every day')]);
  });
  test('with a stop left they are not to be worn yet; one a doctor released is worn as far as he allows', () => {
    expect(mindWords([finding('FUSION_NOT_RELEASED', 'stop')])[0]).toMatch(/^Not to be worn yet/);
    const released = mindWords([finding('FUSION_NOT_RELEASED', 'stop', { by: 'M. Maker', reason: 'released' })]);
    expect([released[0], released.some((words) => words.startsWith('Not'))]).toEqual(['Wear them only as far as your doctor has allowed.', false]);
  });
});

test('an empty field is told what counts instead, in the unit of the field', () => {
  const { outcome } = outcomeOf({ sheet: sheetText(sample('market-gardener')), paper: { width: 320, height: 172 }, chordGap: 0 });
  if (outcome.kind !== 'shown') throw new Error(outcome.kind);
  const { used = {} } = outcome.shown, order = 'right.order.';
  expect([used[`${order}outsole.thickness`], used[`${order}crestAngle`], used[`${order}foam`], used[`${order}toe.rule`], used['making.chordGap']]).toEqual([2, expect.closeTo(90, 9), expect.stringMatching(/EVA/), 'pivot-to-toe', 0.05]);
  expect(used[`${order}apex`]).toBeGreaterThan(40);
  expect(used['right.foot.strikeAngle']).toBeGreaterThan(5);
});
