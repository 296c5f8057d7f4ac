import { type DisplayChoice, displayChoice, displayText } from './display-choice.ts';
import { keepText, keptText } from './kept-text.ts';

const key = 'tallybolt display';

/** Shows a page as its reader last chose, and lets him choose otherwise. To be called before the page is drawn. */
export function display(page: Document): void {
  let choice = displayChoice(keptText(key));
  dress(page, choice);
  page.addEventListener('DOMContentLoaded', () => {
    const form = page.querySelector('.display');
    const fields = [...(form?.querySelectorAll<HTMLInputElement>('input') ?? [])];
    const show = (): void => {
      for (const field of fields)
        field.checked = field.value === choice[field.name === 'tb-look' ? 'look' : 'type'];
    };
    show();
    form?.addEventListener('change', () => {
      choice = displayChoice(
        fields.flatMap(({ checked, value }) => (checked ? [value] : [])).join(' '),
      );
      dress(page, choice);
      // Where nothing is kept the choice lasts as long as the page.
      keepText(key, displayText(choice));
    });
    addEventListener('storage', (event) => {
      if (event.key !== key) return;
      choice = displayChoice(event.newValue);
      dress(page, choice);
      show();
    });
  });
}

function dress({ documentElement: { dataset } }: Document, { look, type }: DisplayChoice): void {
  if (look === 'device') delete dataset.look;
  else dataset.look = look;
  if (type === 'normal') delete dataset.type;
  else dataset.type = type;
}
