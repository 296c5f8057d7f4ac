import { z } from 'zod';
import { machineSchema } from '../../schemas/catalogue.ts';
import { frontMatterSchema } from '../../schemas/front-matter.ts';
import { manualSchema } from '../../schemas/manual.ts';

type Shape = z.core.JSONSchema.BaseSchema;

const shapes = {
  manual: () => z.toJSONSchema(manualSchema, { io: 'input' }),
  machine: () => z.toJSONSchema(machineSchema, { io: 'input' }),
  front: () => z.toJSONSchema(frontMatterSchema, { io: 'input' }),
};
export type YamlKind = keyof typeof shapes;
const made = new Map<YamlKind, Shape>();

/** What may stand below some keys: one shape, or several to choose from. */
export function shapesAt(kind: YamlKind, path: readonly string[]): readonly Shape[] {
  let whole = made.get(kind);
  if (whole === undefined) {
    whole = shapes[kind]();
    made.set(kind, whole);
  }
  return path.reduce<readonly Shape[]>(
    (at, key) => at.flatMap(alternatives).flatMap((shape) => below(shape, key)),
    [whole],
  );
}

export interface YamlKey {
  readonly key: string;
  readonly isNeeded: boolean;
  readonly more: string | undefined;
}

/** Keys that some shapes name. */
export function keysOf(found: readonly Shape[]): readonly YamlKey[] {
  return found.flatMap(alternatives).flatMap((shape) =>
    Object.entries(shape.properties ?? {}).map(([key, of]) => ({
      key,
      isNeeded: shape.required?.includes(key) ?? false,
      more: typeof of === 'object' ? of.description : undefined,
    })),
  );
}

/** Values that some shapes list. */
export function valuesOf(found: readonly Shape[]): readonly string[] {
  return found.flatMap(alternatives).flatMap((shape) => {
    if (shape.enum !== undefined) return shape.enum.map(String);
    return shape.type === 'boolean' ? ['true', 'false'] : [];
  });
}

function alternatives(shape: Shape): readonly Shape[] {
  const inner = [...(shape.anyOf ?? []), ...(shape.oneOf ?? [])].flatMap((one) =>
    typeof one === 'object' ? alternatives(one) : [],
  );
  const items = Array.isArray(shape.items) ? shape.items : [shape.items];
  const elements = items.flatMap((one) => (typeof one === 'object' ? alternatives(one) : []));
  return inner.length > 0 || elements.length > 0 ? [...inner, ...elements] : [shape];
}

function below(shape: Shape, key: string): readonly Shape[] {
  const named = shape.properties?.[key] ?? shape.additionalProperties;
  return typeof named === 'object' ? [named] : [];
}
