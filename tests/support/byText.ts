/** Worked out once for each text. */
export function byText<Answer>(work: (text: string) => Answer): (text: string) => Answer {
  const known = new Map<string, Answer>();
  return (text) => {
    if (!known.has(text)) known.set(text, work(text));
    return known.get(text)!;
  };
}
