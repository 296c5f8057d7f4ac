import type { Topic } from './topic.ts';

/** Where a link of a topic leads, as the attributes of an xref. */
export interface Target {
  readonly href: string;
  readonly scope: 'local' | 'external';
  readonly format: 'dita' | 'html';
}

/**
 * An address of the published manual, from its root, as one of the export; undefined for what the export does
 * not have, such as the page of hazards. An element is named by its topic and its own id.
 */
export function targetOf(address: string, topic: Topic): Target | undefined {
  if (/^(https?|mailto|tel):/i.test(address))
    return { href: address, scope: 'external', format: 'html' };
  const [page = '', fragment] = address.split('#', 2);
  const found = page === '' ? { file: '', id: topic.id } : topicAt(page, topic);
  if (found === undefined) return undefined;
  const inside = fragment ? `/${fragment}` : '';
  const href =
    inside === '' && found.file !== '' ? found.file : `${found.file}#${found.id}${inside}`;
  return { href, scope: 'local', format: 'dita' };
}

function topicAt(page: string, topic: Topic): { file: string; id: string } | undefined {
  const [, folder, name = ''] =
    /^(?:(procedures|machines)\/)?([^/]+)\/index\.html$/.exec(page) ?? [];
  const id = topicId(folder, name);
  if (id === undefined) return undefined;
  const path = folder === undefined ? `${name}.dita` : `${folder}/${name}.dita`;
  return { file: id === topic.id ? '' : topic.up + path, id };
}

function topicId(folder: string | undefined, name: string): string | undefined {
  if (folder === 'procedures') return name;
  if (folder === 'machines') return machineTopic(name);
  return name === 'torque-chart' || name === 'fluids' ? chartTopic(name) : undefined;
}

/** Ids of topics are unique in the whole manual: a machine may have the id of a procedure. */
export const machineTopic = (id: string): string => `machine.${id}`;
export const chartTopic = (name: 'torque-chart' | 'fluids' | 'safety'): string => `chart.${name}`;
