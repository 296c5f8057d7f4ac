/** The strip of the proof on a page as it stands now. */
export interface Strip {
  readonly edition: string;
  readonly token: string;
  /** True where places open in the writer's editor. */
  readonly opens: boolean;
}

export function stripOf(page: Document): Strip {
  const data = page.querySelector<HTMLElement>('.proof-strip')?.dataset;
  return {
    edition: data?.edition ?? '',
    token: data?.token ?? '',
    opens: data?.opens === 'true',
  };
}

/** Says something in the strip. */
export function sayInStrip(page: Document, words: string): void {
  const said = page.querySelector('.proof-said');
  if (said !== null && said.textContent !== words) said.textContent = words;
}
