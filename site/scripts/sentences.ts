/** First letters as they are written, by the text that begins with them. */
const written = new WeakMap<Text, string>();

/** Makes sentences whole from which actions have gone: the words that joined them go too, and the first is capital. */
export function mendSentences(page: ParentNode): void {
  for (const join of page.querySelectorAll<HTMLElement>('[data-join]')) {
    const next = join.nextElementSibling;
    const isLast = join.nextSibling === next && next !== null && isGone(next);
    join.hidden = isLast || beginsSentence(join);
  }
  for (const action of page.querySelectorAll('.action')) {
    const first = firstText(action);
    if (first === undefined) continue;
    const own = written.get(first) ?? first.data;
    written.set(first, own);
    const capital = own.charAt(0).toUpperCase() + own.slice(1);
    first.data = isSometimes(action) && beginsSentence(action) ? capital : own;
  }
}

/** Only sentences with actions that may go are touched. */
const isSometimes = (action: Element): boolean =>
  action.closest('p')?.querySelector('.action[data-when]') != null;

function beginsSentence(element: Element): boolean {
  for (let before = element.previousSibling; before !== null; before = before.previousSibling) {
    if (before instanceof Element && isGone(before)) continue;
    const text = before.textContent ?? '';
    if (text.trim() !== '') return /[.!?]\s*$/.test(text);
  }
  const { parentElement } = element;
  return parentElement?.matches('.sentence') ? beginsSentence(parentElement) : true;
}

const isGone = (element: Element): boolean => element.hasAttribute('hidden');

function firstText(node: Node): Text | undefined {
  for (const child of node.childNodes) {
    if (child instanceof Text && child.data.trim() !== '') return child;
    if (!(child instanceof Element) || isGone(child)) continue;
    const found = firstText(child);
    if (found !== undefined) return found;
  }
  return undefined;
}
