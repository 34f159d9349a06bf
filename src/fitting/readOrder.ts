import { degrees } from '../geometry/units.ts';
import type { Readable } from './checkShape.ts';
import type { OpenSpan, SheetMatch, SheetOrder, SheetRocker, Targets, ToeOrder } from './fitting.ts';
import { packOrderOf } from './readStiffener.ts';
import type { RawShoe } from './schema.ts';
import { given, taken } from './taken.ts';

type RawOrder = Readable<RawShoe['order']>;
type RawRocker = Extract<RawOrder, { readonly kind?: 'rocker' | undefined }>;
type RawMatch = Extract<RawOrder, { readonly kind?: 'match' | undefined }>;

/** Defaults of the order, common practice of the trade; mm, and radians in the sheet's own words. */
const TAPER = { heelInner: 0, heelOuter: 0, foreInner: 0, foreOuter: 0 };
const EDGE_BEYOND = { heel: 0, ball: 0, toe: 0 };
const MINIMA = { edge: 4, seat: 8, waist: 8, tread: 8, tip: 5 };
const OUTSOLE = { thickness: 2, material: 'microcellular rubber' } as const;
const STIFFENER = 1.5;

function buildOf({ taper = {}, edgeBeyond = {}, outsole = {}, foam }: RawOrder): Pick<SheetMatch, 'taper' | 'edgeBeyond' | 'outsole' | 'foam'> {
  return {
    taper: { ...TAPER, ...given(taper) },
    edgeBeyond: { ...EDGE_BEYOND, ...given(edgeBeyond) },
    outsole: { ...OUTSOLE, ...given(outsole) },
    foam: foam ?? 'firm EVA',
  };
}

function toeOf({ rule = 'pivot-to-toe', radius, toeSpring, toeOffAngle, endAngle }: NonNullable<RawRocker['toe']>): ToeOrder {
  return { rule, ...given({ radius, toeSpring, toeOff: toeOffAngle, endAngle }) };
}

function targetsOf({ free = [], spans = {}, ...limits }: NonNullable<RawRocker['targets']>): Targets {
  const open = (span: { readonly least?: number | undefined; readonly most?: number | undefined } | undefined): OpenSpan | undefined => span && given(span);
  const { apex, toeRadius, standingFlat, strikeAngle, pitch, lastSpring } = spans;
  return {
    ...given(limits), free: [...new Set(free)],
    spans: given({ apex: open(apex), toeRadius: open(toeRadius), standingFlat: open(standingFlat), strikeAngle: open(strikeAngle), pitch: open(pitch), lastSpring: open(lastSpring) }),
  };
}

function rockerOf(raw: RawRocker): SheetRocker {
  return {
    kind: 'rocker',
    ...buildOf(raw),
    toe: toeOf(raw.toe ?? {}),
    standingFlat: raw.standingFlat ?? 0,
    crestAngle: raw.crestAngle ?? degrees(90),
    ...stiffenerOf(raw.stiffener),
    minima: { ...MINIMA, ...given(raw.minima ?? {}) },
    ...given({ apex: raw.apex, seatHeightAtLeast: raw.seatHeightAtLeast, targets: raw.targets && targetsOf(raw.targets) }),
  };
}

/** Of a pack that is yet to be found a usual thickness stands in. */
function stiffenerOf(raw: RawRocker['stiffener']): Pick<SheetRocker, 'stiffener' | 'pack'> {
  return typeof raw === 'object' ? { stiffener: STIFFENER, pack: packOrderOf(raw) } : { stiffener: raw ?? STIFFENER };
}

function matchOf(raw: RawMatch): SheetMatch {
  return {
    kind: 'match',
    ...buildOf(raw),
    seatHeightNow: taken(raw.seatHeightNow ?? NaN),
    ballHeightNow: taken(raw.ballHeightNow ?? NaN),
    ...given({ tip: raw.tip }),
  };
}

/** What is ordered for one shoe, with defaults filled in; undefined when the sheet does not say which kind. */
export function readOrder(raw: RawOrder): SheetOrder | undefined {
  if (raw.kind === 'rocker') return rockerOf(raw);
  return raw.kind === 'match' ? matchOf(raw) : undefined;
}
