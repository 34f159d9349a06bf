import type { Mm } from '../../geometry/units.ts';
import { rounded } from '../../checks/say.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import { endOf, startOf, type GroundFace, type GroundPiece } from '../../profile/groundFace.ts';
import { alongAt } from '../../profile/rollLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { Slice } from './slice.ts';

/** A place of the ground face that a gauge is to show, along the walking line. @property of the trade's word, as layers are named */
export interface GaugePlace { readonly of: string; readonly text: string; readonly along: Mm }

/** No pencil tells nearer marks apart. */
const ONE_PLACE: Mm = 0.3;

/** Everything on the ground face that is looked for with a gauge, heel to toe. */
export function placesOn(shoe: Shoe, { shape }: SoleParts, slice: Slice): GaugePlace[] {
  const ball = { of: 'BALL_LINE', text: 'ball', along: alongAt(shape.line, shape.last.tread, slice.across) }, arcs = shoe.kind === 'rocker' ? rockerPlaces(shoe) : raisePlaces(shape);
  const inOrder = [...arcs, ball].filter(({ along }) => along > slice.from && along < slice.to).sort((a, b) => a.along - b.along);
  return inOrder.reduce<GaugePlace[]>((all, place) => {
    const before = all.at(-1);
    return before && place.along - before.along < ONE_PLACE ? [...all.slice(0, -1), { ...before, text: `${before.text}, ${place.text}` }] : [...all, place];
  }, []);
}

function rockerPlaces({ rocker: { strikePoint, pivot, hip, mid, apex } }: Extract<Shoe, { kind: 'rocker' }>): GaugePlace[] {
  const flat = mid.frontX - mid.rearX > 0;
  return [
    { of: 'STRIKE', text: 'strike', along: strikePoint[0] }, { of: 'PIVOT', text: 'ankle', along: pivot[0] },
    ...(flat ? [{ of: 'STANDING', text: 'flat from', along: mid.rearX }, { of: 'STANDING', text: 'flat to', along: mid.frontX }] : [{ of: 'STANDING', text: 'stands', along: hip[0] }]),
    { of: 'APEX_LINE', text: 'apex', along: apex.point[0] },
  ];
}

const raisePlaces = ({ face }: SoleShape): GaugePlace[] =>
  face.pieces.flatMap((piece) => piece.name === 'toe arc' ? [{ of: 'APEX_LINE', text: 'toe arc', along: startOf(piece)[0] }] : []);

/** The radius of each arc long enough to write it under, in the middle of what of it lies on the sole. */
export function radiiOn({ pieces }: GroundFace, { from, to }: Slice): readonly { readonly text: string; readonly x: Mm }[] {
  const within = (piece: GroundPiece): readonly [Mm, Mm] => [Math.max(from, startOf(piece)[0]), Math.min(to, endOf(piece)[0])];
  return pieces.flatMap((piece) => {
    const [a, b] = within(piece);
    return piece.kind === 'arc' && b - a >= LEAST_NAMED ? [{ text: `R ${rounded(piece.radius, 1)}`, x: (a + b) / 2 }] : [];
  });
}
const LEAST_NAMED: Mm = 12;
