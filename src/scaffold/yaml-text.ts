import { stringify } from 'yaml';

/** A text as YAML that reads as the same text, on one line, in quotes where it would mean something else. */
export function yamlText(text: string): string {
  const plain = stringify(text, { lineWidth: 0 }).trimEnd();
  return plain.includes('\n') ? JSON.stringify(text) : plain;
}
