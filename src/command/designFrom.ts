import type { TroubleWords } from '../checks/troubleWords.ts';
import type { Design } from '../design.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Thrown for a sheet whose measures leave no shape. */
class NoShape extends Refusal {
  readonly troubles: readonly TroubleWords[];

  constructor(troubles: readonly TroubleWords[]) {
    super(EXIT.sheet, [...troubles.flatMap(linesOf), 'From these measures no sole can be made; change one of them and call again.'].join('\n'));
    this.name = 'NoShape';
    this.troubles = troubles;
  }

  override forMachines(): object { return { troubles: this.troubles }; }
}

const linesOf = ({ text, works }: TroubleWords): string[] =>
  [`${text}.`, ...(works.length ? works.map((one) => `  works: ${one.text}`) : ['  No single measure mends it within the limits of the sheet; change more than one.'])];

/** The design of a fitting. @throws NoShape when there is none */
export async function designFrom(fitting: Fitting): Promise<Design> {
  const { design } = await import('../design.ts');
  const designing = design(fitting);
  if (designing.ok) return designing.design;
  const { troubleWords } = await import('../checks/troubleWords.ts');
  throw new NoShape(designing.troubles.map((trouble) => troubleWords(trouble, fitting)));
}
