import { stationAt } from '../../checks/stations.ts';
import type { WedgeOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import type { Mesh } from '../../geometry/mesh.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Pair, RockerShoe } from '../../pair/shoe.ts';
import { heightsOf, jointsOf } from '../../profile/groundFace.ts';
import { planPoint, rollX } from '../../profile/rollLine.ts';
import { meshOf, type Body } from '../../solid/body.ts';
import { sweptSurface, upperSurface } from '../../solid/soleShape.ts';
import type { Bar, Booleans } from '../booleans.ts';
import type { FlatPart } from '../flatPart.ts';
import { bandOf } from '../gauges/slice.ts';
import { alongShift } from './base.ts';
import { isTrial, trialFor, type NoTrial, type Trial, type TrialShape } from './trial.ts';
import type { Variant } from './variants.ts';
import { wedgeTemplates } from './templates.ts';

/** What of a wedge a maker measures, mm: thickness upright under places of the trial, and the thinnest and thickest of it on the long axis. */
export interface WedgeNumbers { readonly heel: Mm; readonly standing: Mm; readonly ball: Mm; readonly tip: Mm; readonly least: Mm; readonly most: Mm; readonly toeSpring: Mm }

/** A wedge to be taped under the base: solid of a LEFT shoe, with as many holes as its number. */
export interface TrialWedge { readonly variant: Variant; readonly mesh: Mesh; readonly numbers: WedgeNumbers }

/** The trial of one shoe, solids of a LEFT shoe; the templates are as they are cut for its side. */
export interface ShoeWedges {
  readonly side: Side;
  readonly order: WedgeOrder;
  readonly trial: Trial;
  /** From under the stiffener down to the base face. */
  readonly base: Mesh;
  readonly wedges: readonly TrialWedge[];
  readonly parts: readonly FlatPart[];
}

/** Trial wedges for each rocker, where the sheet orders them and a base goes under all of them. */
export function wedgesFor({ shoes, fitting: { job: { reference }, making: { wedges: order, chordGap } } }: Pair, kernel: Booleans): ShoeWedges[] {
  if (!order) return [];
  return shoes.flatMap((shoe) => {
    const trial: Trial | NoTrial | undefined = shoe.kind === 'rocker' ? trialFor(shoe, order) : undefined;
    return shoe.kind === 'rocker' && trial && isTrial(trial) ? [wedgesOf(shoe, order, trial, { reference, chordGap, kernel })] : [];
  });
}

interface Work { readonly reference: string; readonly chordGap: Mm; readonly kernel: Booleans }

function wedgesOf({ side }: RockerShoe, order: WedgeOrder, trial: Trial, { reference, chordGap, kernel }: Work): ShoeWedges {
  return {
    side, order, trial, base: meshOf(baseBody(trial), chordGap), parts: wedgeTemplates(reference, side, trial),
    wedges: trial.shapes.map((shape) => ({
      variant: shape.variant, numbers: numbersOf(trial, shape), mesh: kernel.drill(meshOf(wedgeBody(trial, shape), chordGap), holesIn(trial, shape)),
    })),
  };
}

/** The foam body less what the wedges take up. */
export function baseBody({ planned: { shape }, base, baseRim }: Trial): Body {
  return { shape, upper: upperSurface(shape, shape.stiffener), lower: base, rim: baseRim, upperJoints: [] };
}

/** What lies between the base and one shape's own ground face. */
export function wedgeBody({ planned, base }: Trial, { sole }: TrialShape): Body {
  const { shape, bodies: { whole: { rim } } } = sole, shift = alongShift(planned, sole);
  return { shape, upper: sweptSurface(base, planned.shape.line), lower: shape.face, rim, upperJoints: jointsOf(base).map(([x]) => x + shift) };
}

/** Holes that tell the number of a wedge, in a row across its waist: no lettering is deep enough in so thin a part. */
const HOLE: Mm = 3, APART: Mm = 7, BESIDE: Mm = 5, MOST = 7, WAIST = 0.4, FAR: Mm = 200;

export function holesIn({ planned: { shape: { last, line } } }: Trial, { variant: { number }, sole }: TrialShape): Bar[] {
  const { inner, outer } = bandOf(sole.bodies.whole.rim), apart = Math.min(APART, (outer - inner - 2 * BESIDE) / (MOST - 1));
  const along = rollX(line, [WAIST * last.length, 0]), middle = (inner + outer) / 2;
  return Array.from({ length: number }, (_, i): Bar => {
    const [x, y] = planPoint(sole.shape.line, along, middle + (i - (number - 1) / 2) * apart);
    return { from: [x, y, -FAR / 2], axis: 'up', length: FAR, diameter: HOLE };
  });
}

function numbersOf({ planned, base, baseRim }: Trial, { sole }: TrialShape): WedgeNumbers {
  const { shape: { face, line, last }, rocker } = sole, shift = alongShift(planned, sole), [above, below] = [heightsOf(base), heightsOf(face)];
  const thick = (along: Mm): Mm => above(along - shift) - below(along), at = (x: Mm): Mm => thick(rollX(line, [x, 0]));
  const from = Math.max(baseRim.start + shift, sole.bodies.whole.rim.start), to = Math.min(baseRim.end + shift, sole.bodies.whole.rim.end);
  const all = Array.from({ length: LOOKS + 1 }, (_, i) => thick(from + ((to - from) * i) / LOOKS));
  return {
    heel: at(last.seatLength / 2), standing: thick(rocker.hip[0]), ball: at(last.tread), tip: thick(to), least: Math.min(...all), most: Math.max(...all),
    toeSpring: stationAt(sole.shape, last.length).ground,
  };
}
const LOOKS = 400;
