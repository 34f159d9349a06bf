/** The circle that fits points best (least squares on x² + z² + ax + bz + c), moved to their middle first. */
export function circleThrough(points: ReadonlyArray<readonly [number, number]>): { centre: readonly [number, number]; radius: number } {
  const n = points.length, mx = points.reduce((s, [x]) => s + x, 0) / n, mz = points.reduce((s, [, z]) => s + z, 0) / n;
  let xx = 0, xz = 0, zz = 0, xr = 0, zr = 0, rr = 0;
  for (const [px, pz] of points) {
    const x = px - mx, z = pz - mz, r = x * x + z * z;
    xx += x * x; xz += x * z; zz += z * z; xr += x * r; zr += z * r; rr += r;
  }
  const det = xx * zz - xz * xz, a = (xr * zz - zr * xz) / det / 2, b = (zr * xx - xr * xz) / det / 2;
  return { centre: [a + mx, b + mz], radius: Math.sqrt(a * a + b * b + rr / n) };
}
