import { expect, test } from 'vitest';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { chanceFrom, fittedCase } from '../support/population.ts';
import { chosen, everyone, requireSound, tryOrders } from '../support/everyone.ts';

const HOURS = 36_000_000;

test('the survey is all there', () => expect(everyone).toHaveLength(6068));

/** The limits on seat and ball are common practice of the trade. */
test(`${chosen.length} people in the default order: a design each, seat at most 60 mm, ball at most 35 mm`, () => {
  for (const [i, person] of chosen.entries()) {
    const { rocker, given } = soleFrom(fittedCase(person, chanceFrom(i + 1)));
    if (rocker.build + given.last.pitch > 60 || rocker.build > 35) throw new Error(`${person.id}: seat ${rocker.build + given.last.pitch}, ball ${rocker.build}`);
    requireSound({ rocker, given }, person.id);
  }
}, HOURS);

test(`${chosen.length} people in ten other orders: a design, or a value that was put in and works`, () => tryOrders(0, 10), HOURS);
