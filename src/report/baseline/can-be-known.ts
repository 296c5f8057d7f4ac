import type { Finding } from '../../../schemas/finding.ts';
import { waivable } from '../../rules/index.ts';

/**
 * Whether a baseline may list a finding. What no waiver may let pass, such as a file beyond reading, it may not
 * either: behind it nothing was checked.
 */
export const canBeKnown = ({ rule }: Finding): boolean => waivable([rule]).length > 0;
