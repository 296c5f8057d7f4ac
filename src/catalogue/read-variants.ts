import type { ManualSettings } from '../../schemas/manual.ts';
import {
  type Attribute,
  type Condition,
  createSpace,
  type Space,
  type SpaceProblem,
} from '../applicability/index.ts';
import type { Reading } from './reading.ts';

/** The variants of the manual and what `never` rules out. Faults are told, and what is faulty is left out. */
export function readVariants(reading: Reading, settings: ManualSettings): Space {
  const attributes = Object.entries(settings.variants).flatMap(([id, variant]): Attribute[] => {
    const [first, ...rest] = Array.isArray(variant) ? variant : variant.values;
    return first === undefined ? [] : [{ id, values: [first, ...rest] }];
  });
  const lines: { readonly condition: Condition; readonly path: string; readonly text: string }[] =
    [];
  settings.never.forEach((text, i) => {
    const path = `never.${i}`;
    const condition = reading.syntax(path, text);
    if (condition !== undefined) lines.push({ condition, path, text });
  });
  const { space, problems } = createSpace(
    attributes,
    lines.map(({ condition }) => condition),
  );
  for (const problem of problems) {
    reading.facts.push({ kind: 'variants-wrong', place: placeOf(problem), problem });
  }
  return space;

  function placeOf(problem: SpaceProblem) {
    switch (problem.code) {
      case 'duplicate-attribute':
        return reading.written.keyPlaceOf(`variants.${problem.attribute}`);
      case 'duplicate-value':
        return valuePlace(problem.attribute, problem.value);
      case 'constraint': {
        const { path = 'never', text = '' } = lines[problem.constraint] ?? {};
        return reading.within(reading.written.placeOf(path), text, problem.problem);
      }
      case 'no-machine-left':
        return reading.written.placeOf(lines[problem.constraint]?.path ?? 'never');
    }
  }

  /** Of the second one. */
  function valuePlace(attribute: string, value: string) {
    const variant = settings.variants[attribute] ?? [];
    const [values, path] = Array.isArray(variant)
      ? [variant, `variants.${attribute}`]
      : [variant.values, `variants.${attribute}.values`];
    return reading.written.placeOf(`${path}.${values.lastIndexOf(value)}`);
  }
}
