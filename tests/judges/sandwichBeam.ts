/**
 * A beam of two faces and a soft core by finite differences of its force, not of its shape: the moment is known from the loads,
 * the part of it that the tied faces carry (m) follows from −(m′/S)′ + m (1/own + 1/tied) = M/own, and the curve (M − m)/own is
 * summed up twice. A thousand times finer than it need be; no element, no energy.
 */
export interface Judged { readonly own: (x: number) => number; readonly tied: (x: number) => number; readonly tie: (x: number) => number }

/** Deflection of the free end's loaded place: clamped at 0, a force at its end. @param length mm @param force N, upward */
export function cantileverJudge({ own, tied, tie }: Judged, length: number, force: number, n = 20000): { readonly deflection: number; readonly curve: (x: number) => number } {
  const h = length / n, moment = (x: number): number => force * (length - x), at = (i: number): number => i * h;
  // Unknown m at the nodes; at the clamp no slip (m′ = 0), at the free end nothing tied (m = 0).
  const lower = new Float64Array(n), middle = new Float64Array(n), upper = new Float64Array(n), right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x = at(i), ahead = 1 / (tie(x + h / 2) * h * h), behind = i === 0 ? 0 : 1 / (tie(x - h / 2) * h * h), share = i === 0 ? 0.5 : 1;
    lower[i] = -behind; upper[i] = -ahead; middle[i] = ahead + behind + share * (1 / own(x) + 1 / tied(x)); right[i] = (share * moment(x)) / own(x);
  }
  for (let i = 1; i < n; i++) { const k = lower[i]! / middle[i - 1]!; middle[i] = middle[i]! - k * upper[i - 1]!; right[i] = right[i]! - k * right[i - 1]!; }
  const m = new Float64Array(n + 1);
  for (let i = n - 1; i >= 0; i--) m[i] = (right[i]! - upper[i]! * m[i + 1]!) / middle[i]!;
  const curves = Array.from({ length: n + 1 }, (_, i) => (moment(at(i)) - m[i]!) / own(at(i)));
  let slope = 0, deflection = 0;
  for (let i = 0; i < n; i++) {
    const mean = (curves[i]! + curves[i + 1]!) / 2;
    deflection += slope * h + (curves[i]! / 3 + curves[i + 1]! / 6) * h * h;
    slope += mean * h;
  }
  return { deflection, curve: (x) => curves[Math.min(n, Math.round(x / h))]! };
}
