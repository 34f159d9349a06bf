import { describe, expect, test } from 'vitest';
import { blankSheet } from '../../src/fitting/blankSheet.ts';
import { BLANK_FEET } from '../../src/fitting/words.ts';
import { changed, faultsIn, fittingOf, numbersIn, type Json } from './sheets.ts';

/** Every place of a sheet that waits to be filled in. */
function* waiting(value: unknown, place = ''): Generator<string> {
  if (value === null) yield place;
  if (typeof value === 'object' && value !== null)
    for (const [name, inner] of Object.entries(value)) yield* waiting(inner, place === '' ? name : `${place}.${name}`);
}

/** Asked for, but a line that may be taken out: the last words of the place. */
const MAY_GO = ['risks', 'shorter', 'prescriber', 'prescribed', 'last.ballWidth', 'last.heelWidth', 'wearer.mass'], MAY_GO_OF_MATCH = ['last.toeSpring'], MAY_GO_OF_ROCKER = ['last.length'];

/** What a maker might fill in, by the last words of the place; an invented person. */
const ANSWERS: Record<string, unknown> = {
  units: 'mm', 'job.reference': 'B-1', 'job.date': '2026-03-11', risks: [], 'legDifference.correct': 0, shorter: 'left', 'legDifference.found': 'none found',
  prescriber: 'A. Prescriber', prescribed: '2026-02-20',
  'foot.length': 265, pivotHeight: 78, hipHeight: 890, pivotForward: 62, 'heelPlates.height': 12, span: 210, hipAhead: 58, heelRise: 12,
  'wearer.mass': 78, pitch: 14, toeSpring: 15, 'last.length': 282, ballWidth: 98, heelWidth: 68, seatHeightNow: 28, ballHeightNow: 12, 'stiff.state': 'fused',
};
const answer = (place: string, foot: string): unknown =>
  (place.endsWith('stiff.joint') ? { toe: 'toe joint', ankle: 'ankle' }[foot] : Object.entries(ANSWERS).find(([name]) => place.endsWith(name))?.[1]);

describe.each(BLANK_FEET)('a blank sheet for: %s', (foot) => {
  describe.each(['left', 'right', 'both'] as const)('%s rolls', (rolls) => {
    const blank = blankSheet(foot, rolls) as Json, places = [...waiting(blank)];

    test('reading it names every field that waits, once, and nothing else', () => {
      expect(faultsIn(JSON.stringify(blank)).map(({ path }) => path).toSorted()).toEqual(places.toSorted());
      expect(places.length).toBeGreaterThan(10);
    });

    test('each of them says what it is and how it is taken', () => {
      for (const { text } of faultsIn(JSON.stringify(blank))) expect(text).toMatch(/; got null\. [A-Z].*\.$/);
      expect(faultsIn(JSON.stringify(blank)).map(({ text }) => text).join('\n')).toContain('got null. Seat above tread; gauge at two points.');
      expect(faultsIn(JSON.stringify(blank)).find(({ path }) => path === 'wearer.risks')!.text).toContain('[] where none is present; got null. Risks that were asked about and are present, of: reduced feeling, ');
    });

    test('holds no measure', () => expect([...numbersIn(blank)]).toEqual([['version', 1]]));

    test('filled in it reads, and with any one of them left out that may not be it does not', () => {
      const filled = changed(blank, Object.fromEntries(places.map((place) => [place, answer(place, foot)])));
      const { shoes } = fittingOf(filled);
      expect([shoes.left!.order.kind, shoes.right!.order.kind]).toEqual({ left: ['rocker', 'match'], right: ['match', 'rocker'], both: ['rocker', 'rocker'] }[rolls]);
      const matched = rolls === 'left' ? 'right' : rolls === 'right' ? 'left' : undefined, ofShoe = (place: string): readonly string[] =>
        (/^(left|right)/.test(place) ? (matched && place.startsWith(matched) ? MAY_GO_OF_MATCH : MAY_GO_OF_ROCKER) : []);
      const mayGo = places.filter((place) => [...MAY_GO, ...ofShoe(place)].some((name) => place.endsWith(name)));
      expect(mayGo).toHaveLength(11);
      for (const place of places) expect(faultsIn(JSON.stringify(changed(filled, { [place]: undefined }))).length === 0, place).toBe(mayGo.includes(place));
      expect(faultsIn(JSON.stringify(changed(filled, Object.fromEntries(mayGo.map((place) => [place, undefined])))))).toEqual([]);
    });
  });
});
