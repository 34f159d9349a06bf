import { svgEl } from './dom.ts';

export interface MarkLayer {
  readonly layer: SVGGElement;
  readonly show: (marks: readonly string[]) => void;
  /** Lights up what belongs to a number, also when it is drawn anew. */
  readonly light: (of: string | undefined) => void;
}

/** The marks of a drawing, each as the text of its SVG. Of the next drawing only those that differ are put anew: a drag moves few. */
export function markLayer(): MarkLayer {
  const layer = svgEl('g'), scratch = svgEl('g');
  let drawn: readonly string[] = [], lit: string | undefined;
  const relight = (): void => {
    for (const mark of layer.querySelectorAll('.lit')) mark.classList.remove('lit');
    if (lit) for (const mark of layer.querySelectorAll(`[data-of="${CSS.escape(lit)}"]`)) mark.classList.add('lit');
  };
  return {
    layer,
    show: (marks) => {
      if (marks.length === drawn.length) replaceChanged(layer, scratch, drawn, marks);
      else layer.innerHTML = marks.join('');
      drawn = marks;
      if (lit) relight();
    },
    light: (of) => { lit = of; relight(); },
  };
}

function replaceChanged(layer: SVGGElement, scratch: SVGGElement, before: readonly string[], now: readonly string[]): void {
  const changed = now.flatMap((mark, i) => (mark === before[i] ? [] : [i]));
  if (changed.length === 0) return;
  scratch.innerHTML = changed.map((i) => now[i]).join('');
  const old = changed.map((i) => layer.children[i]!), fresh = [...scratch.children];
  old.forEach((mark, i) => mark.replaceWith(fresh[i]!));
}
