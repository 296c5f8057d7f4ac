import { canonical, isMeasureOf, type Quantity } from '../quantity/index.ts';
import { settingShare } from './wrench-extension.ts';

/** A tool of a torque action, as far as it matters for what the wrench shows. */
export interface TorqueTool {
  readonly id: string;
  /** Of a torque wrench: from its drive to the middle of its grip. */
  readonly length: Quantity | undefined;
  /** Of a crowfoot or another extension: from its drive to the bolt. */
  readonly extension: Quantity | undefined;
}

/** A torque wrench with an extension on it. */
export interface WrenchInUse {
  readonly wrench: string;
  readonly extension: string;
  /** Between the two, in degrees: 0 where the extension carries the wrench on in line. */
  readonly angle: number;
  /** Setting of the wrench over the torque at the bolt. */
  readonly share: number;
}

export type WrenchFault =
  /** The setting cannot be worked out: no torque wrench with a length is named. */
  | { readonly code: 'wrench-length-missing'; readonly extension: string }
  | {
      readonly code: 'several-wrenches';
      readonly wrenches: readonly string[];
      readonly extension: string;
    }
  | { readonly code: 'several-extensions'; readonly extensions: readonly string[] }
  | { readonly code: 'angle-without-extension' }
  | { readonly code: 'angle-out-of-range' }
  /** Pointing back, the extension is as long as the wrench or longer. */
  | { readonly code: 'reaches-grip'; readonly wrench: string; readonly extension: string };

/** The extension among the tools of an action, with the angle written there; neither value nor fault where there is none. */
export function wrenchInUse(
  tools: readonly TorqueTool[],
  angle: Quantity | undefined,
): { readonly value?: WrenchInUse; readonly fault?: WrenchFault } {
  const extensions = tools.filter(({ extension }) => extension !== undefined);
  const [tool, another] = extensions;
  if (tool === undefined) {
    return angle === undefined ? {} : { fault: { code: 'angle-without-extension' } };
  }
  if (another !== undefined) {
    return { fault: { code: 'several-extensions', extensions: extensions.map(({ id }) => id) } };
  }
  const degrees = angle === undefined ? 0 : degreesOf(angle);
  if (degrees === undefined) return { fault: { code: 'angle-out-of-range' } };
  const wrenches = tools.filter(({ length }) => length !== undefined);
  const [wrench] = wrenches;
  if (wrenches.length > 1) {
    const ids = wrenches.map(({ id }) => id);
    return { fault: { code: 'several-wrenches', wrenches: ids, extension: tool.id } };
  }
  const [length, extension] = [plainLength(wrench?.length), plainLength(tool.extension)];
  if (wrench === undefined || length === undefined) {
    return { fault: { code: 'wrench-length-missing', extension: tool.id } };
  }
  if (extension === undefined) return {};
  const share = settingShare({ length, extension, angle: degrees });
  const named = { wrench: wrench.id, extension: tool.id };
  return share === undefined
    ? { fault: { code: 'reaches-grip', ...named } }
    : { value: { ...named, angle: degrees, share } };
}

/** One length above zero, in the base unit of lengths; undefined for a range, a limit, zero and less. */
export function plainLength(quantity: Quantity | undefined): number | undefined {
  if (quantity?.form !== 'single' || !isMeasureOf(quantity, 'length')) return undefined;
  const length = canonical(quantity).low?.value ?? 0;
  return length > 0 ? length : undefined;
}

function degreesOf(angle: Quantity): number | undefined {
  if (angle.form !== 'single' || !isMeasureOf(angle, 'angle')) return undefined;
  const degrees = canonical(angle).low?.value;
  return degrees !== undefined && degrees >= 0 && degrees <= 180 ? degrees : undefined;
}
