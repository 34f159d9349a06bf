import { addTo, emptyBanded, factorsOf } from '../geometry/linear.ts';
import type { Mm, Rad } from '../geometry/units.ts';

/**
 * A beam of two faces tied by something that gives in shear: each bends by itself (`own`), tied they resist together (`tied`),
 * the tie gives (`tie`, N). With much tie it is a plain beam of own + tied, with own near nothing it is Timoshenko's.
 * Energy along it: ½ ∫ own w''² + tied (ψ' − lean γ)² + tie γ², γ = w' − ψ, ψ the turn of the faces' ends against each other; lean is
 * by how much the faces part along it, as a share of their distance, 1/mm: leaning faces carry part of the shear themselves.
 * Finite elements: w cubic, ψ straight. Deflections up are positive; linear, so good for small turns.
 * Source of the energy: H. G. Allen 1969, N. J. Hoff 1950 (from memory).
 */
export interface BeamStretch { readonly own: number; readonly tied: number; readonly tie: number; readonly lean?: number }

/** What is held at a node: its height, its slope, the turn of its faces. */
export interface Held { readonly node: number; readonly what: readonly ('height' | 'slope' | 'turn')[] }

/** An upward force at a node, N. */
export interface NodeForce { readonly node: number; readonly force: number }

/** Values at each node. */
export interface Bent { readonly height: readonly Mm[]; readonly slope: readonly Rad[]; readonly turn: readonly Rad[] }

const DEGREES = 3, PART = { height: 0, slope: 1, turn: 2 } as const;
/** Three points of Gauss, which are exact for the square of a quadratic. */
const GAUSS = [[0.5 - Math.sqrt(0.15), 5 / 18], [0.5, 8 / 18], [0.5 + Math.sqrt(0.15), 5 / 18]] as const;

/** Slope of the cubic at a share t of an element of length h, by its six values [w, w', ψ at both ends]. */
const slopeShape = (t: number, h: Mm): readonly number[] => [(6 * t * t - 6 * t) / h, 1 - 4 * t + 3 * t * t, 0, (6 * t - 6 * t * t) / h, 3 * t * t - 2 * t, 0];
const curveShape = (t: number, h: Mm): readonly number[] => [(12 * t - 6) / h ** 2, (6 * t - 4) / h, 0, (6 - 12 * t) / h ** 2, (6 * t - 2) / h, 0];
/** How the turn's values make its rate, times the length. */
const TURNS = [0, 0, -1, 0, 0, 1] as const;
const turnShape = (t: number): readonly number[] => [0, 0, 1 - t, 0, 0, t];

/** Sums over an element of length 1 of what its six values do to its curve, its slip and the turn of its faces, two by two; they hold for any length once scaled. */
const sumOf = (one: (t: number) => readonly number[], other: (t: number) => readonly number[]): readonly (readonly number[])[] =>
  Array.from({ length: 6 }, (_, i) => Array.from({ length: 6 }, (__, j) => GAUSS.reduce((sum, [t, weight]) => sum + weight * one(t)[i]! * other(t)[j]!, 0)));
const curved = (t: number): readonly number[] => curveShape(t, 1), slipped = (t: number): readonly number[] => slopeShape(t, 1).map((value, i) => value - turnShape(t)[i]!), turned = (): readonly number[] => TURNS;
const CURVES = sumOf(curved, curved), SLIPS = sumOf(slipped, slipped), TURNED = sumOf(turned, turned), MIXED = sumOf(turned, slipped).map((row, i) => row.map((value, j) => value + sumOf(slipped, turned)[i]![j]!));

/** Entry of an element's stiffness. A height counts for its length, a slope and a turn do not. */
function entryOf({ own, tied, tie, lean = 0 }: BeamStretch, h: Mm, i: number, j: number): number {
  const scale = (i % DEGREES === 0 ? 1 / h : 1) * (j % DEGREES === 0 ? 1 / h : 1);
  return scale * ((own * CURVES[i]![j]!) / h + (tie + tied * lean * lean) * h * SLIPS[i]![j]! + tied * (TURNED[i]![j]! / h - lean * MIXED[i]![j]!));
}

/**
 * Factors a beam once, for any number of loads.
 * @param nodes rising places, mm; `stretches` lie between them, one fewer
 * @throws RangeError when it is held too little to stand
 */
export function beamOf(nodes: readonly Mm[], stretches: readonly BeamStretch[], held: readonly Held[]): (forces: readonly NodeForce[]) => Bent {
  const size = nodes.length * DEGREES, matrix = emptyBanded(size, 2 * DEGREES - 1);
  const fixed = new Set(held.flatMap(({ node, what }) => what.map((part) => node * DEGREES + PART[part])));
  stretches.forEach((stretch, e) => {
    const h = nodes[e + 1]! - nodes[e]!, first = e * DEGREES;
    for (let i = 0; i < 6; i++) for (let j = 0; j <= i; j++) if (!fixed.has(first + i) && !fixed.has(first + j)) addTo(matrix, first + i, first + j, entryOf(stretch, h, i, j));
  });
  for (const one of fixed) addTo(matrix, one, one, 1);
  const solve = factorsOf(matrix);
  return (forces) => {
    const right = new Array<number>(size).fill(0);
    for (const { node, force } of forces) if (!fixed.has(node * DEGREES)) right[node * DEGREES] = right[node * DEGREES]! + force;
    const found = solve(right), every = (part: number): number[] => nodes.map((_, i) => found[i * DEGREES + part]!);
    return { height: every(0), slope: every(1), turn: every(2) };
  };
}

/** How a stretch is bent at one of its ends: curve of its faces there, curve of both together, and how far its tie is sheared, both in the mean. @param lean that of the stretch */
export interface BentAt { readonly own: number; readonly tied: number; readonly slip: Rad }

export function bentAt({ height, slope, turn }: Bent, nodes: readonly Mm[], stretch: number, end: 0 | 1, lean = 0): BentAt {
  const a = stretch, b = stretch + 1, h = nodes[b]! - nodes[a]!, values = [height[a]!, slope[a]!, turn[a]!, height[b]!, slope[b]!, turn[b]!];
  const slip = (height[b]! - height[a]!) / h - (turn[a]! + turn[b]!) / 2;
  return { own: curveShape(end, h).reduce((sum, value, i) => sum + value * values[i]!, 0), tied: (turn[b]! - turn[a]!) / h - lean * slip, slip };
}
