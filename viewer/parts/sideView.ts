import type { Paper } from '../../src/exports/drawing.ts';
import type { Shown, SvgShown } from '../desk/protocol.ts';
import { svgEl } from './dom.ts';
import { markLayer } from './markLayer.ts';
import { pins, type PinMoves } from './pins.ts';

export interface SideView {
  /** @param current false where the sheet has gone on meanwhile */
  readonly show: (shown: Shown, current: boolean) => void;
  /** Nothing to be seen: this job has no shape yet. */
  readonly clear: () => void;
  /** Greys the drawing that is no longer true of the sheet. */
  readonly stale: (is: boolean) => void;
  readonly light: (of: string | undefined) => void;
  /** Points at a place of a shoe, mm from the heel. */
  readonly pointAt: (side: string, x: number) => void;
  /** An older drawing, laid under this one. */
  readonly ghost: (drawing: SvgShown | undefined) => void;
  /** How far the ground face may lie off. It goes with the drawing it was laid into. */
  readonly band: (drawn: DrawnBand | undefined) => void;
}

/** Text of SVG: what is laid below the drawing's lines, and what above. */
export interface DrawnBand { readonly shade: string; readonly edges: string }

export interface Moves extends PinMoves { readonly light: (of: string | undefined) => void }

const NOTHING: Paper = { width: 1, height: 1 };
const layer = (): SVGGElement => svgEl('g');

/** The side drawing of both shoes, alive: the same marks as on paper, with pins to drag. */
export function sideView(host: HTMLElement, moves: Moves): SideView {
  const svg = svgEl('svg', { class: 'side-drawing', role: 'group', 'aria-label': 'Side drawing of the shoes' });
  const under = layer(), { layer: marks, show: draw, light } = markLayer(), place = layer(), shade = layer(), edges = layer();
  marks.setAttribute('aria-hidden', 'true');
  under.setAttribute('class', 'ghost');
  shade.setAttribute('class', 'band-shade');
  edges.setAttribute('class', 'band-edges');
  svg.append(under, marks, shade, edges, place);
  host.append(svg);
  const pinned = pins(svg, moves);
  let now: Shown | undefined;
  const band = (drawn: DrawnBand | undefined): void => { shade.innerHTML = drawn?.shade ?? ''; edges.innerHTML = drawn?.edges ?? ''; };

  const over = (event: Event): void => moves.light((event.target as Element).closest('[data-of]')?.getAttribute('data-of') ?? undefined);
  marks.addEventListener('pointerover', over);
  marks.addEventListener('pointerleave', () => moves.light(undefined));

  /** Told again, an attribute has the browser lay out all that is in the drawing. */
  const attribute = (name: string, value: string): void => { if (svg.getAttribute(name) !== value) svg.setAttribute(name, value); };

  return {
    show: (shown, current) => {
      now = shown;
      const { paper, marks: drawn, title } = shown.side;
      attribute('viewBox', `0 0 ${paper.width} ${paper.height}`);
      attribute('aria-label', `${title}. The numbers are in the list of figures.`);
      draw(drawn);
      band(undefined);
      place.replaceChildren();
      pinned.show(shown.handles, paper, current);
    },
    clear: () => {
      now = undefined;
      draw([]);
      band(undefined);
      place.replaceChildren();
      pinned.show([], NOTHING, true);
      attribute('aria-label', 'Side drawing of the shoes: there is no shape yet');
    },
    stale: (is) => svg.classList.toggle('stale', is),
    light,
    pointAt: (side, x) => {
      const view = now?.places.find((one) => one.side === side)?.view;
      if (!view || !now) return;
      const at = view.zero[0] + x * view.scale, top = 20, bottom = view.zero[1] + 3;
      place.replaceChildren(svgEl('line', { x1: at, x2: at, y1: top, y2: bottom, class: 'place' }));
    },
    ghost: (drawing) => { under.innerHTML = drawing?.outlines ?? ''; },
    band,
  };
}
