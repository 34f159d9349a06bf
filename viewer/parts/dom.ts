type Child = Node | string | undefined | false;
type Attributes = Readonly<Record<string, string | number | boolean | undefined | ((event: never) => void)>>;

/** A small piece of page: attributes as written in HTML, functions as listeners (`onclick`), children in order. */
export function el<Tag extends keyof HTMLElementTagNameMap>(tag: Tag, attributes: Attributes = {}, ...children: readonly Child[]): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') made.addEventListener(name.slice(2), value as EventListener);
    else if (value !== undefined && value !== false) made.setAttribute(name, value === true ? '' : String(value));
  }
  made.append(...children.filter((child): child is Node | string => child !== undefined && child !== false));
  return made;
}

export const button = (words: string, press: () => void, attributes: Attributes = {}): HTMLButtonElement =>
  el('button', { type: 'button', onclick: press, ...attributes }, words);

const SVG = 'http://www.w3.org/2000/svg';
export function svgEl<Tag extends keyof SVGElementTagNameMap>(tag: Tag, attributes: Readonly<Record<string, string | number>> = {}): SVGElementTagNameMap[Tag] {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  return made;
}
