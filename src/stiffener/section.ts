import type { Mm } from '../geometry/units.ts';
import { BETWEEN_PLIES, LEAST_CORE } from '../materials/stiffeners.ts';
import { effectiveOf, laminateOf, thinPly, type Laminate } from './laminate.ts';
import { at, lies, type Attached, type CamberCounted, type CoreLayer, type PlacedPly, type Stiffener } from './stiffener.ts';

/**
 * One pack of plies across the shoe with what is bonded to it, as a beam of its own. Heights are of the whole section, from the
 * middle of the lowest pack; stiffness along the shoe, N and N·mm².
 */
export interface Face {
  readonly laminate: Laminate;
  readonly plies: readonly PlacedPly[];
  /** Height of the middle of the pack, and of the line that keeps its length when the face bends alone. */
  readonly middle: Mm;
  readonly neutral: Mm;
  readonly axial: number;
  readonly bending: number;
  /** Heights over the pack at which it is looked at: its middle and its edges, where it is cambered. */
  readonly across: readonly Mm[];
  /** Top of turned-up edges. */
  readonly edgeTop?: Mm;
  /** Heights of the outermost fibres: faces of the pack wherever it is looked at, and the top of its edges. */
  readonly outermost: readonly Mm[];
  /** Strips that must not yield, with the heights of their faces. */
  readonly strips: readonly { readonly name: string; readonly faces: readonly [Mm, Mm]; readonly yieldsAt: number; readonly bond: number }[];
}

/**
 * A cut across the stiffener. Two faces that bend by themselves (`own`), and being tied to each other resist together (`tied`);
 * the tie gives by core shear (`tie`, N). Source: H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969), thick
 * faces (from memory); D. Zenkert's D and S are the limits of it.
 */
export interface Section {
  readonly width: Mm;
  readonly faces: readonly Face[];
  readonly own: number;
  readonly tied: number;
  readonly tie: number;
  /** Height of the line that keeps its length when both faces bend together. */
  readonly neutral: Mm;
  /** How far apart the faces' lines lie; 0 for one face. */
  readonly apart: Mm;
  readonly core?: CoreCut;
}

/** Core in a cut, with the numbers counted. */
export interface CoreCut { readonly thickness: Mm; readonly modulus: number; readonly shear: number; readonly shearStrength: number }

/** One thing of a face: stiffness to pull, height of its middle, stiffness to bend by itself. */
interface Piece { readonly axial: number; readonly at: Mm; readonly bending: number }

/** Variance of a parabola of height 1 over its width, and how far its edges and its middle lie from its mean. */
const BOW = 4 / 45, BOW_EDGE = 2 / 3, BOW_MIDDLE = -1 / 3;

/** Bending stiffness of pieces that share one neutral line, and where it lies. */
function together(pieces: readonly Piece[]): Piece {
  const axial = pieces.reduce((sum, piece) => sum + piece.axial, 0), at = pieces.reduce((sum, piece) => sum + piece.axial * piece.at, 0) / axial;
  return { axial, at, bending: pieces.reduce((sum, piece) => sum + piece.bending + piece.axial * (piece.at - at) ** 2, 0) };
}

/** A pack as a strip, free to draw in and to curl: its compliances are entries of the inverse of the whole ABD, not 1 over A11 and D11. */
function stripOf({ compliance: c }: Laminate, width: Mm): Piece {
  const a = c[0]![0]!, b = c[0]![3]!, d = c[3]![3]!;
  return { axial: (width * d) / (a * d - b * b), at: -b / d, bending: width / d };
}

/** A layer as thick as it is at a place. */
type Layer = Omit<Attached, 'thickness'> & { readonly thickness: Mm };

interface FaceOf { readonly laminate: Laminate; readonly plies: readonly PlacedPly[]; readonly middle: Mm; readonly width: Mm; readonly bow: Mm; readonly edges: Mm; readonly attached: readonly Layer[] }

function faceOf({ laminate, plies, middle, width, bow, edges, attached }: FaceOf): Face {
  const pack = stripOf(laminate, width), half = laminate.thickness / 2;
  const bowed: Piece = { axial: pack.axial, at: middle + pack.at, bending: pack.bending + pack.axial * BOW * bow * bow };
  const turned = edges > 0 ? [edgesOf(laminate, middle + half + BOW_EDGE * bow, edges)] : [];
  const layers = attachedTo(attached, middle, half, width);
  const across = bow > 0 ? [BOW_MIDDLE * bow, BOW_EDGE * bow] : [0], edgeTop = edges > 0 ? [middle + half + BOW_EDGE * bow + edges] : [];
  const face = together([bowed, ...turned, ...layers.map(({ piece }) => piece)]);
  return {
    laminate, plies, middle, neutral: face.at, axial: face.axial, bending: face.bending + layers.reduce((sum, { bow: along }) => sum + along * BOW * bow * bow, 0),
    across, ...(edgeTop[0] === undefined ? {} : { edgeTop: edgeTop[0] }), outermost: [...across.flatMap((over) => [middle + over - half, middle + over + half]), ...edgeTop],
    strips: layers.flatMap(({ layer: { name, yieldsAt, bond }, faces }) => (yieldsAt === undefined ? [] : [{ name, faces, yieldsAt, bond }])),
  };
}

/** Both edges of a pack, turned up. */
function edgesOf(laminate: Laminate, foot: Mm, height: Mm): Piece {
  const axial = 2 * height * laminate.thickness * effectiveOf(laminate).ex;
  return { axial, at: foot + height / 2, bending: (axial * height * height) / 12 };
}

