import { BufferGeometry, LineBasicMaterial, LineSegments } from 'three';
import { fill } from './buffers.ts';

export interface Ground { readonly lines: LineSegments; readonly under: (least: number, most: number, wide: number) => void; readonly dispose: () => void }

/** The ground as a frame of soft lines. */
export function ground(colour: string): Ground {
  const lines = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ color: colour }));
  lines.frustumCulled = false;
  return {
    lines,
    under: (least, most, wide) => {
      const at = [[least, -wide], [most, -wide], [most, wide], [least, wide]] as const;
      fill(lines.geometry, { position: [Float32Array.from(at.flatMap((from, i) => [...from, 0, ...at[(i + 1) % 4]!, 0])), 3] });
    },
    dispose: () => { lines.geometry.dispose(); lines.material.dispose(); },
  };
}
