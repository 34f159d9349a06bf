import { inDegrees, type Rad } from '../geometry/units.ts';
import { BENCH_MOMENT } from '../stiffener/loads.ts';
import { BEND_MOST } from '../stiffener/grades.ts';
import { lesser } from '../stiffener/strained.ts';
import type { Pack } from '../stiffener/pack.ts';
import { plain, type Plain } from './figure.ts';
import type { FigureKey } from './restsOn.ts';
import { rounded } from './say.ts';

/** What a stiffener that is wanted or laid is and does; a reserve that nothing can use up is left out. */
export function packFigures(pack: Pack | undefined): readonly Plain[] {
  if (!pack) return [];
  const { thickness, grams: { cloth, resin, core, glue, shank }, plate: { ball }, assessed: { grade, bench, walking, stumble }, asked: { mass } } = pack;
  const bend = (key: FigureKey, label: string, value: Rad): Plain => ({ ...plain(key, label, inDegrees(value), 'deg', ball), digits: 2, most: inDegrees(BEND_MOST) });
  const weight = (key: FigureKey, label: string, value: number | undefined): Plain[] => (value ? [plain(key, label, value, 'g')] : []);
  return [
    plain('packThickness', 'Stiffener, plies and core together', thickness, 'mm'),
    ...weight('packCloth', 'Cloth in the stiffener, dry', cloth), ...weight('packResin', 'Resin in the stiffener', resin), ...weight('packCore', 'Core of the stiffener', core),
    ...weight('packGlue', 'Glue between the sheets of its core', glue), ...weight('packShank', 'Steel shank on the stiffener', shank),
    bend('packBend', `Bend at the ball under ${BENCH_MOMENT} N·m for each kg (${grade})`, bench.bend),
    plain('packTip', `Droop of the tip on the bench, under ${BENCH_MOMENT} N·m for each kg`, bench.tip, 'mm'),
    bend('packWalks', `Bend at the ball in walking, under ${rounded(walking.load.moment / 1000 / mass, 2)} N·m for each kg`, walking.bend),
    { ...plain('packEnergy', 'Stored at the ball in walking, each step', walking.energy, 'J'), digits: 2 },
    { ...plain('packStrain', 'Largest strain of the plies in walking', Math.abs(walking.strain) * 100, '%', walking.strainAt), digits: 2 },
    ...reserve('packFirstPly', 'A stumble on the tip may be so many times as hard before a ply fails', stumble.firstPly),
    ...reserve('packWrinkling', 'Loads may grow so many times before a face wrinkles', lesser(walking.wrinkling, stumble.wrinkling)),
    ...reserve('packCoreShear', 'Loads may grow so many times before the core is sheared', lesser(walking.coreShear, stumble.coreShear)),
  ];
}

const reserve = (key: FigureKey, label: string, { times, at }: { readonly times: number; readonly at: number }): Plain[] => (Number.isFinite(times) ? [plain(key, label, times, 'times', at)] : []);
