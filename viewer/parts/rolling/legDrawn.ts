import { forePlace } from '../../../src/walk/ordinaryShape.ts';
import type { Stride } from '../../../src/walk/step.ts';
import type { ShoeWalk } from '../../../src/walk/walking.ts';
import type { ShoeWalkShown } from '../../desk/protocol.ts';
import { svgEl } from '../dom.ts';
import { footDrawn } from './footDrawn.ts';
import { bendingSole, stiffSole, transformOf } from './soleDrawn.ts';

/** A leg with its shoe, as somebody who walks sees it: laid anew by attributes alone. */
export interface LegDrawn { readonly group: SVGGElement; readonly lay: (stride: Stride) => void }

/** @param cut the sole that rolls; a shoe that bends where there is none */
export function legDrawn({ own: { carried }, shape }: ShoeWalk, cut: ShoeWalkShown['cut'], name: string): LegDrawn {
  const group = svgEl('g', { class: name }), leg = svgEl('line', { class: 'limb' }), foot = footDrawn(shape, carried.pivot, cut?.tip);
  const rear = svgEl('path', { d: foot.rear, class: 'upper' }), fore = svgEl('path', { d: foot.fore, class: 'upper' }), sole = cut ? stiffSole(cut) : bendingSole(shape);
  group.append(leg, rear, fore, sole.group);
  return {
    group,
    lay: ({ place, pivot, hip }) => {
      leg.setAttribute('x1', pivot[0].toFixed(2)); leg.setAttribute('y1', (-pivot[1]).toFixed(2));
      leg.setAttribute('x2', hip[0].toFixed(2)); leg.setAttribute('y2', (-hip[1]).toFixed(2));
      rear.setAttribute('transform', transformOf(place));
      fore.setAttribute('transform', transformOf(cut ? place : forePlace(shape, place)));
      sole.lay(place);
    },
  };
}
