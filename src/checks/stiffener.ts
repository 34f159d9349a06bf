import { degrees, inDegrees } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { assumptionsOf, leastToSpare, softestOf } from '../stiffener/decides.ts';
import { bendTold, GRADE_UP_TO } from '../stiffener/grades.ts';
import { CAMBER_USUAL } from '../stiffener/laying.ts';
import { inShort } from '../stiffener/layers.ts';
import { packFor, moreOn, type Pack } from '../stiffener/pack.ts';
import type { Reading } from '../stiffener/reading.ts';
import { ADDED_SIDES, addedWords, droopWords, timesWords } from './benchWords.ts';
import type { Finding } from './finding.ts';
import { CRITERION_WORDS, noneReaches, wouldHelp } from './packWays.ts';
import { mm, rounded, sentences } from './say.ts';
import { over, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';
import { laidChecks } from './stiffenerLaid.ts';
import { stiffenerUnknown } from './stiffenerUnknown.ts';

/** What is to be said of a stiffener that is wanted or laid. */
export function stiffener(seen: Seen<RockerShoe>): Finding[] {
  const pack = packFor(seen.shoe, seen.fitting);
  if (!pack) return stiffenerUnknown(seen);
  return [...judgements(seen, pack), ...tooThick(seen, pack), ...tested(seen, pack), ...cambered(seen, pack), ...stiffer(seen, pack), ...laidChecks(seen, pack), ...laidSo(seen, pack)];
}

/** The first that stops, or else the first that warns, says besides what would keep to it. */
function judgements({ shoe: { side }, pace }: Seen<RockerShoe>, pack: Pack): Finding[] {
  const { judgements: all } = pack.assessed, first = all.find(({ severity }) => severity === 'stop') ?? all.find(({ severity }) => severity === 'warn');
  return all.map((one): Finding => ({
    code: one.code, severity: one.severity, side, measured: one.measured, limit: one.limit, unit: one.unit, where: 'stiffener', ...(one.at === undefined ? {} : { at: one.at }),
    text: sentences(one.text, ...(one === first && !pack.test ? [noneReaches(pack), pace === 'careful' ? advice(pack) : ''] : [])), basis: one.basis,
  }));
}

const advice = (pack: Pack): string => (pack.by === 'sheet' ? added(pack) : wouldHelp(pack));

/** Plies more on what is laid, each put in. */
function added(pack: Pack): string {
  const more = moreOn(pack), count = more ? more.onTop + more.underneath : 0;
  return more ? `${addedWords(more)} more (order.stiffener.plies) ${count === 1 ? 'keeps' : 'keep'} to ${pack.keeps === 'not' ? 'it' : 'all'}; ${ADDED_SIDES}` : '';
}

function tooThick({ shoe: { side } }: Seen<RockerShoe>, { thickness, order: { thicknessAtMost } }: Pack): Finding[] {
  return !over(thickness, thicknessAtMost) ? [] : [{
    code: 'STIFFENER_THICK', severity: 'warn', side, measured: thickness, limit: thicknessAtMost, unit: 'mm', where: 'stiffener',
    text: `The stiffener is ${mm(thickness)} thick; at most ${mm(thicknessAtMost)} was asked for (order.stiffener.thicknessAtMost).`, basis: PRACTICE,
  }];
}

/** What the bench test tells. */
function tested({ shoe: { side } }: Seen<RockerShoe>, { test, keeps, plate: { ball } }: Pack): Finding[] {
  if (!test) return [];
  const { read, gave, lever, reckoned, times, reading } = test, isGiven = gave > 0;
  return [{
    code: 'STIFFENER_TEST', severity: reading.means === 'good' ? 'note' : 'warn', side, measured: read, limit: reckoned, unit: 'mm', places: 2, where: 'stiffener', at: ball,
    text: sentences(`You read ${droopWords(read + gave)} of droop ${mm(lever, 0)} ahead of the tread line${isGiven ? `, ${droopWords(gave)} of it the clamp's giving,` : ''} where ${droopWords(reckoned)} were reckoned (order.stiffener.bench): the pack ${timesWords(times)}`, counted(reading, times), reading.means === 'good' && keeps !== 'all' ? 'It is as good as it was reckoned to be; what warns of it stays' : todo(reading)), basis: 'linear mechanics of the pack as told',
  }];
}

function counted({ means }: Reading, times: number): string {
  if (means === 'test again') return 'No pack laid of this is so stiff, so the reading is not counted';
  return times < 1 ? 'Its bend is counted so; its strength is not, for a stiff pack is no stronger' : 'Bend and strength are counted so';
}

function todo(reading: Reading): string {
  switch (reading.means) {
    case 'test again': return 'Test again: a wrong mass, a stuck gauge, or the clamp not at its line';
    case 'good': return 'It is good';
    case 'soft': return 'It keeps to what must be, but is softer than any pack laid of this should be: look for dry spots, voids and a loose core, and test it again';
    case 'add': return `Add ${addedWords(reading.add)}, all along (${ADDED_SIDES}), tell them under order.stiffener.plies without this reading, and test it again`;
    case 'lay anew': return 'Not even three plies more make it keep to what must be: do not use it, lay it anew';
  }
}

function cambered({ shoe: { side }, pace }: Seen<RockerShoe>, pack: Pack): Finding[] {
  const { stiffener: { camber }, plate: { ball }, assessed } = pack;
  if (!camber || camber.counted === 'whole' || pace === 'quick' || assessed.judgements.some(({ code }) => code === 'STIFFENER_DISHED')) return [];
  return [{
    code: 'STIFFENER_CAMBER', severity: 'note', side, measured: inDegrees(assessed.bench.bend), unit: 'deg', where: 'stiffener', at: ball, basis: PRACTICE,
    text: camber.counted === 'half' ? halfCounted(pack) : `The last's camber was not measured (last.camber): for the bend none is counted, for what strains the plies up to ${mm(CAMBER_USUAL)} at the ball, for dished plates are strained more.`,
  }];
}

/** Of a bend that was wanted in degrees, less than this share is far less. */
const FAR_LESS = 0.5;

/** Stiffer than was wanted, for something else decides. A rigid one cannot be; of a number in degrees it is told only. */
function stiffer({ shoe: { side }, pace }: Seen<RockerShoe>, pack: Pack): Finding[] {
  const { order: { wanted, bendAtMost }, assessed: { bench: { bend } }, plate: { ball } } = pack, least = bendAtMost === undefined ? (wanted === 'rigid' ? 0 : GRADE_UP_TO.rigid) : bendAtMost * FAR_LESS;
  if (bend >= least || pack.keeps === 'not') return [];
  const from = inDegrees(least), soft = pace === 'careful' ? softestOf(pack) : undefined, to = inDegrees(bendAtMost ?? GRADE_UP_TO['slight flex']);
  const softest = soft ? `The softest pack with nothing that stops bends ${bendTold(soft.assessed.bench.bend)}` : '', decides = soft && soft.assessed.bench.bend < least ? `: ${CRITERION_WORDS[leastToSpare(soft.assessed, { ...pack.asked, bendAtMost: Infinity }, 'must').of]} decide` : '';
  return [{
    code: 'STIFFENER_STIFFER', severity: bendAtMost === undefined ? 'warn' : 'note', side, measured: inDegrees(bend), limit: bendAtMost === undefined ? from : to, unit: 'deg', where: 'stiffener', at: ball,
    text: sentences(
      bendAtMost === undefined ? `Wanted was slight flex, ${rounded(from, 1)} to ${rounded(to, 0)}°; ${pack.by === 'sheet' ? 'what is laid' : 'what was found'} bends ${bendTold(bend)} only` : `At most ${rounded(to, 1)}° were wanted (order.stiffener.bendAtMost); it bends ${bendTold(bend)} only`,
      `${softest}${decides}`, bendAtMost === undefined ? 'Ask the prescriber whether so stiff a sole is meant' : '',
    ), basis: PRACTICE,
  }];
}

function halfCounted(pack: Pack): string {
  const [worst, best] = assumptionsOf(pack).find(({ of }) => of === 'camber')!.bends;
  return `The camber counts half, for a plate flattens as it bends: ${bendTold(degrees(worst))} if none of it holds, ${bendTold(degrees(best))} if all does; what strains the plies counts whichever is worst. Hang a mass on the bare pack and enter what it droops (order.stiffener.bench, with order.stiffener.plies).`;
}

function laidSo({ shoe: { side } }: Seen<RockerShoe>, { by, stiffener: laid, underFoam, thickness, plate, grams: { pack } }: Pack): Finding[] {
  return by === 'sheet' ? [] : [{
    code: 'STIFFENER_FOUND', severity: 'note', side, measured: thickness, unit: 'mm', where: 'stiffener',
    text: `Found for the stiffener: ${inShort(laid, underFoam, plate)}; ${mm(thickness)} thick, ${rounded(pack, 0)} g.${underFoam ? ' The body then sits higher by the plies under it.' : ''}`, basis: PRACTICE,
  }];
}
