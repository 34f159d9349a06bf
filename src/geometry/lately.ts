/**
 * Remembers the latest few answers of a pure function by all it was asked, so that a question put again is answered at once:
 * of a sheet one thing changes at a time, and most of what it asks was asked a moment ago. What throws is tried again.
 * @param work may be asked only in plain data: numbers, words, lists and groups of them
 */
export function lately<Asked extends readonly unknown[], Found>(kept: number, work: (...asked: Asked) => Found): (...asked: Asked) => Found {
  const known = new Map<string, Found>();
  return (...asked) => {
    const question = JSON.stringify(asked), found = known.has(question) ? known.get(question)! : work(...asked);
    known.delete(question);
    known.set(question, found);
    for (const oldest of known.keys()) if (known.size > kept) known.delete(oldest);
    return found;
  };
}

/** Works out once for each thing it is asked about, as long as somebody holds that thing. @param work pure */
export function onceEach<K extends object, Found>(work: (key: K) => Found): (key: K) => Found {
  const known = new WeakMap<K, { readonly found: Found }>();
  return (key) => {
    const one = known.get(key) ?? { found: work(key) };
    known.set(key, one);
    return one.found;
  };
}
