/** A function of texts that remembers what it made of the last few thousand: a manual says the same values again and again. */
export function remembered<T>(make: (text: string) => T): (text: string) => T {
  const known = new Map<string, { readonly value: T }>();
  return (text) => {
    if (text.length > longest) return make(text);
    const found = known.get(text);
    if (found !== undefined) return found.value;
    const value = make(text);
    if (known.size === most) known.clear();
    known.set(text, { value });
    return value;
  };
}

const most = 4_000;
/** Longer texts do not come twice. */
const longest = 2_000;