/** Layers on a pack, one on the other. A bond that gives lets them take up only its share of the pull. */
function attachedTo(attached: readonly Layer[], middle: Mm, half: Mm, plate: Mm): { layer: Layer; piece: Piece; bow: number; faces: readonly [Mm, Mm] }[] {
  const out = { above: middle + half, below: middle - half };
  return attached.map((layer) => {
    const { side, thickness, modulus, bond, width = plate } = layer, sign = side === 'above' ? 1 : -1, near = out[side], far = near + sign * thickness;
    out[side] = far;
    const whole = modulus * width * thickness, faces: readonly [Mm, Mm] = sign > 0 ? [near, far] : [far, near];
    const bowed = width < plate ? 0 : bond * whole;
    return { layer, faces, bow: bowed, piece: { axial: bond * whole, at: (near + far) / 2, bending: (whole * thickness * thickness) / 12 } };
  });
}

/** How much of a camber is counted, half of one that is typed. Common practice: a plate flattens as it bends. */
const CAMBER_COUNTED: Readonly<Record<CamberCounted, number>> = { none: 0, half: 0.5, whole: 1 };

const camberAt = ({ camber }: Stiffener, x: number): Mm => (camber ? Math.max(at(camber.height, x), 0) * CAMBER_COUNTED[camber.counted] : 0);

/** Where it ends on the plate a core is skived over this many times its thickness, or the plies above could not come down. Common practice. */
export const SKIVED = 3;

/** The core at a place; none where it is skived away. */
function coreCut({ material, thickness, over, count = 'counted' }: CoreLayer, x: Mm): CoreCut | undefined {
  const full = at(thickness, x), thick = over ? Math.min(full, (x - over.from) / SKIVED, (over.to - x) / SKIVED) : full;
  return thick < LEAST_CORE ? undefined : { thickness: thick, modulus: material.modulus[count], shear: material.shear[count], shearStrength: material.shearStrength };
}

/** Plies that lie on each other at a place. */
interface LaidThere { readonly plies: readonly PlacedPly[]; readonly laminate: Laminate }

/** Laminates of a list of plies are worked out once, as long as somebody holds the list: packs that are tried share theirs. */
const packsKnown = new WeakMap<readonly PlacedPly[], Map<string, LaidThere>>();

/** The pack at a place, one laminate for each set of plies that lie there together. */
function packsOf(all: readonly PlacedPly[]): (x: Mm) => LaidThere | undefined {
  const known = packsKnown.get(all) ?? new Map<string, LaidThere>();
  packsKnown.set(all, known);
  return (x) => {
    const key = all.map(({ over }) => (lies(over, x) ? '1' : '0')).join('');
    if (!key.includes('1')) return undefined;
    const plies = all.filter((_, i) => key[i] === '1'), pack = known.get(key) ?? { plies, laminate: laminateOf(plies.map(thinPly)) };
    known.set(key, pack);
    return pack;
  };
}

/** Cuts of one stiffener, by place and width: laminates are worked out once. Undefined where there is no ply. */
export function cutsOf(stiffener: Stiffener): (x: Mm, width: Mm) => Section | undefined {
  const packAt = [packsOf(stiffener.below), packsOf(stiffener.above)];
  return (x, width) => {
    const core = stiffener.core && coreCut(stiffener.core, x);
    const packs = packAt.flatMap((at) => at(x) ?? []);
    if (packs.length === 0) return undefined;
    const bow = camberAt(stiffener, x), attached = stiffener.attached.filter(({ over }) => lies(over, x)).map((layer): Layer => ({ ...layer, thickness: Math.max(at(layer.thickness, x), 0) })), [first, second] = packs;
    const gap = first!.laminate.thickness / 2 + (core?.thickness ?? 0) + (second ? second.laminate.thickness / 2 : 0);
    const faces = packs.map(({ plies, laminate }, i) => faceOf({
      laminate, plies, middle: i === 0 ? 0 : gap, width, bow, edges: i === packs.length - 1 ? stiffener.edges ?? 0 : 0,
      attached: attached.filter(({ side }) => packs.length === 1 || (side === 'above') === (i === 1)),
    }));
    return faces.length === 1 ? alone(faces[0]!, width) : tiedTo(faces, width, core);
  };
}

/** A pack by itself resists by bending alone; the tie only keeps the arithmetic whole. */
const alone = (face: Face, width: Mm): Section => ({ width, faces: [face], own: face.bending, tied: 0, tie: face.bending * 1e-6, neutral: face.neutral, apart: 0 });

/** Two faces and the core between them. The core's shear spreads over the distance of the faces' lines: S = G b d² / t. */
function tiedTo(faces: readonly Face[], width: Mm, core: CoreCut | undefined): Section {
  const [lower, upper] = faces, apart = upper!.neutral - lower!.neutral, own = lower!.bending + upper!.bending;
  const pieces: Piece[] = faces.map(({ axial, neutral }) => ({ axial, at: neutral, bending: 0 }));
  if (core) pieces.push({ axial: core.modulus * width * core.thickness, at: lower!.middle + lower!.laminate.thickness / 2 + core.thickness / 2, bending: (core.modulus * width * core.thickness ** 3) / 12 });
  const both = together(pieces), shear = core ? (core.shear * width * apart * apart) / core.thickness : BETWEEN_PLIES.shear * width * Math.abs(apart);
  return { width, faces, own, tied: both.bending, tie: shear, neutral: both.at, apart, ...(core ? { core } : {}) };
}

/** Bending stiffness where the faces work as one, N·mm². */
export const asOne = ({ own, tied }: Section): number => own + tied;
