import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver/node';
import type { Finding, Level, Place } from '../../schemas/finding.ts';
import type { Client } from './client.ts';
import type { Page } from './page.ts';

const severities: Readonly<Record<Level, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};

/** Of what a diagnostic is made beside its finding. */
export interface Telling {
  readonly client: Client;
  readonly pageOf: (file: string) => Page;
  /** Address of the page of a rule. */
  readonly ruleAddress: (rule: string) => string | undefined;
}

/** A finding as the editor shows it. */
export function diagnosticOf(
  finding: Finding,
  { client, pageOf, ruleAddress }: Telling,
): Diagnostic {
  const { rule, level, message, when, help, related } = finding;
  const rangeOf = ({ file, start, end }: Place) => pageOf(file).range(start.offset, end.offset);
  const href = client.hasCodeDescriptions ? ruleAddress(rule) : undefined;
  const told = `${message}${when === undefined ? '' : ` (when ${when})`}`;
  return {
    range: rangeOf(finding),
    severity: severities[level],
    source: 'tallybolt',
    code: rule,
    message: help === undefined ? told : `${told}\n${help}`,
    ...(href !== undefined && { codeDescription: { href } }),
    ...(client.hasRelated &&
      related.length > 0 && {
        relatedInformation: related.map((one) => ({
          location: { uri: pageOf(one.file).uri, range: rangeOf(one) },
          message: one.label,
        })),
      }),
  };
}
