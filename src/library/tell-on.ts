import type { VFile } from 'vfile';
import type { Finding, Level } from '../../schemas/finding.ts';

/** As vfile has it: true for an error, false for a warning, undefined for a note. */
const fatal: Readonly<Record<Level, boolean | undefined>> = {
  error: true,
  warning: false,
  note: undefined,
};

/** Puts findings onto a VFile: as messages for reporters, and as plain data for programs. */
export function tellOn(file: VFile, findings: readonly Finding[]): void {
  file.data.tallybolt = { findings };
  for (const finding of findings) {
    const { start, end, rule, level } = finding;
    const when = finding.when === undefined ? '' : ` (when ${finding.when})`;
    const message = file.message(`${finding.message}${when}`, {
      place: { start, end },
      ruleId: rule,
      source: 'tallybolt',
    });
    message.fatal = fatal[level];
    const note = noteOf(finding);
    if (note !== '') message.note = note;
  }
}

/** What to do, and the other places that explain it. */
function noteOf({ help, related }: Finding): string {
  const places = related.map(
    ({ file, start, label }) => `${file}:${start.line}:${start.column} ${label}`,
  );
  return [...(help === undefined ? [] : [help]), ...places].join('\n');
}
