import type { PullList } from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import type { Sheet } from './book.ts';
import { pullCsv, pullJson } from './pull-csv.ts';
import { pullData } from './pull-data.ts';
import { pullListHref } from './site-links.ts';

/** The pull list of a sheet as the files that are published beside it. */
export function pullFiles(list: PullList, id: string, manual: LinkedManual): Sheet['pullFiles'] {
  const data = pullData(list, manual);
  return {
    csv: { href: pullListHref(id, 'csv'), text: 'CSV', content: pullCsv(data) },
    json: { href: pullListHref(id, 'json'), text: 'JSON', content: pullJson(data) },
  };
}
