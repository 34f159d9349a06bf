import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/finding.ts';
import { findingsTable, tally } from '../../src/command/findingsTable.ts';

const FINDINGS: readonly Finding[] = [
  { code: 'BALL_HIGH', severity: 'stop', side: 'left', measured: 41.24, limit: 40, unit: 'mm', where: 'under the ball', at: 200, text: 'The ball stands 41.2 mm high; more than 40 mm is not walked on.', basis: 'common practice' },
  { code: 'HEEL_RISE', severity: 'stop', side: 'right', measured: 7, limit: 6, unit: 'mm', where: 'seat', text: 'The heel rise is not the aligned one.', basis: 'common practice', overriddenBy: { by: 'A. Maker', reason: 'agreed by telephone' } },
  { code: 'LEAN', severity: 'warn', side: 'left', measured: 1.25, limit: 2, unit: 'deg', where: 'standing point', text: 'The shank leans 1.3° forward.', basis: 'common practice' },
  { code: 'PAIR', severity: 'note', unit: '', where: 'pair', text: 'Nothing to measure.', basis: 'common practice' },
];
const plain = (columns: number, inches = false): string => findingsTable(FINDINGS, { columns, colour: false }, inches);

for (const columns of [40, 72, 80, 100, 120, 200]) {
  describe(`on ${columns} columns`, () => {
    test('no line runs over and no word is lost', () => {
      const text = plain(columns), words = text.split(/\s+/);
      for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(columns);
      for (const finding of FINDINGS) for (const word of `${finding.text} ${finding.where} ${finding.basis}`.split(' '))
        expect(words.some((one) => one.includes(word.replace(/[.:;]$/, ''))), word).toBe(true);
      for (const word of ['STOP', 'WARN', 'note', 'left', 'right', 'pair', 'telephone']) expect(text).toContain(word);
    });

    test('severity is a word with or without colour, and colour changes no letter', () => {
      const inked = findingsTable(FINDINGS, { columns, colour: true }, false);
      expect(inked).not.toBe(plain(columns));
      expect(inked.replace(/\u001b\[[\d;]*m/g, '')).toBe(plain(columns));
      expect(plain(columns)).not.toContain('\u001b');
    });
  });
}

test('numbers stand with their unit, and apart where rounding would make them alike', () => {
  expect(plain(120)).toContain('41.2 mm / 40 mm');
  expect(plain(120)).toContain('1.3° / 2°');
  const close = findingsTable([{ ...FINDINGS[0]!, measured: 39.98, limit: 40 }], { columns: 120, colour: false }, false);
  expect(close).toContain('39.98 mm / 40 mm');
  const same = findingsTable([{ ...FINDINGS[0]!, measured: 5.588 + 1e-9, limit: 5.588 }], { columns: 120, colour: false }, false);
  expect(same).toContain('5.6 mm / 5.6 mm');
});

test('a sheet in inches gets inches beside the millimetres', () => {
  expect(plain(120, true)).toContain('1.624 in / 1.575 in');
  expect(plain(120, false)).not.toContain(' in\n');
});

test('a stop taken on a name is told and no longer counts as left', () => {
  expect(plain(120)).toContain('Taken by A. Maker: agreed by');
  expect(tally(FINDINGS)).toBe("1 stop, 1 stop taken on the maker's name, 1 warning, 1 note");
  expect(tally([])).toBe('no stops, no warnings, no notes');
});
