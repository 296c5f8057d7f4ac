import type { Level } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import { allActions, allSteps, type LinkedManual } from '../link/index.ts';
import type { Found } from '../rules/index.ts';

/** The report of one check. Findings and waivers come sorted. */
export function makeReport(
  linked: LinkedManual,
  { findings, waivers }: Found,
  version: string,
): Report {
  const procedures = [...linked.procedures.values()].map((one) => one.procedure);
  const count = (level: Level) => findings.filter((finding) => finding.level === level).length;
  const waived = waivers.reduce((sum, waiver) => sum + waiver.waived.length, 0);
  return {
    tool: { name: 'tallybolt', version },
    manual: {
      title: linked.manual.settings.title,
      procedures: procedures.length,
      steps: procedures.reduce((sum, one) => sum + [...allSteps(one)].length, 0),
      actions: procedures.reduce((sum, one) => sum + [...allActions(one)].length, 0),
    },
    findings: [...findings],
    waivers: [...waivers],
    summary: { error: count('error'), warning: count('warning'), note: count('note'), waived },
  };
}
