import type { MakingName } from '../../../src/fitting/words.ts';
import type { PartName, SolePart } from '../../desk/protocol.ts';

export const SOLE_PARTS: readonly SolePart[] = ['foam', 'outsole', 'whole sole', 'foot'];

const isSolePart = (part: PartName): part is SolePart => SOLE_PARTS.some((one) => one === part);

/** The thing a part belongs to, where it is made besides the sole. */
export const thingOf = (part: PartName): MakingName | undefined => (isSolePart(part) ? undefined : part.slice(0, part.indexOf(': ')) as MakingName);

/** What a part is called; those besides the sole say by themselves what they are. */
export const partWords = (part: PartName): string => (isSolePart(part) ? part : part.slice(part.indexOf(': ') + 2));
