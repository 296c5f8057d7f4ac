import type { Level } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import { type Conclusion, conclude, type Look, type Size, type Whole } from '../rules/index.ts';

export interface Reported extends Whole {
  /** Of the manual. */
  readonly title: string;
  /** Of the program that checks. */
  readonly version: string;
}

/** The report of one check, from the looks at all parts of a manual. */
export function makeReport(looks: readonly Look[], whole: Reported): Report {
  const { findings, waivers }: Conclusion = conclude(looks, whole);
  const count = (level: Level) => findings.filter((finding) => finding.level === level).length;
  const waived = waivers.reduce((sum, waiver) => sum + waiver.waived.length, 0);
  const sum = (of: keyof Size) => looks.reduce((all, { size }) => all + size[of], 0);
  return {
    tool: { name: 'tallybolt', version: whole.version },
    manual: {
      title: whole.title,
      procedures: sum('procedures'),
      steps: sum('steps'),
      actions: sum('actions'),
    },
    findings: [...findings],
    waivers: [...waivers],
    summary: { error: count('error'), warning: count('warning'), note: count('note'), waived },
  };
}
