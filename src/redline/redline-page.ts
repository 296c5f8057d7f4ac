import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import type { Finding } from '../../schemas/finding.ts';
import type { Redline } from '../../schemas/redline.ts';
import { changeEntry } from './change-entry.ts';
import { countsWords, grouped, type Home } from './grouped.ts';
import { performedWords, revisionWords, sideWords } from './told-place.ts';

const writer = unified().use(rehypeStringify).freeze();

/**
 * A redline as one HTML page to read or to print on A4: title block, change bars, values before and after in the
 * margin. It has no script, and no text of an author becomes markup.
 *
 * @param styles the style sheet of the page, as text
 */
export function redlineAsPage(redline: Redline, styles: string): string {
  const { manual, before, after } = redline;
  const running = `Redline: ${sideWords(before)} → ${sideWords(after)}`;
  const page: Root = {
    type: 'root',
    children: [
      { type: 'doctype' },
      h(
        'html',
        {
          lang: 'en',
          dataRunning: cut(running, 60),
          dataMark: '',
          dataMachine: '',
          dataManual: cut(manual.title, 90),
          dataDraft: '',
        },
        [
          h('head', [
            h('meta', { charSet: 'utf-8' }),
            h('meta', {
              httpEquiv: 'Content-Security-Policy',
              content: "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'",
            }),
            h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
            h('title', `${running} · ${manual.title}`),
            h('style', styles),
          ]),
          h('body', [h('main', { className: ['paper', 'redline'] }, content(redline))]),
        ],
      ),
    ],
  };
  return `${writer.stringify(page)}\n`;
}

/** A running line has room for so many letters. */
function cut(text: string, most: number): string {
  const letters = [...text];
  return letters.length > most
    ? `${letters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
    : text;
}

function content(redline: Redline): ElementContent[] {
  const { risks, others, words } = grouped(redline);
  const { findings } = redline;
  return [
    titleBlock(redline),
    ...risks.map(({ title, why, changes }) =>
      h('section', [
        h('h2', title),
        h('p.why', why),
        h(
          'ol.changes',
          changes.map((change) => changeEntry(change, redline)),
        ),
      ]),
    ),
    ...part('Other changes', others, redline),
    ...part('Words only', words, redline),
    ...findingList('New findings of the check', findings.new),
    ...findingList('Findings of the check that are gone', findings.gone),
    signOff(),
  ];
}

function titleBlock(redline: Redline): Element {
  const { manual, before, after, changes, procedures, tool } = redline;
  const first = grouped(redline).risks.reduce((sum, one) => sum + one.changes.length, 0);
  const cells: readonly (readonly [string, string])[] = [
    ['Before', sideWords(before)],
    ['After', sideWords(after)],
    ...(manual.edition === undefined ? [] : [['Edition', manual.edition] as const]),
    ['Changes', String(changes.length)],
    ['To look at first', String(first)],
    ['Procedures changed', String(procedures.length)],
    ['Made by', `${tool.name} ${tool.version}`],
  ];
  return h('header.title-block', [
    h('div.top', [
      h('div.name', [
        h('p.manual', manual.title),
        h('h1', 'Redline'),
        h('p.summary', countsWords(redline)),
      ]),
    ]),
    h(
      'dl',
      cells.map(([label, value]) => h('div', [h('dt', label), h('dd', value)])),
    ),
  ]);
}

function part(title: string, homes: readonly Home[], redline: Redline): Element[] {
  if (homes.length === 0) return [];
  return [
    h('section', [
      h('h2', title),
      ...homes.flatMap((home) => [
        h('h3', homeWords(home, redline)),
        h(
          'ol.changes',
          home.changes.map((change) => changeEntry(change)),
        ),
      ]),
    ]),
  ];
}

function homeWords({ kind, id }: Home, { procedures }: Redline): ElementContent[] {
  if (kind === 'manual') return [h('span', 'The manual')];
  if (kind === 'machine') return [h('span', `Catalogue of ${id}`)];
  const procedure = procedures.find((one) => one.id === id);
  if (procedure === undefined) return [h('span', id)];
  const about = [revisionWords(procedure), performedWords(procedure)].filter(Boolean).join('; ');
  return [h('span', procedure.title), h('span.about', ` ${id}, ${about}`)];
}

function findingList(title: string, findings: readonly Finding[]): Element[] {
  if (findings.length === 0) return [];
  return [
    h('section', [
      h('h2', `${title} (${findings.length})`),
      h(
        'ul.findings',
        findings.map(({ level, rule, file, start, message }) =>
          h('li', [
            h('strong', level),
            ' ',
            ...codeIn(message),
            ' ',
            h('span.about', `${rule}, ${file}:${start.line}`),
          ]),
        ),
      ),
    ]),
  ];
}

/** Our own sentences have code between backticks. */
const codeIn = (text: string): (string | Element)[] =>
  text.split(/`([^`]*)`/).map((part, i) => (i % 2 === 1 ? h('code', part) : part));

/** For the printed page: who looked, and what he says. */
function signOff(): Element {
  return h('section.review', [
    h(
      'dl',
      ['Reviewed by', 'Date', 'Released, or what to change'].map((label) =>
        h('div', [h('dt', label), h('dd')]),
      ),
    ),
  ]);
}
