import { Box3, Group, Vector3, type Mesh } from 'three';
import type { Side } from '../../../src/fitting/words.ts';
import type { PartName, ShoeShown } from '../../desk/protocol.ts';
import type { Palette } from './palette.ts';
import { shadeTextures } from './shadeTexture.ts';
import { solidBody, type Cut, type SolidBody } from './solidBody.ts';

export type PartsOn = Readonly<Record<PartName, boolean>>;

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
  /** Round the shoes on the stage; empty where there is nothing under a shoe. */
  readonly box: () => Box3;
  readonly dispose: () => void;
}

/** Where each shoe's long axis stands, mm to the left of the middle. */
const ASIDE: Readonly<Record<Side, number>> = { left: 60, right: -60 };

interface Placed { readonly body: SolidBody; readonly side: Side; readonly part: PartName }

export function pairShown(palette: Palette, first: PartsOn): PairShown {
  const strips = shadeTextures(), group = new Group(), stands = { left: new Group(), right: new Group() };
  const placed = (['left', 'right'] as const).flatMap((side) => (['whole sole', 'foam', 'outsole'] as const).map((part): Placed => ({ side, part, body: solidBody(part, palette, strips) })));
  for (const { side, body } of placed) stands[side].add(body.group);
  for (const side of ['left', 'right'] as const) { stands[side].position.y = ASIDE[side]; group.add(stands[side]); }
  let shoes: readonly ShoeShown[] = [], on = first, by: 'material' | 'thickness' = 'material', cut: Cut | undefined;

  const solidOf = ({ side, part }: Pick<Placed, 'side' | 'part'>) => shoes.find((shoe) => shoe.side === side)?.solids.find((solid) => solid.part === part);
  const shown = (): Placed[] => placed.filter((one) => on[one.part] && solidOf(one) !== undefined);
  const appear = (): void => { const now = new Set(shown()); for (const one of placed) one.body.group.visible = now.has(one); };
  const shadeAll = (): void => { for (const one of shown()) one.body.shade(by, solidOf({ side: one.side, part: 'whole sole' })); };
  const cutAll = (): void => { for (const one of shown()) one.body.cut(cut, ASIDE[one.side]); };
  const build = (which: readonly Placed[], fine: boolean): void => { for (const one of which) one.body.show(solidOf(one)!, fine); };
  let isFine = false;
  return {
    group,
    show: (next, fine) => { shoes = next; isFine = fine; build(shown(), fine); appear(); shadeAll(); cutAll(); },
    // A part that was off has not followed the sheet.
    parts: (next) => { const before = new Set(shown()); on = next; build(shown().filter((one) => !before.has(one)), isFine); appear(); shadeAll(); cutAll(); },
    cut: (next) => { cut = next; cutAll(); },
    shade: (next) => { by = next; shadeAll(); },
    alone: (side) => { for (const one of ['left', 'right'] as const) stands[one].visible = side === undefined || side === one; },
    faces: () => shown().filter(({ side }) => stands[side].visible).flatMap(({ body }) => body.faces.filter(({ visible }) => visible)),
    box: () => {
      const box = new Box3(), corner = new Vector3();
      for (const { side, solids } of shoes) if (stands[side].visible) for (const { positions } of solids) for (let i = 0; i < positions.length; i += 3) box.expandByPoint(corner.set(positions[i]!, positions[i + 1]! + ASIDE[side], positions[i + 2]!));
      return box;
    },
    dispose: () => { for (const { body } of placed) body.dispose(); strips.steps.dispose(); strips.rest.dispose(); },
  };
}
