import type { ShoeMould } from '../making/made.ts';
import { mouldSheet } from './mouldSheet.ts';
import { solidFile, textFile, type NamedFile } from './namedFile.ts';

/** Cavity and lid of a mould as solids, piece by piece, and its plan. */
export function mouldFiles(one: ShoeMould, reference: string): NamedFile[] {
  const { side, mould: { cavity, lid } } = one, stem = `${reference}_${side}_mould`;
  return [...[...cavity, ...lid].map(({ name, mesh }) => solidFile(side, `${stem}-${name}`, mesh)), textFile(`${stem}.dxf`, mouldSheet(one, `${reference} ${side}`))];
}
