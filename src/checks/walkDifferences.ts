import type { Pair } from '../pair/shoe.ts';
import { walkingOf } from '../walk/walking.ts';
import { walkFigures, type WalkFigure } from './walkFigures.ts';

/** How the left step differs from the right one, left less right; nothing where only one leg is known. */
export function walkDifferences(pair: Pair): readonly WalkFigure[] {
  const { differences } = walkingOf(pair);
  if (!differences) return [];
  const estimated = walkFigures(pair).some(({ own }) => own[0]?.estimated);
  const mm = (key: string, label: string, value: number): WalkFigure => ({ key, label, value, unit: 'mm', digits: 1, estimated });
  return [
    { key: 'walkCarriedLess', label: 'Share of stance on the sole itself', value: 100 * differences.carried, unit: '%', digits: 0, estimated },
    mm('walkPivotDropLess', 'Ankle pivot sinks from heel contact on', differences.pivotDrop), mm('walkHipContactLess', 'Hip above the floor at heel contact', differences.hipContact),
    mm('walkHipHighestLess', 'Hip highest', differences.hipHighest), mm('walkRolledLess', 'Floor rolled over on the sole', differences.rolled), mm('walkHipForwardLess', 'Hip comes forward', differences.hipForward),
    mm('walkDownToRight', 'Body steps down on to the right foot (minus: up)', differences.downToRight), mm('walkDownToLeft', 'Body steps down on to the left foot (minus: up)', differences.downToLeft),
  ];
}
