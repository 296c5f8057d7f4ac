import type { Finding } from '../../schemas/finding.ts';
import type { Change, Redline } from '../../schemas/redline.ts';
import { counted, noPaint, type Paint, printable, wrap } from '../report/index.ts';
import { countsWords, type Grouped, grouped, type Home } from './grouped.ts';
import { rankOf } from './risks.ts';
import {
  performedWords,
  performersWords,
  placeOf,
  revisionWords,
  sideWords,
  stepWords,
  touchesWords,
} from './told-place.ts';

/** A redline for people at a terminal: risk first, words last and short. Without a width no line is broken. */
export function redlineAsText(redline: Redline, paint: Paint = noPaint, width?: number): string {
  const writer = new TextWriter(redline, paint, width);
  return `${writer.lines.join('\n')}\n`;
}

/** One change may bring a finding in each procedure: of those that are new, or gone, so many are listed. */
const mostFindings = 20;

class TextWriter {
  readonly lines: string[] = [];
  readonly #redline: Redline;
  readonly #paint: Paint;
  readonly #width: number | undefined;

  constructor(redline: Redline, paint: Paint, width: number | undefined) {
    this.#redline = redline;
    this.#paint = paint;
    this.#width = width;
    const { risks, others, words } = grouped(redline);
    const { manual, before, after } = redline;
    this.#put(
      `${paint.strong(printable(manual.title))}: ${printable(sideWords(before))} → ${printable(sideWords(after))}`,
      '  ',
    );
    this.#put(countsWords(redline), '  ');
    for (const one of risks) this.#risk(one);
    for (const home of others) {
      this.#head(this.#homeWords(home));
      for (const change of home.changes) this.#change(change);
    }
    this.#words(words);
    this.#findings('New findings', redline.findings.new);
    this.#findings('Findings that are gone', redline.findings.gone);
  }

  #put(text: string, indent: string): void {
    this.lines.push(wrap(text, this.#width, indent));
  }

  #head(text: string): void {
    this.lines.push('');
    this.#put(text, '  ');
  }

  #risk({ id, title, why, changes }: Grouped['risks'][number]): void {
    const level = rankOf(id) < rankOf('fluid') ? 'error' : 'warning';
    this.#head(this.#paint.level[level](title));
    this.#put(`  ${this.#paint.faint(why)}`, '  ');
    for (const change of changes) {
      this.#change(change);
      const by = performersWords(change, this.#redline);
      if (by !== '') this.#put(`      ${by}`, '        ');
    }
  }

  #change(change: Change): void {
    const place = placeOf(change);
    const step = stepWords(change);
    const where = [
      ...(place === undefined ? [] : [`${place.file}:${place.line}`]),
      ...(step === undefined ? [] : [step]),
    ].join(', ');
    this.#put(`  ${this.#paint.strong(printable(change.message))}`, '      ');
    if (where !== '') {
      const old = place?.isOld === true ? ' (before)' : '';
      this.lines.push(`      ${this.#paint.faint(printable(where) + old)}`);
    }
    const touches = touchesWords(change);
    if (touches !== '') this.#put(`      reaches ${touches}`, '        ');
  }

  #homeWords({ kind, id }: Home): string {
    if (kind === 'manual') return this.#paint.strong('The manual');
    if (kind === 'machine') return `${this.#paint.strong(id)}, catalogue`;
    const procedure = this.#redline.procedures.find((one) => one.id === id);
    if (procedure === undefined) return this.#paint.strong(id);
    const about = [printable(revisionWords(procedure)), performedWords(procedure)];
    return `${this.#paint.strong(id)}, ${printable(procedure.title)} (${about.filter(Boolean).join('; ')})`;
  }

  #words(homes: readonly Home[]): void {
    if (homes.length === 0) return;
    this.#head(this.#paint.level.note('Words only'));
    for (const { kind, id, changes } of homes) {
      const places = changes.map((change) => stepWords(change) ?? change.field ?? '');
      const name = kind === 'manual' ? 'manual.yaml' : id;
      const said = [...new Set(places.filter((place) => place !== ''))];
      this.#put(`  ${name}: ${printable(said.join(', '))}`, '      ');
    }
  }

  #findings(title: string, findings: readonly Finding[]): void {
    if (findings.length === 0) return;
    this.#head(`${title} (${counted(findings.length, 'finding')})`);
    for (const { file, start, level, rule, message } of findings.slice(0, mostFindings)) {
      const paint = this.#paint;
      const place = paint.faint(`${printable(file)}:${start.line}`);
      this.#put(`  ${place} ${paint.level[level](level)} ${rule}: ${printable(message)}`, '      ');
    }
    const rest = findings.length - mostFindings;
    if (rest > 0) this.#put(`  and ${rest} more, which --format json has`, '      ');
  }
}
