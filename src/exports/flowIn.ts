import { inInches, mm, rounded } from '../checks/say.ts';
import type { LengthUnit } from '../fitting/lengthUnit.ts';
import { MM_PER_INCH, type Mm } from '../geometry/units.ts';
import type { Lettering } from './letters.ts';
import { framed, heading, introduction, paragraph, table, type Block, type Cell, type Column, type Row } from './flow.ts';

/** A written paper in the unit of its sheet: lengths are handed over in mm and said in inches where the sheet is. Texts are turned before they are laid out, so that no line runs over. */
export interface FlowIn {
  readonly units: LengthUnit;
  readonly said: (text: string) => string;
  readonly heading: (text: string) => Block;
  readonly paragraph: (text: string, width: Mm, lettering?: Lettering) => Block;
  readonly introduction: (text: string, width: Mm) => Block;
  readonly framed: (sentences: readonly string[], width: Mm) => Block;
  readonly table: (columns: readonly Column[], rows: readonly Row[], lettering?: Lettering) => Block[];
  /** An area of mm². */
  readonly area: (area: number) => string;
  /** A length of cloth. */
  readonly long: (length: Mm) => string;
}

export function flowIn(units: LengthUnit): FlowIn {
  const inches = units === 'in', said = (text: string): string => (inches ? inInches(text) : text);
  const cell = (one: Cell): Cell => (typeof one === 'string' ? said(one) : { ...one, text: said(one.text) });
  return {
    units, said, heading: (text) => heading(said(text)), paragraph: (text, width, lettering) => paragraph(said(text), width, lettering), introduction: (text, width) => introduction(said(text), width),
    framed: (sentences, width) => framed(sentences.map(said), width), table: (columns, rows, lettering) => table(columns, rows.map(({ cells }) => ({ cells: cells.map(cell) })), lettering),
    area: (area) => (inches ? `${rounded(area / MM_PER_INCH ** 2, 1)} in²` : `${rounded(area / 100, 0)} cm²`), long: (length) => (inches ? mm(length, 0) : `${rounded(length / 1000, 2)} m`),
  };
}
