import type { Place } from '../../schemas/finding.ts';
import type { Item } from '../catalogue/index.ts';

/** What an id in a manual means. */
export type Named =
  | { readonly kind: 'item'; readonly id: string; readonly item: Item }
  | { readonly kind: 'procedure'; readonly id: string }
  | { readonly kind: 'section' | 'step'; readonly id: string; readonly procedure: string }
  | { readonly kind: 'machine'; readonly id: string }
  | { readonly kind: 'variant'; readonly id: string }
  | { readonly kind: 'value'; readonly id: string; readonly variant: string }
  | { readonly kind: 'rule'; readonly id: string };

/** A place in the author's text that names something. */
export interface Mention {
  readonly named: Named;
  readonly place: Place;
  /** Where it is defined. */
  readonly isDefinition: boolean;
  /** How it is named: by its id, by a heading whose words give the id, or by the path of its file. */
  readonly form: 'id' | 'heading' | 'path';
}

/** Equal for what is the same. */
export function keyOf(named: Named): string {
  switch (named.kind) {
    case 'item':
      return `item ${named.item.place.file} ${named.id}`;
    case 'section':
    case 'step':
      return `${named.kind} ${named.procedure} ${named.id}`;
    case 'value':
      return `value ${named.variant} ${named.id}`;
    default:
      return `${named.kind} ${named.id}`;
  }
}
