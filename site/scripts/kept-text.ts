/** What the browser has kept under a key; null where it has nothing, or keeps nothing for this page. */
export function keptText(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** Keeps a text, or forgets it where it is empty. False where the browser keeps nothing for this page. */
export function keepText(key: string, text: string): boolean {
  try {
    if (text === '') localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}
