import { mkdirSync, writeFileSync } from 'node:fs';
import { jsonSchemaFiles } from '../../schemas/json-schema.ts';

// Run by hand after a change of the schemas: node src/command/write-json-schemas.ts
const folder = new URL('../../schemas/json/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const { name, text } of jsonSchemaFiles()) writeFileSync(new URL(name, folder), text);
