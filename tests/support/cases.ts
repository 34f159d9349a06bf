import { degrees } from '../../src/geometry/units.ts';
import type { Last } from '../../src/last/last.ts';
import type { RockerOrder } from '../../src/prescription/order.ts';
import type { RockerCase } from '../../src/profile/rocker.ts';

/** A last in plain numbers, mm; the one of the worked example. */
export const plainLast: Last = {
  length: 282, pitch: 12, toeSpring: 15, seatLength: 56, tread: 202, heelBack: 0, camber: 0,
  ballWidth: 95, heelWidth: 66, innerBall: 197, outerBall: 168, toeShape: 'round', inflare: 4, insole: 4,
};

export const plainOrder: RockerOrder = {
  apexX: 0.62 * 282, apexByDefault: false, toe: { rule: 'pivot-to-toe' }, standingFlat: 0, crestAngle: degrees(90), strike: degrees(25),
  minima: { edge: 4, seat: 8, waist: 8, tread: 8, tip: 5 }, stiffener: 1.5, outsole: { thickness: 2, material: 'microcellular rubber' },
  foam: 'firm EVA', taper: { heelInner: 0, heelOuter: 0, foreInner: 0, foreOuter: 0 }, edgeBeyond: { heel: 0, ball: 0, toe: 0 },
};

/** The worked example: two independent calculations agree on its results to three places. */
export const workedCase: RockerCase = {
  foot: { pivotForward: 62, pivotHeight: 78, hipHeight: 890, stance: { kind: 'locked', ankleAngle: 0 } },
  last: plainLast,
  order: plainOrder,
};

export const withOrder = (given: RockerCase, changes: Partial<RockerOrder>): RockerCase => ({ ...given, order: { ...given.order, ...changes } });
export const withLast = (given: RockerCase, changes: Partial<Last>): RockerCase => ({ ...given, last: { ...given.last, ...changes } });

/** A handful of shapes that between them use every part of the sole. */
export const shapes: Readonly<Record<string, RockerCase>> = {
  worked: workedCase,
  'standing flat': withOrder(workedCase, { standingFlat: 40, apexX: 190 }),
  'turned crest, edge all round': withOrder(workedCase, { crestAngle: degrees(97), edgeBeyond: { heel: 2, ball: 2, toe: 2 } }),
  'tapered heel, flared outside, uneven edge': withOrder(workedCase, {
    crestAngle: degrees(86), edgeBeyond: { heel: 1, ball: 3, toe: 0 },
    taper: { heelInner: degrees(6), heelOuter: degrees(-8), foreInner: degrees(3), foreOuter: degrees(4) },
  }),
  'cambered last': withLast(workedCase, { camber: 3 }),
  'cambered last, turned crest': withLast(withOrder(workedCase, { crestAngle: degrees(100) }), { camber: 2.5, toeShape: 'oblique' }),
  'toe ended early': withOrder(workedCase, { toe: { rule: 'given', radius: 90, endAngle: degrees(24) } }),
  'measured heights': withLast(workedCase, { heights: [[0, 13], [60, 12.4], [110, 8], [160, 2], [202, 0], [240, 4.5], [282, 14]] }),
};
