import { bandWords, kgWords } from '../../src/checks/benchWords.ts';
import { bentWords, isFarTooSoft } from '../../src/checks/packWords.ts';
import { deg, inInches, mm, rounded, sentences } from '../../src/checks/say.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import { GRAVITY, inDegrees, type Mm } from '../../src/geometry/units.ts';
import { benchTestOf, type Hanging } from '../../src/making/plies/bench.ts';
import { CLAMP_BEHIND, clampedBehind, hungAs } from '../../src/stiffener/hung.ts';
import { bentShape } from '../../src/stiffener/bentShape.ts';
import { BENCH_MOMENT, type RollLoad } from '../../src/stiffener/loads.ts';
import type { Pack } from '../../src/stiffener/pack.ts';
import { heldSole, soleBeam } from '../../src/stiffener/sole.ts';
import type { LoadShown } from './protocol.ts';

/**
 * What a stiffener is looked at under: both hangings of the bench card, held and loaded as that says, the hardest moment of walking and
 * a stumble. A pack without room for the bench test is told as it bends clamped up to the ball.
 * @param est behind what rests on an estimate
 */
export function loadsShown(pack: Pack, units: LengthUnit, est: string): readonly LoadShown[] {
  const test = benchTestOf(pack), said = (one: LoadShown): LoadShown => (units === 'mm' ? one : inInchesAll(one));
  const onBench = test ? [hung(pack, test.finished, est), hung(pack, test.bare, est)] : [pushed(pack, 'bench', units, est)];
  return [...onBench, pushed(pack, 'walking', units, est), pushed(pack, 'stumble', units, est)].map(said);
}

const bends = (bend: number, est: string): string => (isFarTooSoft({ bend }) ? 'far too soft' : `bends ${deg(inDegrees(bend), 2)}${est}`);

/** Held and loaded as the bench card says, foot side down. */
function hung(pack: Pack, hanging: Hanging, est: string): LoadShown {
  const { of, mass, moment, loadAt, ball, clampAt, droop, band, atBall } = hanging, whole = of === 'finished shoe', ahead = mm(loadAt - ball, 0), soft = isFarTooSoft({ bend: droop / (loadAt - clampAt) });
  const held = sentences(
    `${whole ? 'Finished shoe, sole up' : 'Bare pack, foot side down'}, clamped up to ${mm(clampAt, 0)} from the heel, ${mm(CLAMP_BEHIND, 0)} behind the tread line`,
    `${kgWords(mass)} ${whole ? 'on a strap round the toe' : 'hung'} ${ahead} ahead of the tread line ${whole ? `is ${rounded(moment, 1)} N·m about it, ${BENCH_MOMENT} N·m for each kg of body mass` : `is ${rounded(moment, 1)} N·m about it`}`,
  );
  const read = soft ? 'It droops so far that nothing else can be told of it: it is far too soft' : `Gauge 1 there goes down by ${mm(droop, 2)}${est}, ${band ? `good from ${bandWords(band)}` : 'and even so the pack is not good'}; gauge 2 on the tread line by ${mm(atBall, 2)}`;
  return {
    of, name: whole ? 'On the bench, finished shoe' : 'On the bench, bare pack', does: whole ? bends(pack.assessed.bench.bend, est) : soft ? 'far too soft' : `droops ${mm(droop, 2)}${est}`,
    load: `${rounded(moment, 1)} N·m: ${kgWords(mass)} hung ${ahead} ahead of the tread line`, words: sentences(held, read, ...(whole && !soft ? [`The ball bends by ${deg(inDegrees(pack.assessed.bench.bend), 2)}${est}, which is what its stiffness goes by`] : [])),
    at: loadAt, shape: soft ? [] : hungShape(pack, hanging), clamp: { at: clampAt, hung: kgWords(mass), droop: mm(droop, 2) },
  };
}

/** [along, height at rest, how far it moved towards the foot] of a pack clamped behind the ball: bent as far as its gauges are told to show. */
function hungShape({ stiffener, plate }: Pack, { of, clampAt, loadAt, mass }: Hanging): LoadShown['shape'] {
  const { rise = () => 0 } = plate, beam = soleBeam(hungAs(stiffener, of), clampedBehind(plate), [loadAt]), force = mass * GRAVITY;
  const { bent } = heldSole(beam, 'bench')({ at: loadAt, force, moment: force * (loadAt - clampAt) });
  return beam.nodes.map((x, i) => [x, rise(x), bent.height[i]!] as const);
}

const NAMES = { bench: 'On the bench', walking: 'Walking, where it strains most', stumble: 'A stumble on the tip' } as const;
const OF = { bench: 'finished shoe', walking: 'walking', stumble: 'stumble' } as const;

/** The floor, or the hand, pushes the forepart towards the foot. */
function pushed(pack: Pack, by: keyof typeof NAMES, units: LengthUnit, est: string): LoadShown {
  const { plate: { ball, to, rise = () => 0 }, assessed } = pack, { at, shape, ...bent } = bentShape(pack, by);
  return {
    of: OF[by], name: NAMES[by], does: bends(bent.bend, est), load: by === 'stumble' ? tipWords(assessed.stumble.load, to - ball) : pushWords(assessed[by].load, ball), words: bentWords({ ...bent, by }, units, est),
    at, shape: isFarTooSoft(bent) ? [] : shape.map(([x, up]) => [x, rise(x), up] as const), ...(by === 'bench' ? { clamp: { at: ball, hung: kgWords(assessed.bench.load.force / GRAVITY), droop: mm(bent.tip, 2) } } : {}),
  };
}

const pushWords = ({ at, force, moment }: RollLoad, ball: Mm): string => `${rounded(moment / 1000, 1)} N·m: as ${rounded(force / GRAVITY, 0)} kg pushing ${mm(at - ball, 0)} ahead of the tread line`;

/** What the last stretch of the sole spreads is told as it lands on the tip. */
const tipWords = ({ moment }: RollLoad, lever: Mm): string => `${rounded(moment / 1000, 1)} N·m: ${rounded(moment / (GRAVITY * lever), 0)} kg on the tip, ${mm(lever, 0)} ahead of the tread line`;

const inInchesAll = ({ clamp, ...one }: LoadShown): LoadShown => ({
  ...one, does: inInches(one.does), load: inInches(one.load), words: inInches(one.words), ...(clamp ? { clamp: { ...clamp, droop: inInches(clamp.droop) } } : {}),
});
