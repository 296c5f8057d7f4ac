import { printAsWritten, type Quantity } from '../quantity/index.ts';

/** A member of an entry or of the settings in words, for comparison and for print; undefined where it says nothing. */
export function memberText(value: unknown): string | undefined {
  if (value === undefined || value === null || value === false || value === '') return undefined;
  if (value === true) return 'yes';
  if (typeof value === 'string') return value.replace(/\s+/g, ' ').trim();
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return joined(value.map(memberText));
  if (isQuantity(value)) return printAsWritten(value);
  if (typeof value !== 'object') return undefined;
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return joined(
    members.map(([key, inner]) => {
      const text = memberText(inner);
      return text === undefined ? undefined : `${key} ${text}`;
    }),
  );
}

function joined(texts: readonly (string | undefined)[]): string | undefined {
  const said = texts.filter((text) => text !== undefined);
  return said.length === 0 ? undefined : said.join(', ');
}

function isQuantity(value: object): value is Quantity {
  return 'form' in value && ('unit' in value || 'torque' in value);
}
