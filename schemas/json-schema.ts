import { z } from 'zod';
import { baselineSchema } from './baseline.ts';
import { machineSchema } from './catalogue.ts';
import { frontMatterSchema } from './front-matter.ts';
import { jobCardSchema } from './job-card.ts';
import { manualSchema } from './manual.ts';
import { procedureJsonSchema } from './procedure-json.ts';
import { pullListSchema } from './pull-list.ts';
import { redlineSchema } from './redline.ts';
import { reportSchema } from './report.ts';
import { shareReportSchema } from './share-report.ts';
import { untrackedSchema } from './untracked.ts';

export interface JsonSchemaFile {
  /** In `schemas/json/`. */
  readonly name: string;
  readonly text: string;
}

/**
 * The files of `schemas/json/`: what may be written in a manual, for editors, and what a report, a pull list or a procedure holds, for programs.
 * JSON Schema draft 7, the draft that the language servers for YAML read in full.
 */
export function jsonSchemaFiles(): readonly JsonSchemaFile[] {
  return [
    file('manual', 'manual.yaml', manualSchema, 'input'),
    file('machine', 'A machine of a manual: machines/<id>.yaml', machineSchema, 'input'),
    file('front-matter', 'Front matter of a procedure', frontMatterSchema, 'input'),
    file('procedure', 'A procedure for programs: procedure.json', procedureJsonSchema, 'output'),
    file('job-card', 'What a tablet writes of a job on a sheet', jobCardSchema, 'output'),
    file('pull-list', 'What pull --format json prints', pullListSchema, 'output'),
    file('baseline', 'What inspect --write-baseline writes', baselineSchema, 'output'),
    file('redline', 'What redline --format json prints', redlineSchema, 'output'),
    file('untracked', 'What inspect --untracked --format json prints', untrackedSchema, 'output'),
    file('report', 'What inspect --format json prints', reportSchema, 'output'),
    file('share-report', 'What inspect --share prints', shareReportSchema, 'output'),
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
