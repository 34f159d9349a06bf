import { MAKINGS, SIDES, type MakingName, type Side } from '../../src/fitting/words.ts';
import type { FileShown } from '../desk/protocol.ts';

/** What a file is of: a sole, something made besides, or the job as a whole. */
export type Of = 'sole' | MakingName | 'job';
export const OFS: readonly Of[] = ['sole', ...MAKINGS, 'job'];

/** Files are called REFERENCE_side_thing.ext; most things are the first word there, and the few with names of their own are told here. */
const CALLED: readonly (readonly [Of, RegExp])[] = [
  ['mould', /^mould/], ['block', /^block/], ['print', /^print/], ['jig', /^jig/], ['gauges', /gauge|^toe-spring-wedge|^heel-block|^repair-card/], ['stack', /^(stack|cutting-list)/],
  ['plies', /^plies/], ['templates', /^template/], ['wedges', /^(trial|wedge)/], ['card', /^job-card/],
];

export interface FileKind { readonly side: Side | undefined; readonly of: Of; readonly format: string; readonly words: string }

/** What is told by the name of a file. @param reference of the job, which its name begins with */
export function kindOf(name: string, reference: string): FileKind {
  const own = name.startsWith(`${reference}_`) ? name.slice(reference.length + 1) : name, side = SIDES.find((one) => own.startsWith(`${one}_`));
  const thing = side ? own.slice(side.length + 1) : own, format = (/\.([^.]+)$/.exec(own)?.[1] ?? '').toUpperCase();
  const of = CALLED.find(([, called]) => called.test(thing))?.[0] ?? (side ? 'sole' : 'job');
  return { side, of, format, words: own.replace(/\.[^.]+$/, '').replace(/[-_]/g, ' ') };
}

export interface FileGroup { readonly side: Side | undefined; readonly of: Of; readonly files: readonly FileShown[]; readonly bytes: number }

/** Files by shoe, and of each shoe by what they are of; what is of no one shoe comes last. */
export function grouped(files: readonly FileShown[], reference: string): readonly FileGroup[] {
  const kinds = files.map((file) => ({ file, ...kindOf(file.name, reference) }));
  return [...SIDES, undefined].flatMap((side) => OFS.flatMap((of): FileGroup[] => {
    const own = kinds.filter((one) => one.side === side && one.of === of).map(({ file }) => file);
    return own.length ? [{ side, of, files: own, bytes: sizeOf(own) }] : [];
  }));
}

export const sizeOf = (files: readonly FileShown[]): number => files.reduce((sum, { bytes }) => sum + bytes.length, 0);

/** "840 kB", "12.3 MB". */
export const sizeWords = (bytes: number): string => (bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1e3))} kB` : `${(bytes / 1e6).toFixed(1)} MB`);
