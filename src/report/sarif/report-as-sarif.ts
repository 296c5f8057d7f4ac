import type { Artifact, Log } from 'sarif';
import type { ManualSettings } from '../../../schemas/manual.ts';
import type { Report } from '../../../schemas/report.ts';
import { compareText, type TextFile } from '../../source/index.ts';
import { messageOf } from './message-of.ts';
import { baseId, placesIn } from './places.ts';
import { resultsOf } from './results.ts';
import { type DescribedRule, descriptorOf, overridesIn } from './rule-descriptors.ts';

export interface SarifContext {
  /** All rules that there are. */
  readonly rules: readonly DescribedRule[];
  /** The levels that the manual gives to rules. */
  readonly levels: ManualSettings['rules'];
  readonly texts: readonly TextFile[];
  /** Leads from the folder in which the check was run to the manual: empty, or with `/` at its end. */
  readonly folder: string;
  readonly exitCode: number;
}

/** The report as SARIF 2.1.0 (OASIS Standard, errata 01), as text. */
export function reportAsSarif(report: Report, context: SarifContext): string {
  return `${JSON.stringify(logOf(report, context), undefined, 2)}\n`;
}

function logOf(report: Report, { rules, levels, folder, exitCode, ...context }: SarifContext): Log {
  const texts = context.texts.toSorted((a, b) => compareText(a.path, b.path));
  const places = placesIn(texts, folder);
  const overrides = overridesIn(levels, rules);
  return {
    $schema:
      'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: report.tool.name,
            version: report.tool.version,
            language: 'en',
            rules: rules.map(descriptorOf),
          },
        },
        invocations: [
          {
            executionSuccessful: true,
            exitCode,
            ...(overrides.length > 0 && { ruleConfigurationOverrides: overrides }),
          },
        ],
        originalUriBaseIds: {
          [baseId]: { description: messageOf('The folder in which the check was run') },
        },
        artifacts: texts.map(({ path }): Artifact => {
          const mimeType = path.endsWith('.md') ? 'text/markdown' : 'application/yaml';
          return { location: places.artifact(path), mimeType, roles: ['analysisTarget'] };
        }),
        results: resultsOf(
          report,
          places,
          rules.map(({ id }) => id),
        ),
        columnKind: 'utf16CodeUnits',
        defaultEncoding: 'utf-8',
        language: 'en',
      },
    ],
  };
}
