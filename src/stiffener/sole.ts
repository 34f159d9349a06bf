import type { Mm, Rad } from '../geometry/units.ts';
import { beamOf, bentAt, type Bent, type NodeForce } from './beam.ts';
import type { RollLoad } from './loads.ts';
import { cutsOf, type Section } from './section.ts';
import { breaksOf, type Plate, type Stiffener } from './stiffener.ts';
import type { BentCut } from './strained.ts';

/** The sole cut into short stretches, each with its section, how far it is tilted by the shank's curve (cosine), and how its faces part (`BeamStretch`). */
export interface SoleBeam { readonly plate: Plate; readonly nodes: readonly Mm[]; readonly sections: readonly Section[]; readonly tilt: readonly number[]; readonly lean: readonly number[] }

/** No stretch is longer, and none shorter: two places nearer than this are one. */
const STEP: Mm = 2, SAME: Mm = 1e-3;

function nodesOf(stiffener: Stiffener, { from, to, ball, heel }: Plate, loads: readonly Mm[]): Mm[] {
  const places = [from, to, ball, heel, ...loads, ...breaksOf(stiffener)].filter((x) => x >= from && x <= to).sort((a, b) => a - b);
  const apart = places.filter((x, i) => i === 0 || x - places[i - 1]! > SAME);
  return apart.flatMap((x, i) => {
    const next = apart[i + 1];
    if (next === undefined) return [x];
    const parts = Math.ceil((next - x) / STEP);
    return Array.from({ length: parts }, (_, k) => x + ((next - x) * k) / parts);
  });
}

/** @param loads places that are loaded @throws RangeError where the plate has no ply or no width */
export function soleBeam(stiffener: Stiffener, plate: Plate, loads: readonly Mm[]): SoleBeam {
  const nodes = nodesOf(stiffener, plate, loads), cut = cutsOf(stiffener), { rise = () => 0 } = plate;
  const spans = nodes.slice(1).map((to, i) => ({ from: nodes[i]!, to, middle: (nodes[i]! + to) / 2 }));
  const sections = spans.map(({ middle }) => {
    const width = plate.width(middle), section = width > 0 ? cut(middle, width) : undefined;
    if (!section) throw new RangeError(`no stiffener at ${middle} mm`);
    return section;
  });
  return { plate, nodes, sections, lean: leansOf(sections, spans.map(({ middle }) => middle)), tilt: spans.map(({ from, to }) => (to - from) / Math.hypot(to - from, rise(to) - rise(from))) };
}

/** How faces part along the sole, from the cuts on both sides; where a pack ends they do not meet. */
function leansOf(sections: readonly Section[], middles: readonly Mm[]): number[] {
  return sections.map(({ apart }, i) => {
    const before = sections[i - 1]?.faces.length === 2 ? i - 1 : i, after = sections[i + 1]?.faces.length === 2 ? i + 1 : i;
    return apart === 0 || before === after ? 0 : (sections[after]!.apart - sections[before]!.apart) / (middles[after]! - middles[before]!) / apart;
  });
}

/** How the sole is held. On the bench it is clamped up to the tread line; in the shoe the foot bears at heel and ball. */
export type Holding = 'bench' | 'foot';

const nodeAt = ({ nodes }: SoleBeam, x: Mm): number => nodes.reduce((best, at, i) => (Math.abs(at - x) < Math.abs(nodes[best]! - x) ? i : best), 0);

/** A sole under one load. */
export interface Loaded {
  readonly load: RollLoad;
  readonly bent: Bent;
  /** Angle of the chord from the tread line to the load, against how the sole runs at the ball. */
  readonly bend: Rad;
  /** How far the tip moves from where the sole at the ball points to, mm. */
  readonly tip: Mm;
  /** Work stored in the bent sole, N·mm. */
  readonly energy: number;
}

/** A load on the nodes it is spread over: each stretch hands its part to its two ends, so that neither force nor moment is lost. */
function spreadOver(beam: SoleBeam, { at, force, over = 0 }: RollLoad): NodeForce[] {
  if (over < SAME) return [{ node: nodeAt(beam, at), force }];
  const low = at - over / 2, high = at + over / 2;
  return beam.nodes.slice(1).flatMap((to, i): NodeForce[] => {
    const from = beam.nodes[i]!, a = Math.max(from, low), b = Math.min(to, high);
    if (b <= a) return [];
    const part = (force * (b - a)) / over, share = ((a + b) / 2 - from) / (to - from);
    return [{ node: i, force: part * (1 - share) }, { node: i + 1, force: part * share }];
  });
}

/** A held sole, ready for any loads. Ahead of the ball toe and floor push up; the foot holds against them. */
export function heldSole(beam: SoleBeam, holding: Holding): (load: RollLoad) => Loaded {
  const { nodes, sections, tilt, lean, plate } = beam, ball = nodeAt(beam, plate.ball), heel = nodeAt(beam, plate.heel);
  // A stretch that runs uphill is longer than it looks from above, and its shear acts on a slant.
  const stretches = sections.map(({ own, tied, tie }, i) => ({ own: own * tilt[i]!, tied: tied * tilt[i]!, tie: tie / tilt[i]!, lean: lean[i]! }));
  const solve = beamOf(nodes, stretches, holding === 'bench'
    ? [{ node: ball, what: ['height', 'slope', 'turn'] }] : [{ node: ball, what: ['height'] }, { node: heel, what: ['height'] }]);
  return (load) => {
    const node = nodeAt(beam, load.at), forces = spreadOver(beam, load), bent = solve(forces);
    const off = (to: number): Mm => bent.height[to]! - bent.height[ball]! - bent.slope[ball]! * (nodes[to]! - nodes[ball]!), lever = nodes[node]! - nodes[ball]!;
    return { load, bent, bend: lever === 0 ? 0 : off(node) / lever, tip: off(nodes.length - 1), energy: forces.reduce((sum, one) => sum + one.force * bent.height[one.node]!, 0) / 2 };
  };
}

/** How the sole is bent, told along the plate: at both ends of each stretch. */
export function bentCuts({ nodes, sections, tilt, lean }: SoleBeam, { bent }: Loaded): BentCut[] {
  return sections.flatMap((section, i) => ([0, 1] as const).map((end): BentCut => {
    const { own, tied, slip } = bentAt(bent, nodes, i, end, lean[i]!);
    return { x: nodes[i + end]!, section, bent: { own: own * tilt[i]!, tied: tied * tilt[i]!, slip } };
  }));
}
