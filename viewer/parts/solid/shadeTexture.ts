import { DataTexture, NearestFilter, SRGBColorSpace, Color } from 'three';
import { shadeFor } from './shades.ts';

/** The scale runs to this thickness, mm, with so many squares to a millimetre; beyond, the last colour goes on. */
const MOST = 80, FINE = 4;

/**
 * The steps of thickness as a strip of colour, above a black strip for what has none; and the other way round, white
 * above black, for the light that falls on the rest. So a step ends sharply where the thickness is reached, inside a facet too.
 */
export function shadeTextures(): { readonly steps: DataTexture; readonly rest: DataTexture } {
  const width = MOST * FINE, steps = new Uint8Array(8 * width).fill(0), rest = new Uint8Array(8 * width).fill(255), colour = new Color();
  for (let i = 0; i < width; i++) {
    const hex = colour.set(shadeFor(i / FINE)).getHex();
    steps.set([hex >> 16, (hex >> 8) & 255, hex & 255, 255], 4 * i);
    rest.set([0, 0, 0, 255], 4 * i);
    steps.set([0, 0, 0, 255], 4 * (width + i));
  }
  return { steps: strip(steps, width), rest: strip(rest, width) };
}

function strip(data: Uint8Array<ArrayBuffer>, width: number): DataTexture {
  const texture = new DataTexture(data, width, 2);
  texture.colorSpace = SRGBColorSpace;
  texture.magFilter = texture.minFilter = NearestFilter;
  texture.needsUpdate = true;
  return texture;
}

/** Where on the strips a corner of the given thickness stands; undefined: on the strip of the rest. */
export const placeOnStrip = (thickness: number | undefined): readonly [number, number] => (thickness === undefined ? [0, 0.75] : [Math.min(thickness / MOST, 1), 0.25]);
