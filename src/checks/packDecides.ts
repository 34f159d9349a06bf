import type { LengthUnit } from '../fitting/lengthUnit.ts';
import { degrees } from '../geometry/units.ts';
import { assumptionsOf, leastToSpare, supposing, withoutEach, type Otherwise, type Supposed } from '../stiffener/decides.ts';
import { bendTold } from '../stiffener/grades.ts';
import { laidIn } from '../stiffener/layers.ts';
import { CAMBER_USUAL } from '../stiffener/laying.ts';
import { STUMBLE_WEIGHTS } from '../stiffener/loads.ts';
import type { Pack } from '../stiffener/pack.ts';
import { inUnits, length } from './packWords.ts';
import { CRITERION_WORDS, reserveWords } from './packWays.ts';
import { capital, mm, pliesWords, rounded, sentences } from './say.ts';

/** What decides a stiffener, a paragraph each: what it has least to spare of and is decided by, which load taken as usual would change it most, how sure its bend is. */
export const decidesIt = (pack: Pack, units: LengthUnit): string[] => [held(pack, units), supposed(pack, units), ...howSure(pack)].filter((text) => text !== '').map((text) => inUnits(text, units));

function held(pack: Pack, units: LengthUnit): string {
  const least = leastToSpare(pack.assessed, pack.asked), each = withoutEach(pack), [first, ...others] = each.filter(({ changes }) => changes);
  const same = each.filter(({ changes }) => !changes).map(({ without }) => CRITERION_WORDS[without]);
  return sentences(
    ...(first ? [`What decides it: ${CRITERION_WORDS[first.without]}; not held to that, it would be ${otherwiseWords(first, pack, units)}`] : each.length > 0 ? ['What decides it: no single thing it is held to; without any one of them it would be the same pack'] : []),
    ...others.map((one) => `Not held to ${CRITERION_WORDS[one.without]}: ${otherwiseWords(one, pack, units)}`),
    ...(first && same.length > 0 ? [`Without ${same.join(', or ')} it would be the same`] : []),
    `It has least to spare of ${reserveWords(least)}: ${rounded(least.times, 2)} times what it may bear`,
  );
}

function supposed(pack: Pack, units: LengthUnit): string {
  const all = supposing(pack), [first] = all;
  if (!first) return '';
  return sentences(
    first.changes ? `What is taken as usual and changes it most: ${SUPPOSED[first.what](first.value)} it would be ${otherwiseWords(first, pack, units)}` : 'Nothing that is taken as usual changes it',
    ...(first.changes ? all.slice(1) : all).map((one) => `${capital(SUPPOSED[one.what](one.value))} ${one.changes ? otherwiseWords(one, pack, units) : 'the same'}`),
  );
}

const SUPPOSED: Readonly<Record<Supposed['what'], (value?: number) => string>> = {
  walking: (value) => `where walking pushes ${value} N·m for each kg,`, stumble: (value) => `where a stumble weighs ${value} body weight in place of ${STUMBLE_WEIGHTS},`,
  'soft cores': () => 'where every core is as soft as any sold under its name,', 'camber none': () => 'where none of the camber holds,', 'camber whole': () => 'where all of the camber holds,',
  'camber usual': () => `where the bottom is dished ${mm(CAMBER_USUAL)} at the ball and all of that holds,`,
};

/** "3 plies ... around 4 mm of birch plywood, 5.1 mm (1 ply, 2.0 mm and 24 g less)" */
function otherwiseWords({ tried, plies, grams, changes }: Otherwise, pack: Pack, units: LengthUnit): string {
  if (!changes) return 'the same';
  const thick = tried.thickness - pack.thickness, more = (value: number, text: string): string => `${text} ${value > 0 ? 'more' : 'less'}`;
  const told = [
    ...(plies === 0 ? [] : [more(plies, pliesWords(Math.abs(plies)))]), ...(Math.abs(thick) < 0.05 ? [] : [more(thick, length(Math.abs(thick), units, 1))]),
    ...(Math.abs(grams) < 0.5 ? [] : [more(grams, `${rounded(Math.abs(grams), 0)} g`)]),
  ];
  return `${inUnits(laidIn(tried, pack.plate), units)}${told.length > 0 ? ` (${told.join(', ')})` : ''}${tried.keeps === 'not' ? ', which does not keep to it' : ''}`;
}

/** The material that moves the bend most is told first. */
const howSure = (pack: Pack): string[] => assumptionsOf(pack).map(({ text, bends: [worst, best], grades, softest: { walking, stumble } }, i) =>
  `${i === 0 ? 'How sure the bend is: ' : ''}${text}: ${bendTold(degrees(worst))} (${grades[0]}) to ${bendTold(degrees(best))} (${grades[1]}); at the softest walking strains the plies by ${rounded(Math.abs(walking.strain) * 100, 2)} %, and a ply bears ${rounded(stumble.firstPly.times, 2)} times a stumble.`);
