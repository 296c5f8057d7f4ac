import type { ArtifactLocation, Location, Region } from 'sarif';
import type { Place } from '../../../schemas/finding.ts';
import { type Locator, locator, type TextFile } from '../../source/index.ts';
import { messageOf } from './message-of.ts';

/** Writes places of the manual as SARIF has them. */
export interface Places {
  artifact(file: string): ArtifactLocation;
  region(place: Place): Region;
  location(place: Place, words?: string): Location;
  /** Undefined for a file whose text is not known. */
  between(file: string, start: number, end: number): Place | undefined;
  text(file: string): string;
}

/** The folder from which all addresses are relative. */
export const baseId = '%SRCROOT%';

/** `folder` leads from there to the manual: empty, or with `/` at its end. */
export function placesIn(texts: readonly TextFile[], folder: string): Places {
  const indexes = new Map(texts.map(({ path }, i) => [path, i]));
  const byPath = new Map(texts.map(({ path, text }) => [path, text]));
  const locators = new Map<string, Locator>();
  const text = (file: string): string => byPath.get(file) ?? '';
  // SARIF counts as if a byte order mark were not there (3.30.2).
  const markOf = (file: string): number => (text(file).startsWith('\uFEFF') ? 1 : 0);
  const artifact = (file: string): ArtifactLocation => {
    const index = indexes.get(file);
    const uri = addressOf(folder + file);
    return { uri, uriBaseId: baseId, ...(index !== undefined && { index }) };
  };
  const region = ({ file, start, end }: Place): Region => ({
    startLine: start.line,
    startColumn: start.column,
    endLine: end.line,
    endColumn: end.column,
    charOffset: Math.max(0, start.offset - markOf(file)),
    charLength: end.offset - Math.max(start.offset, markOf(file)),
  });
  return {
    artifact,
    region,
    location: (place, words) => ({
      physicalLocation: { artifactLocation: artifact(place.file), region: region(place) },
      ...(words !== undefined && { message: messageOf(words) }),
    }),
    between: (file, start, end) => {
      const known = byPath.get(file);
      if (known === undefined) return undefined;
      const found = locators.get(file) ?? locator(file, known);
      locators.set(file, found);
      return found.place(start, end);
    },
    text,
  };
}

/** A path as a relative reference of RFC 3986: everything but unreserved characters is encoded, part by part. */
export const addressOf = (path: string): string =>
  path.toWellFormed().split('/').map(encodeURIComponent).join('/');
