import type { SolidShown } from '../../desk/protocol.ts';

/** What the sums here need of a closed body: corners x, y, z, and three corners a facet, outside out. */
export type Body = Pick<SolidShown, 'positions' | 'triangles'>;

export type Point3 = readonly [x: number, y: number, z: number];

export const cornerAt = ({ positions }: Body, i: number): Point3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
