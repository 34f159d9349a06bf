/** The tightest radius of a line along the shoe, from the circle through three points of it `apart` from each other, mm. */
export function bentRadius(rise: (x: number) => number, from: number, to: number, apart = 10): number {
  let least = Infinity;
  for (let x = from + apart; x <= to - apart; x++) {
    const [a, b, c] = [x - apart, x, x + apart].map((at): [number, number] => [at, rise(at)]) as [[number, number], [number, number], [number, number]];
    const side = (p: readonly number[], q: readonly number[]): number => Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!), area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
    least = Math.min(least, (side(a, b) * side(b, c) * side(a, c)) / (4 * area));
  }
  return least;
}
