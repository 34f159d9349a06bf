/** Straight between the entries of a table with places that do not fall; held at its ends. */
export function tableOf(places: readonly number[], values: readonly number[]): (at: number) => number {
  return (at) => {
    let low = 0, high = places.length - 1;
    if (at <= places[0]!) return values[0]!;
    if (at >= places[high]!) return values[high]!;
    while (high - low > 1) { const middle = (low + high) >> 1; if (places[middle]! <= at) low = middle; else high = middle; }
    return values[low]! + ((values[high]! - values[low]!) * (at - places[low]!)) / (places[high]! - places[low]!);
  };
}
