import type { Risk } from '../../schemas/redline.ts';

export interface RiskClass {
  readonly id: Risk;
  readonly title: string;
  /** What can come of such a change. */
  readonly why: string;
  /** Whether a reviewer should look at each one before he says yes. */
  readonly isRisk: boolean;
}

/** The classes of changes, most dangerous first. Which class a change is in, `riskOf` says. */
export const riskClasses: readonly RiskClass[] = [
  {
    id: 'protection',
    title: 'Protection taken away or weakened',
    why: 'Whoever follows the new text is warned, locked out or held safe less than before.',
    isRisk: true,
  },
  {
    id: 'put-back',
    title: 'Work that brings the machine back is gone',
    why: 'Something may stay out, loose, open, empty or isolated.',
    isRisk: true,
  },
  {
    id: 'joint',
    title: 'A joint is tightened or made otherwise',
    why: 'What is tightened less, otherwise or with fewer pieces works loose; what is tightened more strips or breaks.',
    isRisk: true,
  },
  {
    id: 'fluid',
    title: 'Other fluid, mix or amount',
    why: 'The wrong fluid or amount eats seals, seizes engines or lets brakes fade.',
    isRisk: true,
  },
  {
    id: 'proof',
    title: 'Less is checked',
    why: 'A wider limit, a check that is gone or a waiver lets pass what was stopped before.',
    isRisk: true,
  },
  {
    id: 'order',
    title: 'Other order, other machines, other starting point',
    why: 'A step may now meet a machine that is not ready for it, or be left out on one that needs it.',
    isRisk: true,
  },
  {
    id: 'work',
    title: 'Other work',
    why: 'Something else is done, or with something else.',
    isRisk: false,
  },
  {
    id: 'record',
    title: 'Facts around the work',
    why: 'People, times, tools, numbers and names.',
    isRisk: false,
  },
  {
    id: 'unit',
    title: 'The same value in another unit',
    why: 'The quantity is the same to the precision to which it is written.',
    isRisk: false,
  },
  {
    id: 'words',
    title: 'Words only',
    why: 'Nothing is done otherwise, as far as the directives say.',
    isRisk: false,
  },
];

export const rankOf = (risk: Risk): number => riskClasses.findIndex(({ id }) => id === risk);

export const isRisky = (risk: Risk): boolean =>
  riskClasses.some(({ id, isRisk }) => id === risk && isRisk);
