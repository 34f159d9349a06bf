import type { Design } from '../checks/design.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import type { Made } from '../making/made.ts';
import type { Shoe } from '../pair/shoe.ts';
import { blockFiles } from './blockFiles.ts';
import { blockNumbers } from './blockNumbers.ts';
import { gaugeFiles, wedgeFiles } from './gaugeFiles.ts';
import { gaugeNumbers, wedgeNumbers } from './gaugeNumbers.ts';
import { jigFiles } from './jigFiles.ts';
import { jigNumbers } from './jigNumbers.ts';
import { jobCardPdf } from './jobCard.ts';
import { mouldFiles } from './mouldFiles.ts';
import { mouldNumbers } from './mouldNumbers.ts';
import type { NamedFile } from './namedFile.ts';
import { paperNumbers } from './paperNumbers.ts';
import { plyFiles } from './plyFiles.ts';
import { clothNumbers, plyNumbers } from './plyNumbers.ts';
import { printFiles } from './printFiles.ts';
import { printNumbers } from './printPaper.ts';
import { stackFiles } from './stackFiles.ts';
import { sheetNumbers, stackNumbers } from './stackNumbers.ts';
import { templateFiles } from './templates.ts';

/** How what is made besides the soles leaves: one line for each thing in each of these lists. */

/** Every file of what a sheet orders besides the soles. */
export function filesBeside(design: Design, made: Made): NamedFile[] {
  const { job: { reference }, making } = design.fitting;
  return [
    ...made.moulds.flatMap((mould) => mouldFiles(mould, reference)),
    ...blockFiles(design, made.blocks),
    ...printFiles(made.prints, reference, making),
    ...jigFiles(design, made),
    ...gaugeFiles(design, made),
    ...(made.stack ? stackFiles(design, made.stack) : []),
    ...(made.plies ? plyFiles(design, made.plies) : []),
    ...(making.templates ? templateFiles(design, making.templates) : []),
    ...wedgeFiles(design, made),
    ...(making.card ? [{ name: `${reference}_job-card.pdf`, bytes: jobCardPdf(design, made) }] : []),
  ];
}

/** The numbers of what is made for one shoe. */
export function numbersBeside(made: Made, shoe: Shoe, fitting: Fitting): object {
  const own = ({ side }: { readonly side: Side }): boolean => side === shoe.side, mould = made.moulds.find(own), block = made.blocks.find(own), print = made.prints.find(own);
  return {
    mould: mould && mouldNumbers(mould), block: block && blockNumbers(block), print: print && printNumbers(print), stack: made.stack && stackNumbers(made.stack, shoe, fitting),
    ...plyNumbers(made, shoe.side), ...jigNumbers(made, shoe.side), ...gaugeNumbers(made, shoe.side), ...wedgeNumbers(made, shoe.side),
  };
}

/** The numbers of what is made for the pair as a whole. */
export const numbersOfPair = (design: Design, made: Made): object => ({
  sheets: made.stack?.sheets.map((sheet) => sheetNumbers(sheet, design.fitting.job.reference)), cloths: clothNumbers(made), ...paperNumbers(design, made),
});
