import { test } from 'vitest';
import { chosen, tryOrders } from '../support/everyone.ts';

/** In a file of its own, so that both halves run side by side. */
test(`${chosen.length} people in ten more orders: a design, or a value that was put in and works`, () => tryOrders(10, 20), 36_000_000);
