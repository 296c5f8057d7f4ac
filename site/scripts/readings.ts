import { judge, type Verdict } from './judge.ts';
import { limitsOf } from './limits-of.ts';

/** Says beside each reading of a sheet whether it keeps its limits, as soon as it is typed. */
export function watchReadings(sheet: ParentNode): void {
  for (const field of sheet.querySelectorAll<HTMLInputElement>('input.record[data-unit]')) {
    const said = document.createElement('output');
    said.className = 'verdict';
    field.after(said);
    const show = (): void => {
      const verdict = judge(field.value, limitsOf(field));
      said.textContent = wordsOf(verdict, field.dataset.unit ?? '');
      said.dataset.is = verdict.is;
      field.setAttribute('aria-invalid', String(verdict.is !== 'empty' && verdict.is !== 'within'));
    };
    field.addEventListener('input', show);
    show();
  }
}

function wordsOf(verdict: Verdict, unit: string): string {
  switch (verdict.is) {
    case 'empty':
      return '';
    case 'unclear':
      return verdict.words;
    case 'within':
      return 'Within limits';
    case 'below':
    case 'above':
      return `Not within limits: ${verdict.is} ${signed(verdict.limit)} ${unit}`;
  }
}

const signed = (value: number): string => String(value).replace('-', '−');
