import { spot } from '../../../src/exports/view.ts';
import type { Shown } from '../../desk/protocol.ts';
import type { SpreadShown } from '../../desk/spreadShown.ts';
import type { DrawnBand } from '../sideView.ts';

/** The bands of the shoes that roll, on the paper of the side drawing: shaded below all lines, its two edges above the soles. Pure. */
export function bandDrawn(shoes: readonly SpreadShown[], places: Shown['places']): DrawnBand {
  const bands = shoes.flatMap(({ side, band }) => { const view = places.find((one) => one.side === side)?.view; return band && view ? [{ band, view }] : []; });
  const lines = bands.map(({ band, view }) => {
    const line = (at: 1 | 2): readonly string[] => band.map((place) => spot(view, [place[0], place[at]]).map((one) => one.toFixed(2)).join(' '));
    return { low: line(1), high: line(2) };
  });
  return {
    shade: lines.map(({ low, high }) => `<path d="M${[...low, ...[...high].reverse()].join('L')}Z"/>`).join(''),
    // Light below the dashes, so that they are seen on the dark outsole too.
    edges: lines.map(({ low, high }) => { const d = `M${low.join('L')}M${high.join('L')}`; return `<path class="halo" d="${d}"/><path d="${d}"/>`; }).join(''),
  };
}
