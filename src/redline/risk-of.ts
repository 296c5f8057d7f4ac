import type { ChangeKind, Risk } from '../../schemas/redline.ts';
import type { Fact } from './fact.ts';
import { fieldRisk } from './field-risk.ts';
import { mostDangerous, verbRiskGone, verbRiskMoved } from './verb-risks.ts';

/** In which class a change is: of its kind alone, or by how it went. */
export function riskOf(fact: Fact): Risk {
  const risk = risks[fact.kind];
  return typeof risk === 'string' ? risk : risk(fact);
}

const isGone = ({ before, after }: Fact): boolean => before !== undefined && after === undefined;
const isNew = ({ before, after }: Fact): boolean => before === undefined && after !== undefined;

const risks: Readonly<Record<ChangeKind, Risk | ((fact: Fact) => Risk)>> = {
  torque: (fact) => (isNew(fact) ? 'work' : 'joint'),
  'torque-stages': 'joint',
  'torque-angle': 'joint',
  'torque-tolerance': ({ direction }) => (direction === 'wider' ? 'proof' : 'work'),
  'torque-lubrication': 'joint',
  'default-torque': (fact) => (isNew(fact) ? 'work' : 'joint'),
  count: ({ direction }) => (direction === 'lower' ? 'joint' : 'work'),
  fluid: 'fluid',
  mix: 'fluid',
  capacity: 'fluid',
  limit: (fact) => (isNew(fact) || fact.direction === 'narrower' ? 'work' : 'proof'),
  mass: ({ direction }) => (direction === 'higher' ? 'work' : 'record'),
  unit: 'unit',
  hazard: (fact) => {
    if (isNew(fact)) return 'work';
    return fact.direction === 'earlier' ? 'order' : 'protection';
  },
  'hazard-signal': ({ direction }) => (direction === 'lower' ? 'protection' : 'work'),
  'hazard-words': (fact) => (isGone(fact) ? 'protection' : 'work'),
  entry: (fact) => {
    if (isNew(fact)) return 'work';
    return fact.field === 'hazard' || fact.field === 'energy' || fact.field === 'aid'
      ? 'protection'
      : 'put-back';
  },
  'entry-id': 'record',
  'entry-field': fieldRisk,
  machines: ({ direction, field }) => {
    if (direction === 'wider') return 'work';
    return field === 'hazard' ? 'protection' : 'order';
  },
  setting: ({ field }) => {
    if (field === 'safety') return 'protection';
    return field === 'lift-limit' ? 'proof' : 'record';
  },
  variant: 'order',
  'rule-level': ({ direction }) => (direction === 'lower' ? 'proof' : 'record'),
  procedure: (fact) => (isNew(fact) ? 'work' : 'put-back'),
  'procedure-id': 'record',
  'procedure-file': 'record',
  'procedure-field': ({ field }) =>
    field === 'title' ? 'words' : field === 'interval' || field === 'follow-on' ? 'work' : 'record',
  contract: (fact) => {
    if (fact.field === 'starts') return 'order';
    return isGone(fact) ? 'work' : 'put-back';
  },
  step: (fact) => (isGone(fact) ? mostDangerous(verbsIn(fact).map(verbRiskGone)) : 'work'),
  'step-moved': (fact) => {
    if (fact.name !== undefined) return 'protection';
    return fact.direction === 'later'
      ? mostDangerous(['order', ...verbsIn(fact).map(verbRiskMoved)])
      : 'order';
  },
  'step-way': 'order',
  needs: (fact) => (isGone(fact) ? 'order' : 'work'),
  people: ({ direction }) => (direction === 'lower' ? 'protection' : 'record'),
  time: ({ field, direction }) => (field === 'wait' && direction !== 'higher' ? 'order' : 'record'),
  tool: 'record',
  action: (fact) => {
    if (fact.field === 'place') {
      return fact.direction === 'later'
        ? mostDangerous(['order', ...verbsIn(fact).map(verbRiskMoved)])
        : 'order';
    }
    return isGone(fact) ? mostDangerous(verbsIn(fact).map(verbRiskGone)) : 'work';
  },
  quantity: (fact) => {
    const isLess = fact.direction === 'lower' || isNew(fact);
    return isLess ? mostDangerous(verbsIn(fact).map(verbRiskGone)) : 'work';
  },
  value: (fact) => (fact.verb === 'drain' || fact.verb === 'fill' ? 'fluid' : 'joint'),
  detail: (fact) => {
    if (fact.field === 'new' && isGone(fact)) return 'joint';
    if (fact.field === 'limit' || fact.field === 'to' || fact.field === 'each') return 'order';
    return fact.field === 'with' ? 'record' : 'work';
  },
  perform: (fact) => (isNew(fact) ? 'work' : fact.field === 'place' ? 'order' : 'put-back'),
  reverse: (fact) => (isNew(fact) ? 'work' : fact.field === 'place' ? 'order' : 'put-back'),
  'record-box': (fact) => (isGone(fact) ? 'proof' : 'record'),
  figure: 'record',
  waiver: (fact) => (isGone(fact) || fact.direction === 'narrower' ? 'record' : 'proof'),
  words: 'words',
};

const verbsIn = ({ verb }: Fact): readonly string[] =>
  (verb ?? '').split(', ').filter((one) => one !== '');
