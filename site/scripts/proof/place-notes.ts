/** Takes each finding of a sheet to the step in which it was found; what belongs to no step stays at the top. */
export function placeNotes(page: Document): void {
  const notes = page.querySelector('.proof-notes');
  if (notes === null) return;
  const steps = [...page.querySelectorAll<HTMLElement>('.work li.step[data-lines]')].map(
    (step) => ({ step, ...linesOf(step.dataset.lines ?? '') }),
  );
  const last = new Map<Element, Element>();
  for (const note of [...notes.querySelectorAll<HTMLElement>('.proof-note')]) {
    const line = Number(note.dataset.line);
    const around = steps.filter(({ first, end }) => first <= line && line <= end);
    const [inner] = around.toSorted((a, b) => a.end - a.first - (b.end - b.first));
    const body = inner && [...inner.step.children].find((part) => part.matches('.body'));
    if (body === undefined) continue;
    const before = last.get(body);
    if (before === undefined) body.prepend(note);
    else before.after(note);
    last.set(body, note);
  }
  if (notes.childElementCount === 0) notes.remove();
}

function linesOf(lines: string): { first: number; end: number } {
  const [first = Number.NaN, end = Number.NaN] = lines.split('-').map(Number);
  return { first, end };
}
