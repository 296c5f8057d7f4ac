import { isShown } from '../is-shown.ts';
import { limitsOf } from '../limits-of.ts';
import type { Box } from './carry-over.ts';
import { fingerprint } from './fingerprint.ts';
import type { CardReading, CardStep } from './job-card.ts';
import { tickKey } from './progress.ts';

/** A box on the page that a job keeps. */
export interface PageBox extends Box {
  readonly field: HTMLInputElement;
  readonly kind: 'tick' | 'reading';
}

/** The boxes of a sheet. To be read before anything else changes the page: prints are of the words as published. */
export class SheetBoxes {
  readonly all: readonly PageBox[];
  readonly #page: ParentNode;
  readonly #names = new Map<string, string>();

  constructor(page: ParentNode) {
    this.#page = page;
    const prints = new Map<Element | null, string>([[null, '']]);
    const taken = new Map<string, number>();
    const fields = page.querySelectorAll<HTMLInputElement>(
      '.work :is(.tick input, .place input, input.record)',
    );
    this.all = [...fields].map((field) => {
      const row = field.closest<HTMLElement>('li.step');
      const print = prints.get(row) ?? fingerprint(wordsOf(row));
      prints.set(row, print);
      const step = row === null ? '' : numberOf(row);
      const isReading = field.matches('.record');
      const label = field.getAttribute('aria-label') ?? '';
      const name = tickKey(step, isReading ? label : (field.dataset.instance ?? ''));
      const count = (taken.get(name) ?? 0) + 1;
      taken.set(name, count);
      const key = count === 1 ? name : `${name} ${count}`;
      this.#names.set(key, label);
      return { key, print, field, kind: isReading ? 'reading' : 'tick' };
    });
  }

  boxOf(field: EventTarget | null): PageBox | undefined {
    return this.all.find((box) => box.field === field);
  }

  /** The steps that are shown now, with their numbers of now. */
  steps(): CardStep[] {
    const rows = this.#page.querySelectorAll<HTMLElement>('.work li.step');
    return [...rows].filter(isShown).map((row) => ({
      step: numberOf(row),
      number: shownNumber(row),
      isTop: row.parentElement?.closest('li.step') === null,
      places: [...row.querySelectorAll<HTMLElement>('.place input')]
        .filter((field) => field.closest('li.step') === row && isShown(field))
        .map(({ dataset }) => dataset.instance ?? ''),
    }));
  }

  readings(): CardReading[] {
    return this.all
      .filter(({ kind, field }) => kind === 'reading' && isShown(field))
      .map(({ key, field }) => {
        const row = field.closest<HTMLElement>('li.step');
        return {
          key,
          number: row === null ? undefined : shownNumber(row),
          what: this.#names.get(key) ?? '',
          ...limitsOf(field),
          unit: field.dataset.unit,
        };
      });
  }

  /** Shows the marks of a job in the boxes; none where there is no job. */
  fill(marks: {
    readonly ticks: Readonly<Record<string, unknown>>;
    readonly readings: Readonly<Record<string, { readonly value: string }>>;
  }): void {
    for (const { key, field, kind } of this.all) {
      if (kind === 'tick') {
        field.checked = marks.ticks[key] !== undefined;
        continue;
      }
      const value = marks.readings[key]?.value ?? '';
      if (field.value.trim() === value) continue;
      field.value = value;
      field.dispatchEvent(new Event('input'));
    }
  }
}

/** The words of a step with its figures, without the steps in it and without what is written in its boxes. */
function wordsOf(row: HTMLElement | null): string {
  const copy = row?.cloneNode(true);
  if (!(copy instanceof HTMLElement)) return '';
  for (const other of copy.querySelectorAll('li.step, .tick, output, svg')) other.remove();
  return copy.textContent ?? '';
}

const numberOf = (row: HTMLElement): string => row.id.replace(/^step-/, '');

const shownNumber = (row: HTMLElement): string =>
  row.querySelector(':scope > .tick .number')?.textContent?.trim() || numberOf(row);
