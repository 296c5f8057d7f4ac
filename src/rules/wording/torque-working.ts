import { likelySlips, type ThreadCondition, type TorqueBand } from '../../joint/index.ts';
import {
  computedAmount,
  mainUnit,
  printAsWritten,
  printByPolicy,
  printQuantity,
  type Quantity,
  type UnitPolicy,
  unitSize,
} from '../../quantity/index.ts';
import type { JudgedTorque } from '../reading/judged-torques.ts';
import { oneOf } from './lists.ts';

/** "T = K·d·F with K = 0.20 (dry threads): …", in the units of the manual. */
export function workingOf(
  { band, thread, torque, strength }: JudgedTorque,
  policy: UnitPolicy,
): string {
  const area =
    thread.standard === 'metric'
      ? `${band.area.toPrecision(3)} mm²`
      : `${(band.area / unitSize('in') ** 2).toPrecision(3)} in²`;
  const load = printByPolicy(threeDigits('N', band.proofLoad), policy);
  const unit = thread.standard === 'metric' ? 'MPa' : 'psi';
  const stress = printQuantity(threeDigits('MPa', band.proofStress), { first: unit }).value;
  const of = strength === undefined ? 'class 12.9' : strength.name;
  const factor = band.nutFactor.toFixed(2);
  return (
    `By T = K·d·F with K = ${factor} (${conditionWords(torque.threads)}), ${inTorque(band.full, policy)} gives the full proof load ` +
    `of ${of}, ${load} from ${stress} on ${area}, and ${inTorque(band.full * 0.75, policy)} gives the usual 75 % of it.`
  );
}

/** "85 lbf·in (9.6 N·m) would be usual: is the unit right?"; nothing where no slip explains the figure. */
export function slipWords({ found, band }: JudgedTorque, policy: UnitPolicy): string[] {
  const slips = likelySlips(found.torque, band);
  if (slips.length === 0) return [];
  const values = slips.map(({ torque }) => withOther(torque, policy));
  const what =
    slips.length === 1
      ? `is the ${slips[0]?.is} right?`
      : 'are the unit and the decimal point right?';
  return [`${oneOf(values)} would be usual: ${what}`];
}

/** What the reader's eye needs to compare: the written figure first, the manual's unit in brackets. */
function withOther(torque: Quantity, policy: UnitPolicy): string {
  const written = printAsWritten(torque);
  const [first] = policy.torque;
  if (first === 'as written' || first === mainUnit(torque)) return written;
  return `${written} (${printByPolicy(torque, { ...policy, torque: [first] })})`;
}

/** The numbers behind the words, to four digits; torques in N·m, the area in mm², the stress in MPa, loads in N. */
export function numbersOf(band: TorqueBand): Record<string, number> {
  const rounded = (value: number): number => Number(value.toPrecision(4));
  return {
    stressArea: rounded(band.area),
    diameter: rounded(band.diameter),
    proofStress: rounded(band.proofStress),
    proofLoad: rounded(band.proofLoad),
    nutFactor: band.nutFactor,
    fullTorque: rounded(band.full),
    ...(band.least !== undefined && { leastTorque: rounded(band.least) }),
  };
}

function conditionWords(threads: ThreadCondition | undefined): string {
  if (threads === undefined) return 'dry threads, as nothing else is said';
  return threads === 'compound' ? 'threads with compound' : `${threads} threads`;
}

const inTorque = (newtonMetres: number, policy: UnitPolicy): string =>
  printByPolicy(threeDigits('N·m', newtonMetres), policy);

function threeDigits(unit: 'N' | 'N·m' | 'MPa', value: number): Quantity {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return { form: 'single', unit, amount: computedAmount(value, step) };
}
