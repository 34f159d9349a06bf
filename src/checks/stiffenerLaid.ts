import { inDegrees, type Mm } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { gradeOf } from '../stiffener/grades.ts';
import type { Pack } from '../stiffener/pack.ts';
import { tightestRadius } from '../stiffener/plate.ts';
import { assessedOr } from '../stiffener/search.ts';
import { thickestBent } from '../stiffener/sheets.ts';
import type { Finding } from './finding.ts';
import { deg, mm, rounded } from './say.ts';
import { outside, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** What is to be said of what a stiffener is laid of, whatever it bends. */
export const laidChecks = (seen: Seen<RockerShoe>, pack: Pack): Finding[] => [splits, wetness, offPlate, shortShank, unbent, bonded].flatMap((check) => check(seen, pack));

/** Fibres that lean no further from each other than this count as one way. Common practice. */
const ONE_WAY = 20;

/** Straight fibres all one way are held together across by resin alone. */
function splits({ shoe: { side } }: Seen<RockerShoe>, { stiffener: { below, above } }: Pack): Finding[] {
  const faces = [{ of: 'below', plies: below }, { of: 'above', plies: above }].map(({ of, plies }) => ({ of, plies: plies.filter(({ over }) => over === undefined) })).filter(({ plies }) => plies.length > 0);
  const split = faces.filter(({ plies }) => plies.every(({ ply }) => ply.lamina.e2 < ply.lamina.e1 / 2) && spread(plies.map(({ angle }) => inDegrees(angle))) <= 2 * ONE_WAY);
  if (split.length === 0) return [];
  const which = faces.length === 1 ? 'The plies are' : split.length === 2 ? 'The plies below and above the core are' : `The plies ${split[0]!.of} the core are`;
  return [{
    code: 'STIFFENER_SPLITS', severity: 'warn', side, unit: '', where: 'stiffener', basis: PRACTICE,
    text: `${which} all of straight fibres that run one way, within ${ONE_WAY}° of each other: such plies split along their fibres and have hardly any stiffness in twist. Let the outermost be of woven cloth (order.stiffener.outerCloth, or cloth in plies), glass or aramid against splinters, or lay some at 45°.`,
  }];
}

/** How far directions lie apart, of which each is the same turned by 180°; degrees. */
function spread(angles: readonly number[]): number {
  const round = angles.map((angle) => ((angle % 180) + 180) % 180).sort((a, b) => a - b), gaps = round.map((angle, i) => (round[i + 1] ?? round[0]! + 180) - angle);
  return 180 - Math.max(...gaps);
}

/** Grams of resin to a gram of cloth that are usual by hand; of glass and basalt, which are heavier than this, g/cm³, less is as wet. Common practice. */
const WET = { usual: [0.8, 1.5], ofHeavy: [0.5, 1.2], heavyFrom: 2.2 } as const;

/** Resin that no hand lays so: too little wets nothing through, too much is weight that cracks. The plate looks stiffer for it, for its plies are thicker. */
function wetness({ shoe: { side } }: Seen<RockerShoe>, { stiffener: { below, above } }: Pack): Finding[] {
  const plies = [...below, ...above].flatMap(({ ply: { name, grams, fibreShare, thickness } }) => {
    if (!grams || fibreShare === undefined) return [];
    const measured = grams.resin / grams.cloth, [least, most] = grams.cloth / (1000 * thickness * fibreShare) > WET.heavyFrom ? WET.ofHeavy : WET.usual;
    return outside(measured, [least, most]) ? [{ name, measured, limit: measured < least ? least : most, fibreShare, usual: `${least} to ${most}` }] : [];
  });
  return plies.filter((one, i) => plies.findIndex(({ name, measured }) => name === one.name && measured === one.measured) === i).map(({ name, measured, limit, fibreShare, usual }) => ({
    code: 'STIFFENER_RESIN', severity: 'warn', side, measured, limit, unit: '', where: 'stiffener', basis: PRACTICE,
    text: `${name} with ${rounded(measured, 2)} g of resin to each g of cloth (order.stiffener.resin) is ${rounded(fibreShare * 100, 0)} % fibre by volume; ${usual} g are usual by hand. ${measured < limit
      ? 'With so little it is hardly wetted through: dry spots bear nothing, and plies come apart there' : 'So much is weight, and brittle: resin that stands in pools cracks, and what is pressed out of the pack makes its plies thinner and softer than is reckoned here'}.`,
  }));
}

/** Strips and a shank that were told to lie where there is no plate. */
function offPlate({ shoe: { side } }: Seen<RockerShoe>, { order: { plies = [], shank }, plate }: Pack): Finding[] {
  const told = [...plies.map(({ from, to }, i) => ({ from, to, what: `The strip of ply ${i + 1}`, field: `order.stiffener.plies[${i}]` })), ...(shank ? [{ from: shank.from, to: shank.to, what: 'The steel shank', field: 'order.stiffener.shank' }] : [])];
  return told.flatMap(({ from, to, what, field }): Finding[] => {
    if (from === undefined || to === undefined || !(from < plate.from - PLACED || to > plate.to + PLACED)) return [];
    const begins = Math.max(from, plate.from), ends = Math.min(to, plate.to), limit = from < plate.from - PLACED ? plate.from : plate.to;
    return [{
      code: 'STIFFENER_OFF_PLATE', severity: 'warn', side, measured: from < plate.from - PLACED ? from : to, limit, unit: 'mm', where: 'stiffener', at: limit, basis: PRACTICE,
      text: `${what} is to lie ${mm(from, 0)} to ${mm(to, 0)} from the heel (${field}), and the plate lies ${mm(plate.from, 0)} to ${mm(plate.to, 0)}: ${ends > begins ? `it is cut to ${mm(begins, 0)} to ${mm(ends, 0)}` : 'it is left out'}.`,
    }];
  });
}
/** Ends are placed no more exactly. */
const PLACED: Mm = 1;

/** A strip of steel that ends before the line the sole bends at. */
function shortShank({ shoe: { side } }: Seen<RockerShoe>, { order: { shank }, plate: { ball } }: Pack): Finding[] {
  return !shank || shank.to > ball ? [] : [{
    code: 'STIFFENER_SHANK_SHORT', severity: 'note', side, measured: shank.to, limit: ball, unit: 'mm', where: 'stiffener', at: shank.to, basis: PRACTICE,
    text: `The steel shank ends ${mm(shank.to, 0)} from the heel, behind the tread line at ${mm(ball, 0)}: it stiffens the waist and does nothing for the bend at the ball (order.stiffener.shank.to).`,
  }];
}

/** A core that was named and cannot be bent onto the last in any sheet it is sold in. */
function unbent({ shoe: { side } }: Seen<RockerShoe>, { stiffener: { core }, underFoam, plate }: Pack): Finding[] {
  if (!core || core.sheets || underFoam) return [];
  const radius = tightestRadius(plate), limit = thickestBent(core.material, radius), thinnest = Math.min(...core.material.bends.sold);
  return [{
    code: 'STIFFENER_CORE_BENT', severity: 'warn', side, measured: thinnest, limit, unit: 'mm', where: 'stiffener', basis: core.material.bends.basis,
    text: `The last's bottom is bent to a radius of ${mm(radius, 0)}: ${core.name} bends to that only in sheets up to ${mm(limit, 2)}, and the thinnest sold is ${mm(thinnest)}. It would crack or spring back: take another core (order.stiffener.core), leather board or cork.`,
  }];
}

/** What foam, insole and shank lend is gone where a bond opens. */
function bonded({ shoe: { side }, pace }: Seen<RockerShoe>, pack: Pack): Finding[] {
  const { stiffener, asked, order: { bond }, assessed: { grade, bench, lever }, plate } = pack;
  if (bond === 0 || stiffener.attached.length === 0 || pace === 'quick') return [];
  const loose = assessedOr({ ...stiffener, attached: stiffener.attached.map((layer) => ({ ...layer, bond: 0 })) }, pack, { ...asked, lever }).bench.bend, worse = gradeOf(loose) !== grade;
  return [{
    code: 'STIFFENER_BONDED', severity: worse ? 'warn' : 'note', side, measured: inDegrees(bench.bend), limit: inDegrees(loose), unit: 'deg', where: 'stiffener', at: plate.ball, basis: PRACTICE,
    text: `${stiffener.attached.map(({ name }) => name).join(', ')} count as bonded to ${Math.round(bond * 100)} % (order.stiffener.bond): without a bond the sole would bend ${deg(inDegrees(loose), 2)} on the bench, not ${deg(inDegrees(bench.bend), 2)}${worse ? `, and be ${gradeOf(loose)}` : ''}. A bond opens long before plies break: glue all over, on roughened faces, and tap for hollow spots.`,
  }];
}
