import { z } from 'zod';
import { machineSchema } from './catalogue.ts';
import { frontMatterSchema } from './front-matter.ts';
import { manualSchema } from './manual.ts';
import { reportSchema } from './report.ts';

export interface JsonSchemaFile {
  /** In `schemas/json/`. */
  readonly name: string;
  readonly text: string;
}

/**
 * The files of `schemas/json/`: what may be written in a manual, for editors, and what a report holds, for programs.
 * JSON Schema draft 7, the draft that the language servers for YAML read in full.
 */
export function jsonSchemaFiles(): readonly JsonSchemaFile[] {
  return [
    file('manual', 'manual.yaml', manualSchema, 'input'),
    file('machine', 'A machine of a manual: machines/<id>.yaml', machineSchema, 'input'),
    file('front-matter', 'Front matter of a procedure', frontMatterSchema, 'input'),
    file('report', 'What inspect --format json prints', reportSchema, 'output'),
  ];
}

function file(
  name: string,
  title: string,
  schema: z.ZodType,
  io: 'input' | 'output',
): JsonSchemaFile {
  const { $schema, ...rest } = z.toJSONSchema(schema, { target: 'draft-7', io });
  return {
    name: `${name}.schema.json`,
    text: `${JSON.stringify({ $schema, title, ...rest }, undefined, 2)}\n`,
  };
}
