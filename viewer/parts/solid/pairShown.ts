import { Box3, Group, MathUtils, Vector3, type Mesh } from 'three';
import type { Side } from '../../../src/fitting/words.ts';
import type { PartName, ShoeShown, SolidShown } from '../../desk/protocol.ts';
import { thingOf } from './partNames.ts';
import type { Palette } from './palette.ts';
import { shadeTextures } from './shadeTexture.ts';
import { solidBody, type Cut, type SolidBody } from './solidBody.ts';

export type PartsOn = Readonly<Partial<Record<PartName, boolean>>>;

/** Both shoes on the stage, each in a place of its own: what is on, cut and shaded outlasts what is shown. */
export interface PairShown {
  readonly group: Group;
  readonly show: (shoes: readonly ShoeShown[], fine: boolean) => void;
  readonly parts: (on: PartsOn) => void;
  readonly cut: (cut: Cut | undefined) => void;
  readonly shade: (by: 'material' | 'thickness') => void;
  /** Leaves one shoe alone on the stage, or brings the other back. */
  readonly alone: (side: Side | undefined) => void;
  readonly faces: () => readonly Mesh[];
  /** On the upper face, half way along and towards the outer side; undefined where nothing is under this shoe. */
  readonly onTop: (side: Side) => Vector3 | undefined;
  /** Round what is on the stage; empty where there is nothing under a shoe. */
  readonly box: () => Box3;
  readonly dispose: () => void;
}

/** A shoe's long axis stands so far from the middle, mm; further where it is broader than that, as moulds are. */
const ASIDE = 60, CLEAR = 8;

/** The upper face is looked for so far before and behind the middle, mm; and how far across, from the inner to the outer side. */
const ABOUT = 10, OUTWARD = 0.7;

interface Placed { readonly body: SolidBody; readonly side: Side; readonly part: PartName }

export function pairShown(palette: Palette, first: PartsOn): PairShown {
  const strips = shadeTextures(), group = new Group(), stands = { left: new Group(), right: new Group() };
  const placed = new Map<string, Placed>();
  group.add(stands.left, stands.right);
  let shoes: readonly ShoeShown[] = [], on = first, by: 'material' | 'thickness' = 'material', cut: Cut | undefined;

  const solidOf = ({ side, part }: Pick<Placed, 'side' | 'part'>) => shoes.find((shoe) => shoe.side === side)?.solids.find((solid) => solid.part === part);
  /** A part finds its place on the stage when it is shown first. */
  const placeOf = (side: Side, part: PartName): Placed => {
    const name = `${side} ${part}`, there = placed.get(name) ?? { side, part, body: solidBody(part, palette, strips) };
    if (!placed.has(name)) stands[side].add(there.body.group);
    placed.set(name, there);
    return there;
  };
  const shown = (): Placed[] => shoes.flatMap(({ side, solids }) => solids.filter(({ part }) => on[part]).map(({ part }) => placeOf(side, part)));
  const appear = (): void => { const now = new Set(shown()); for (const one of placed.values()) one.body.group.visible = now.has(one); };
  const asideOf = (side: Side): number => stands[side].position.y;
  const setApart = (): void => {
    const broad = shown().filter(({ part }) => thingOf(part) !== undefined).map((one) => widthOf(solidOf(one)!));
    stands.left.position.y = Math.max(ASIDE, ...broad.map((half) => half + CLEAR));
    stands.right.position.y = -stands.left.position.y;
  };
  const shadeAll = (): void => { for (const one of shown()) one.body.shade(by, solidOf({ side: one.side, part: 'whole sole' }), one.part === 'foam' ? shoes.find(({ side }) => side === one.side)!.stiffener : 0); };
  const cutAll = (): void => { for (const one of shown()) one.body.cut(cut, asideOf(one.side)); };
  const build = (which: readonly Placed[], fine: boolean): void => { for (const one of which) one.body.show(solidOf(one)!, fine); };
  let isFine = false, only: Side | undefined;
  const alone = (side: Side | undefined): void => { only = side; for (const one of ['left', 'right'] as const) stands[one].visible = side === undefined || side === one; };
  return {
    group,
    show: (next, fine) => {
      shoes = next;
      isFine = fine;
      if (only && !next.some(({ side }) => side === only)) alone(undefined);
      build(shown(), fine);
      setApart();
      appear();
      shadeAll();
      cutAll();
    },
    // A part that was off has not followed the sheet.
    parts: (next) => { const before = new Set(shown()); on = next; build(shown().filter((one) => !before.has(one)), isFine); setApart(); appear(); shadeAll(); cutAll(); },
    cut: (next) => { cut = next; cutAll(); },
    shade: (next) => { by = next; shadeAll(); },
    alone,
    faces: () => shown().filter(({ side }) => stands[side].visible).flatMap(({ body }) => body.faces.filter(({ visible }) => visible)),
    onTop: (side) => {
      const whole = stands[side].visible ? solidOf({ side, part: 'whole sole' }) : undefined;
      return whole && topOf(whole.positions, side).add(stands[side].position);
    },
    box: () => {
      const box = new Box3(), corner = new Vector3();
      for (const one of shown().filter(({ side }) => stands[side].visible)) {
        const { positions } = solidOf(one)!;
        for (let i = 0; i < positions.length; i += 3) box.expandByPoint(corner.set(positions[i]!, positions[i + 1]! + asideOf(one.side), positions[i + 2]!));
      }
      return box;
    },
    dispose: () => { for (const { body } of placed.values()) body.dispose(); strips.steps.dispose(); strips.rest.dispose(); },
  };
}

/** How far a solid reaches to the side, mm. */
function widthOf({ positions }: SolidShown): number {
  let most = 0;
  for (let i = 1; i < positions.length; i += 3) most = Math.max(most, Math.abs(positions[i]!));
  return most;
}

function topOf(positions: Float32Array, side: Side): Vector3 {
  const { min, max } = new Box3().setFromArray(positions), top = new Vector3((min.x + max.x) / 2, MathUtils.lerp(min.y, max.y, side === 'left' ? OUTWARD : 1 - OUTWARD), min.z);
  for (let i = 0; i < positions.length; i += 3) if (Math.abs(positions[i]! - top.x) < ABOUT) top.z = Math.max(top.z, positions[i + 2]!);
  return top;
}
