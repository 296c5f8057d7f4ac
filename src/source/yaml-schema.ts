import { z } from 'zod';

type Schema = z.core.$ZodType;

/** The schema of the value at a path, as far as it is the only one there can be. */
export function schemaAt(schema: Schema, path: readonly PropertyKey[]): Schema | undefined {
  let at: Schema | undefined = bare(schema);
  for (const step of path) {
    const inner: Schema | undefined = at && member(at, step);
    at = inner && bare(inner);
  }
  return at;
}

/** The keys that an object may have; of a union, those of all its branches. */
export function keysOf(schema: Schema): string[] {
  const object = bare(schema);
  if (object instanceof z.ZodUnion) return [...new Set(object.options.flatMap(keysOf))];
  return object instanceof z.ZodObject ? Object.keys(object.shape) : [];
}

/** The branches of a union. */
export function optionsOf(schema: Schema): readonly Schema[] {
  const union = bare(schema);
  return union instanceof z.ZodUnion ? union.options : [];
}

/** Without what does not change the shape: optional, default, transform. */
function bare(schema: Schema): Schema {
  let inner = schema;
  for (;;) {
    if (
      inner instanceof z.ZodOptional ||
      inner instanceof z.ZodDefault ||
      inner instanceof z.ZodNullable
    ) {
      inner = inner.def.innerType;
    } else if (inner instanceof z.ZodPipe) inner = inner.def.in;
    else return inner;
  }
}

function member(schema: Schema, step: PropertyKey): Schema | undefined {
  if (schema instanceof z.ZodObject) {
    const shape: Readonly<Record<string, Schema>> = schema.shape;
    return shape[String(step)];
  }
  if (schema instanceof z.ZodRecord) return schema.valueType;
  if (schema instanceof z.ZodArray) return schema.element;
  if (schema instanceof z.ZodTuple) return schema.def.items[Number(step)];
  return undefined;
}
