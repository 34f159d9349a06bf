import type { Point } from '../../../src/geometry/point.ts';
import type { Mm } from '../../../src/geometry/units.ts';
import { tracesOf, type Frame } from '../../../src/walk/frame.ts';
import type { ShoeWalk } from '../../../src/walk/walking.ts';
import type { ShoeWalkShown } from '../../desk/protocol.ts';
import { svgEl } from '../dom.ts';
import type { Reach } from './reach.ts';
import { bendingSole, spots, stiffSole } from './soleDrawn.ts';

/** One shoe from the side as it rolls over the floor, an ordinary one as a ghost behind it. */
export interface ShoePicture { readonly svg: SVGSVGElement; readonly lay: (own: Frame, ordinary: Frame) => void }

/** One body weight is drawn so long. */
export const BODY_WEIGHT: Mm = 130;
/** A push no longer than its arrow head is only a mark on the floor. */
const SHORT: Mm = 11;
const UNDER: Mm = 16;

export function shoePicture(shown: ShoeWalkShown, walk: ShoeWalk, { from, to, high }: Reach, mark: Mm): ShoePicture {
  const svg = svgEl('svg', { class: 'rolls', role: 'img', viewBox: `${from} ${-high} ${to - from} ${high + UNDER}`, 'aria-label': `${shown.side} shoe from the side as it rolls; its numbers stand below` });
  const own = shown.cut ? stiffSole(shown.cut, footOf(walk)) : bendingSole(walk.shape, footOf(walk)), ghost = walk.kind === 'rocker' ? ghostOf(walk) : undefined;
  const leg = legLine('leg'), push = pushArrow(), trace = svgEl('polyline', { class: 'trace', points: spots(tracesOf(walk.own).pivot) });
  svg.append(floorMarks(from, to, mark), ...(ghost ? [ghost.group] : []), own.group, trace, leg.group, push.group);
  return {
    svg,
    lay: (frame, ordinary) => {
      own.lay(frame.place);
      leg.lay(frame.pivot, frame.hip);
      push.lay(frame);
      ghost?.lay(ordinary);
    },
  };
}

/** As gait pictures have it: ankle pivot to heel and to ball, in straight lines. */
function footOf({ own: { carried: { pivot } }, shape: { rear: [, ball, , heel] } }: ShoeWalk): string {
  return ball && heel ? `M${spots([heel, pivot, ball])}` : '';
}

function ghostOf(walk: ShoeWalk): { readonly group: SVGGElement; readonly lay: (frame: Frame) => void } {
  const group = svgEl('g', { class: 'ordinary' }), sole = bendingSole(walk.shape, '', 'plain'), leg = legLine('leg');
  group.append(sole.group, svgEl('polyline', { class: 'trace', points: spots(tracesOf(walk.ordinary).pivot) }), leg.group);
  return { group, lay: ({ place, pivot, hip }) => { sole.lay(place); leg.lay(pivot, hip); } };
}

/** From the ankle pivot to the hip; the picture cuts it off above. */
function legLine(name: string): { readonly group: SVGGElement; readonly lay: (pivot: Point, hip: Point) => void } {
  const group = svgEl('g', { class: name }), line = svgEl('line'), joint = svgEl('circle', { r: 4 });
  group.append(line, joint);
  return {
    group,
    lay: ([x, up], [hipX, hipUp]) => {
      line.setAttribute('x1', x.toFixed(2)); line.setAttribute('y1', (-up).toFixed(2));
      line.setAttribute('x2', hipX.toFixed(2)); line.setAttribute('y2', (-hipUp).toFixed(2));
      joint.setAttribute('cx', x.toFixed(2)); joint.setAttribute('cy', (-up).toFixed(2));
    },
  };
}

/** The floor's upright push, from where it acts. */
function pushArrow(): { readonly group: SVGGElement; readonly lay: (frame: Frame) => void } {
  const group = svgEl('g', { class: 'push' }), line = svgEl('line', { x1: 0, y1: 0, x2: 0 }), head = svgEl('path', { d: 'M0 0L-4 11H4Z' }), foot = svgEl('path', { d: 'M0 0L-6 9H6Z' });
  group.append(line, head, foot);
  return {
    group,
    lay: ({ contact: [x, up], push }) => {
      const long = push * BODY_WEIGHT;
      group.setAttribute('transform', `translate(${x.toFixed(2)} ${(-up).toFixed(2)})`);
      line.setAttribute('y2', (-long).toFixed(2));
      head.setAttribute('transform', `translate(0 ${(-long).toFixed(2)})`);
      head.setAttribute('visibility', long > SHORT ? 'visible' : 'hidden');
    },
  };
}

/** The floor, with marks so far apart, every one from the shoe's own zero. */
export function floorMarks(from: Mm, to: Mm, apart: Mm): SVGGElement {
  const group = svgEl('g', { class: 'floor' }), first = Math.ceil(from / apart), count = Math.floor(to / apart) - first + 1;
  group.append(svgEl('line', { x1: from, x2: to, y1: 0, y2: 0 }));
  for (let i = 0; i < count; i++) { const x = (first + i) * apart; group.append(svgEl('line', { class: 'mark', x1: x, x2: x, y1: 0, y2: 7 })); }
  return group;
}
