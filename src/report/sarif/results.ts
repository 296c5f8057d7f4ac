import type { Location, Result, Suppression } from 'sarif';
import type { KnownFinding } from '../../../schemas/baseline.ts';
import type { Finding } from '../../../schemas/finding.ts';
import type { Report, Waived } from '../../../schemas/report.ts';
import { printOf } from '../baseline/index.ts';
import { fixOf } from './fix-of.ts';
import { messageOf } from './message-of.ts';
import type { Places } from './places.ts';
import { storyOf } from './story-of.ts';

/** Name and version of the way in which prints are made, as the key of a partial fingerprint. */
const printKey = 'tallyboltFinding/v1';

/** The results of a report: what stands, what is waived, what the baseline lists and is gone (3.27). */
export function resultsOf(report: Report, places: Places, ruleIds: readonly string[]): Result[] {
  const ordinals = new Map<string, number>();
  const indexes = new Map(ruleIds.map((id, i) => [id, i]));
  const about = (
    rule: string,
    print: string,
  ): Pick<Result, 'ruleId' | 'ruleIndex' | 'partialFingerprints'> => {
    const ordinal = (ordinals.get(print) ?? 0) + 1;
    ordinals.set(print, ordinal);
    const ruleIndex = indexes.get(rule);
    return {
      ruleId: rule,
      ...(ruleIndex !== undefined && { ruleIndex }),
      partialFingerprints: { [printKey]: `${print}-${ordinal}` },
    };
  };
  const told = (finding: Finding): Result => ({
    ...about(finding.rule, printOf(finding)),
    ...resultOf(finding, places),
  });
  const standing = report.findings.map((finding) => ({ ...told(finding), ...stateOf(finding) }));
  const waived = report.waivers.flatMap((waiver) =>
    waiver.waived.map((finding) => ({
      ...told(finding),
      suppressions: [suppressionBy(waiver, places)],
    })),
  );
  const gone = (report.baseline?.gone ?? []).flatMap((one) =>
    Array.from({ length: one.count }, () => ({ ...about(one.rule, one.print), ...absent(one) })),
  );
  return [...standing, ...waived, ...gone];
}

function resultOf(finding: Finding, places: Places): Result {
  const { level, message, procedure, item, when, related, help } = finding;
  const story = storyOf(finding, places);
  const fix = finding.fix === undefined ? undefined : fixOf(finding.fix, places);
  const place: Location = { ...places.location(finding), ...logical(procedure) };
  const words = when === undefined ? message : `${message} (when ${when})`;
  return {
    level,
    message: messageOf(words, ...(help === undefined ? [] : [help])),
    locations: [place],
    ...(related.length > 0 && {
      relatedLocations: related.map((one, id) => ({ id, ...places.location(one, one.label) })),
    }),
    ...(story !== undefined && { codeFlows: [story] }),
    ...(fix !== undefined && { fixes: [fix] }),
    ...bagOf({ item, when }),
  };
}

/** What SARIF has no place for, where there is any. */
function bagOf(facts: Readonly<Record<string, string | undefined>>): Pick<Result, 'properties'> {
  const said = Object.entries(facts).filter(([, value]) => value !== undefined);
  return said.length === 0 ? {} : { properties: Object.fromEntries(said) };
}

const logical = (procedure: string | undefined): Pick<Location, 'logicalLocations'> =>
  procedure === undefined ? {} : { logicalLocations: [{ name: procedure, kind: 'procedure' }] };

const stateOf = ({ known }: Finding): Pick<Result, 'baselineState'> =>
  known === undefined ? {} : { baselineState: known ? 'unchanged' : 'new' };

function suppressionBy(waiver: Waived, places: Places): Suppression {
  const { reason } = waiver;
  return {
    kind: 'inSource',
    status: 'accepted',
    ...(reason !== '' && { justification: reason }),
    location: places.location(waiver),
  };
}

/** Where it was is not known any more; only in which procedure. */
function absent({ says, procedure, item, when }: KnownFinding): Result {
  return {
    message: messageOf(says),
    baselineState: 'absent',
    locations: procedure === undefined ? [] : [{ ...logical(procedure) }],
    ...bagOf({ item, when }),
  };
}
