import { readdirSync, readFileSync } from 'node:fs';
import { design, type Design } from '../../src/design.ts';
import { filesFor, type NamedFile } from '../../src/exports/fileSet.ts';
import { loadBooleans } from '../../src/making/booleans.ts';
import { madeFor, type Made } from '../../src/making/made.ts';
import type { Fitting, Foot, LastMeasures, SheetMatch, SheetRocker, ShoeFitting } from '../../src/fitting/fitting.ts';
import type { Making } from '../../src/fitting/making.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import type { Measure } from '../../src/fitting/measure.ts';
import type { Side } from '../../src/fitting/words.ts';
import { degrees } from '../../src/geometry/units.ts';

/* Jobs put together by hand, so that the papers are tested apart from the reading of sheets. Invented wearers. */

const measured = (value: number): Measure => ({ value, origin: 'measured' });
const taken = (value: number, how: string): Measure => ({ value, origin: 'measured', how });
const estimated = (value: number, rule: string, error?: number): Measure =>
  error === undefined ? { value, origin: 'estimated', rule } : { value, origin: 'estimated', rule, error };

const LAST: LastMeasures = {
  length: taken(282, 'stick on the last'), pitch: taken(12, 'height gauge at seat and tread'), toeSpring: measured(15), seatLength: measured(56),
  tread: measured(202), heelBack: measured(0), camber: { value: 0, origin: 'default', rule: '0 mm, a bottom flat across (common practice)' },
  ballWidth: measured(95), heelWidth: measured(66), innerBall: measured(197), outerBall: measured(168),
  inflare: measured(4), insole: measured(4), toeShape: 'round',
};

const FOOT: Foot = {
  joint: 'ankle', state: 'fused', ankleLocked: true,
  length: taken(265, 'size stick, standing'), ballInner: measured(193), ballOuter: measured(167),
  pivotForward: taken(62, 'square against wall and heel'), pivotHeight: measured(78),
  hipHeight: { value: 890, origin: 'converted', rule: '35.04 in × 25.4', how: 'trochanter to floor, standing' },
  stance: { kind: 'locked', ankleAngle: { ...measured(0), how: 'heel plates until at ease' }, found: 'heel plates and plumb line' },
  strikeAngle: estimated(degrees(25), '25° where the tilt at heel strike was not measured (common practice)'),
};

const BUILD = {
  taper: { heelInner: 0, heelOuter: 0, foreInner: 0, foreOuter: 0 }, edgeBeyond: { heel: 0, ball: 0, toe: 0 },
  outsole: { thickness: 2, material: 'microcellular rubber' }, foam: 'firm EVA',
} as const;

const ROCKER: SheetRocker = {
  kind: 'rocker', ...BUILD, apex: 0.65, toe: { rule: 'pivot-to-toe' }, standingFlat: 30, crestAngle: degrees(90), stiffener: 1.5,
  minima: { edge: 4, seat: 8, waist: 8, tread: 8, tip: 5 },
};

const MATCH: SheetMatch = {
  kind: 'match', ...BUILD, seatHeightNow: taken(28, 'floor to insole at the middle of the seat'), ballHeightNow: measured(14), tip: 4,
};

export const MAKING: Making = readMaking({});

export const rocker = (side: Side, change: Partial<SheetRocker> = {}, last: Partial<LastMeasures> = {}, foot: Partial<Foot> = {}): ShoeFitting =>
  ({ side, foot: { ...FOOT, ...foot }, last: { ...LAST, ...last }, order: { ...ROCKER, ...change } });
export const match = (side: Side, change: Partial<SheetMatch> = {}, last: Partial<LastMeasures> = {}): ShoeFitting =>
  ({ side, last: { ...LAST, ...last }, order: { ...MATCH, ...change } });

export function job(reference: string, shoes: Fitting['shoes'], change: Partial<Fitting> = {}): Fitting {
  return {
    version: 1, units: 'mm',
    job: { reference, date: '2025-03-01', maker: 'Bench 4', prescriber: 'Dr A. Example', prescribed: '2025-02-11' },
    wearer: { mass: measured(80), stature: measured(1750), sex: 'male', risks: [], risksAsked: true, legDifference: { correct: 0, found: 'blocks' } },
    shoes, making: MAKING, overrides: [], ...change,
  };
}

const cupped: Partial<LastMeasures> = { camber: measured(3), toeShape: 'oblique', length: measured(268), tread: measured(192), innerBall: measured(188), outerBall: measured(160) };
const turned: Partial<SheetRocker> = {
  crestAngle: degrees(97), edgeBeyond: { heel: 2, ball: 3, toe: 1 }, standingFlat: 0, apex: 0.62,
  taper: { heelInner: degrees(5), heelOuter: degrees(-6), foreInner: degrees(3), foreOuter: degrees(4) },
};

/** Kinds of job that draw differently: a rocker and its raise, two rockers, one shoe alone with a stop taken, one turned and dished. */
export const JOBS = {
  pair: job('K-204', { left: rocker('left'), right: match('right') }),
  rockers: job('K-205', { left: rocker('left', { standingFlat: 0 }), right: rocker('right', { apex: 0.7, toe: { rule: 'for-toe-off', toeOff: degrees(30) } }, { pitch: measured(18) }) }),
  alone: job('K-206', { right: rocker('right', { toe: { rule: 'given', radius: 260, endAngle: degrees(24) } }) }, {
    wearer: { mass: measured(80), risks: ['open wound'], risksAsked: true, legDifference: { correct: 0, found: 'none found' } },
    overrides: [{ code: 'OPEN_WOUND', by: 'Dr A. Example', reason: 'wound closed since 2025-02-20, dressing removed' }],
  }),
  turned: job('K-207', { left: match('left', { seatHeightNow: measured(22), ballHeightNow: measured(9) }), right: rocker('right', turned, cupped) }, {
    wearer: { risks: ['reduced feeling'], risksAsked: true, legDifference: { correct: 6, shorter: 'left', found: 'tape' } },
  }),
} satisfies Record<string, Fitting>;

/** The sheets that come with the project. */
export const SAMPLES: Readonly<Record<string, Fitting>> = Object.fromEntries(readdirSync('samples', { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => {
  const reading = readSheet(readFileSync(`samples/${name}/sheet.json`, 'utf8'));
  if (!reading.ok) throw new Error(`samples/${name}: ${reading.faults.map(({ text }) => text).join('; ')}`);
  return [name, reading.fitting];
}));

export const ALL_JOBS: Readonly<Record<string, Fitting>> = { ...JOBS, ...SAMPLES };

/** The same question is answered once. */
export const remembered = <Asked extends object, Answer>(work: (asked: Asked) => Answer): ((asked: Asked) => Answer) => {
  const known = new WeakMap<Asked, Answer>();
  return (asked) => {
    const answer = known.get(asked) ?? work(asked);
    known.set(asked, answer);
    return answer;
  };
};

export const designOf = remembered(workedOut);

/** Worked out anew. */
export function workedOut(fitting: Fitting): Design {
  const made = design(fitting);
  if (!made.ok) throw new Error(made.troubles.map(({ text }) => text).join('; '));
  return made.design;
}

const booleans = await loadBooleans();
/** What is made besides, worked out once. */
export const madeOf = remembered((made: Design): Made => madeFor(made, booleans));
/** The files of a job, made once. */
export const filesOf = remembered((fitting: Fitting): readonly NamedFile[] => filesFor(designOf(fitting), booleans));
