/** Puts a panel in the place of a sheet that is not for the chosen machine; takes it away where there is none. */
export function sayUnfit(page: Document, machine: string | undefined): void {
  page.querySelector('.unfit')?.remove();
  const paper = page.querySelector('.paper');
  paper?.toggleAttribute('data-unfit', machine !== undefined);
  if (machine === undefined) return;
  const panel = page.createElement('section');
  panel.className = 'unfit';
  const heading = page.createElement('h2');
  heading.textContent = 'This sheet is not for the chosen machine.';
  const lines = [
    `The chosen machine: ${machine}.`,
    'Look for another sheet on the contents page, or choose another machine above.',
  ].map((text) => {
    const line = page.createElement('p');
    line.textContent = text;
    return line;
  });
  panel.append(heading, ...lines);
  page.querySelector('.title-block')?.after(panel);
}
