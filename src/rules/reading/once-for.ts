/** A function that works out its answer once for each object and keeps it for as long as the object is there. */
export function onceFor<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    const found = known.get(key);
    if (found !== undefined) return found.value;
    const value = make(key);
    known.set(key, { value });
    return value;
  };
}
