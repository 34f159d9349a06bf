import type { Point } from '../../../src/geometry/point.ts';
import { inDegrees } from '../../../src/geometry/units.ts';
import type { Place } from '../../../src/walk/frame.ts';
import { forePlace, type OrdinaryShape } from '../../../src/walk/ordinaryShape.ts';
import type { ShoeWalkShown } from '../../desk/protocol.ts';
import { svgEl } from '../dom.ts';

/** A shoe on an SVG in mm, y down: laid anew by its transforms alone. */
export interface SoleDrawn { readonly group: SVGGElement; readonly lay: (place: Place) => void }

/** SVG turns as a roll does, for its y runs down. */
export const transformOf = ({ turn, x, z }: Place): string => `translate(${x.toFixed(3)} ${(-z).toFixed(3)})rotate(${inDegrees(turn).toFixed(4)})`;

/** A sole as it is cut, in one piece. @param foot what moves with it, as the text of a path */
export function stiffSole({ outline, layers }: NonNullable<ShoeWalkShown['cut']>, foot = ''): SoleDrawn {
  const group = svgEl('g', { class: 'shoe' });
  group.append(svgEl('path', { d: outline, class: 'body' }), svgEl('path', { d: layers, class: 'layers' }), svgEl('path', { d: foot, class: 'foot' }));
  return { group, lay: (place) => group.setAttribute('transform', transformOf(place)) };
}

/** A shoe that bends at the ball: heel up, its forepart stays level under the ball. @param foot what moves with its rear part */
export function bendingSole(shape: OrdinaryShape, foot = '', name = 'shoe'): SoleDrawn {
  const group = svgEl('g', { class: name }), part = (points: readonly Point[]): SVGPathElement => svgEl('path', { d: polygon(points), class: 'body' });
  const rear = part(shape.rear), fore = part(shape.fore), above = svgEl('path', { d: foot, class: 'foot' });
  group.append(rear, fore, above);
  return {
    group,
    lay: (place) => {
      for (const stiff of [rear, above]) stiff.setAttribute('transform', transformOf(place));
      fore.setAttribute('transform', transformOf(forePlace(shape, place)));
    },
  };
}

const polygon = (points: readonly Point[]): string => `M${spots(points)}Z`;
/** Points as an SVG polyline takes them. */
export const spots = (points: readonly Point[]): string => points.map(([x, up]) => `${x.toFixed(2)} ${(-up).toFixed(2)}`).join(' ');
