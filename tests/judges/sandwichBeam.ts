/**
 * A beam of two faces and a soft core by finite differences of the faces' force, not of its shape: the moment M is known from the
 * loads, the faces' force n at a distance d follows from −(n′ d²/S)′ + n (1/pull + d²/own) = d M/own, where pull is what the
 * faces resist being slid with (tied over d²), and the curve (M − n d)/own is summed up twice. Far finer than it need be; no
 * element, no energy. Of leaning faces only their distance is told.
 */
export interface Judged { readonly own: (x: number) => number; readonly tied: (x: number) => number; readonly tie: (x: number) => number; readonly apart?: (x: number) => number }

/** Deflection of the free end's loaded place: clamped at 0, a force at its end. @param length mm @param force N, upward */
export function cantileverJudge({ own, tied, tie, apart = () => 1 }: Judged, length: number, force: number, n = 20000): { readonly deflection: number; readonly curve: (x: number) => number } {
  const h = length / n, moment = (x: number): number => force * (length - x), at = (i: number): number => i * h;
  const give = (x: number): number => apart(x) ** 2 / tie(x) / (h * h);
  // Unknown force at the places; at the clamp nothing slips (n′ = 0), at the free end nothing is tied (n = 0).
  const lower = new Float64Array(n), middle = new Float64Array(n), upper = new Float64Array(n), right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x = at(i), ahead = give(x + h / 2), behind = i === 0 ? 0 : give(x - h / 2), share = i === 0 ? 0.5 : 1, d = apart(x);
    lower[i] = -behind; upper[i] = -ahead; middle[i] = ahead + behind + share * (d * d / own(x) + d * d / tied(x)); right[i] = (share * d * moment(x)) / own(x);
  }
  for (let i = 1; i < n; i++) { const k = lower[i]! / middle[i - 1]!; middle[i] = middle[i]! - k * upper[i - 1]!; right[i] = right[i]! - k * right[i - 1]!; }
  const found = new Float64Array(n + 1);
  for (let i = n - 1; i >= 0; i--) found[i] = (right[i]! - upper[i]! * found[i + 1]!) / middle[i]!;
  const curves = Array.from({ length: n + 1 }, (_, i) => (moment(at(i)) - found[i]! * apart(at(i))) / own(at(i)));
  let slope = 0, deflection = 0;
  for (let i = 0; i < n; i++) {
    const mean = (curves[i]! + curves[i + 1]!) / 2;
    deflection += slope * h + (curves[i]! / 3 + curves[i + 1]! / 6) * h * h;
    slope += mean * h;
  }
  return { deflection, curve: (x) => curves[Math.min(n, Math.round(x / h))]! };
}
