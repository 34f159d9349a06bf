import type { Design } from '../checks/design.ts';
import type { ShoeBlock } from '../making/made.ts';
import { blockSheet } from './blockDxf.ts';
import { blockPdf } from './blockPdf.ts';
import { solidFile, textFile, type NamedFile } from './namedFile.ts';

/** Each block as it stands after each set-up, as solid and drawing, and the set-up sheet. */
export function blockFiles(design: Design, blocks: readonly ShoeBlock[]): NamedFile[] {
  const { reference } = design.fitting.job;
  if (blocks.length === 0) return [];
  const files = blocks.flatMap((block) => block.block.setUps.flatMap(({ mesh }, i) => {
    const stem = `${reference}_${block.side}_block-${i + 1}`;
    return [solidFile(block.side, stem, mesh), textFile(`${stem}.dxf`, blockSheet(block, i, `${reference} ${block.side}`))];
  }));
  return [...files, { name: `${reference}_block.pdf`, bytes: blockPdf(design, blocks) }];
}
