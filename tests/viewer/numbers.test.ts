import { expect, test } from 'vitest';
import { numberTyped, stepped } from '../../viewer/parts/numbers.ts';

test.each([['62,5', 62.5], [' 62.5 ', 62.5], ['−3', -3], ['1 024', 1024], ['', undefined], ['6,2,5', undefined], ['6 mm', undefined]])('%j is typed as %j', (text, number) => expect(numberTyped(text)).toBe(number));
test('a drag moves in tenths, in inches in finer steps', () => expect([stepped(65.237, '%'), stepped(1.2349, 'in')]).toEqual([65.2, 1.235]));
