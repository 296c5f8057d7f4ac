import { licensed } from './licences.ts';

// `npm run -s licences`: a line for each package that comes with Tallybolt, as the lock file has it.
const rows = licensed.map(({ name, version, licence, why }) =>
  [name, version, licence, ...(why === undefined ? [] : [why])].join('\t'),
);
console.log([...new Set(rows)].join('\n'));
