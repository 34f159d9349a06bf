import fc from 'fast-check';
import { jsPDF } from 'jspdf';
import { expect, test } from 'vitest';
import { textWidth, wrapped } from '../../src/exports/letters.ts';

test.each([['normal', false], ['bold', true]] as const)('letters of the %s face are as wide as a PDF writer says', (style, bold) => {
  const file = new jsPDF({ unit: 'mm' });
  file.setFont('helvetica', style);
  file.setFontSize((10 * 72) / 25.4);
  for (const letter of " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~°±·–äöüßéèçñ") {
    // The writer keeps its widths to a hundredth of the letter size.
    const apart = Math.abs(textWidth(letter, { size: 10, bold }) - file.getTextWidth(letter));
    expect([letter, apart < 0.101]).toEqual([letter, true]);
  }
});

test('a sentence is broken between words, and only a word too long by itself is cut', () => {
  const sentence = 'The tip sets the height: 5.0 mm left at the toe.', style = { size: 3.2 };
  const lines = wrapped(sentence, 30, style);
  expect(lines.length).toBeGreaterThan(1);
  expect(lines.join(' ')).toBe(sentence);
  expect(wrapped('', 30, style)).toEqual([]);
  const sum = 'a'.repeat(64);
  expect(wrapped(sum, 20, style).join('')).toBe(sum);
});

test('no line is wider than its column, whatever the text', () => {
  fc.assert(fc.property(fc.string({ maxLength: 200 }), fc.integer({ min: 10, max: 120 }), (text, width) => {
    for (const line of wrapped(text, width, { size: 3 })) expect(textWidth(line, { size: 3 })).toBeLessThanOrEqual(width);
    expect(wrapped(text, width, { size: 3 }).join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
  }), { seed: 20250301, numRuns: 200 });
});
