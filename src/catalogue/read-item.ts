import type { ItemsInput, TorqueInput } from '../../schemas/catalogue.ts';
import type { Condition } from '../applicability/index.ts';
import { canonical, type Quantity, type UnitKind } from '../quantity/index.ts';
import { checkFluid, isNothing } from './check-fluid.ts';
import { defaultTorque } from './default-torques.ts';
import type { Circuit, Item, Torque } from './model.ts';
import { readContainers } from './read-containers.ts';
import { readLimits } from './read-limits.ts';
import { readScrew } from './read-screw.ts';
import { readToolLengths } from './read-tool-lengths.ts';
import { readTorque } from './read-torque.ts';
import type { Reading } from './reading.ts';
import type { ItemsContext, WrittenItem } from './written-item.ts';

/** One entry with its values read. Every fault is told; a member that cannot be used is undefined and named in `faulty`. */
export function readItem(entry: WrittenItem, reading: Reading, context: ItemsContext): Item {
  const faulty = new Set<string>();
  const base = { ...baseOf(entry, reading, context, faulty), faulty };
  const at = (member: string): string => `${entry.path}.${member}`;
  const quantity = (member: string, text: string, kind: UnitKind): Quantity | undefined => {
    const value = reading.quantity(at(member), text, kind, `the ${member} of ${entry.id}`);
    if (value === undefined) faulty.add(member);
    return value;
  };
  const torqueOf = (input: TorqueInput | undefined): Torque | undefined => {
    const value = input === undefined ? undefined : readTorque(reading, at('torque'), input);
    if (input !== undefined && value === undefined) faulty.add('torque');
    return value;
  };
  switch (entry.group) {
    case 'fasteners': {
      const { torque, ...data } = entry.data;
      const own = torqueOf(torque);
      const isSaid = torque !== undefined || data.tightness !== undefined;
      return {
        ...data,
        ...base,
        kind: 'fastener',
        screw: readScrew(reading, entry.path, data, entry.id),
        torque: isSaid ? own : defaultTorque(context.defaultTorques, data),
      };
    }
    case 'parts': {
      const { mass, ...data } = entry.data;
      const own = mass === undefined ? undefined : quantity('mass', mass, 'mass');
      return { ...data, ...base, kind: 'part', mass: own };
    }
    case 'connections': {
      const { torque, loss, ...data } = entry.data;
      const own = loss === undefined ? undefined : quantity('loss', loss, 'volume');
      return { ...data, ...base, kind: 'connection', torque: torqueOf(torque), loss: own };
    }
    case 'circuits': {
      const { capacity, mix, containers, ...data } = entry.data;
      if (typeof data.pressure === 'string') quantity('pressure', data.pressure, 'pressure');
      const whole = quantity('capacity', capacity, 'volume');
      const shares = readMix(mix ?? {}, entry, reading, faulty);
      const held = { capacity: whole, mix: shares, base: data.base };
      reading.facts.push(...checkFluid(held, base));
      return {
        ...data,
        ...base,
        kind: 'circuit',
        capacity: whole !== undefined && isNothing(whole) ? undefined : whole,
        mix: shares,
        containers: readContainers(containers, entry.path, reading, {
          mix: Object.keys(mix ?? {}),
          kind: 'volume',
        }),
      };
    }
    case 'energy':
      return { ...entry.data, ...base, kind: 'energy' };
    case 'controls': {
      const { home, positions } = entry.data;
      if (!positions.includes(home)) {
        const place = base.placeOf('home');
        reading.facts.push({ kind: 'control-home-unknown', place, home, positions });
      }
      return { ...entry.data, ...base, kind: 'control' };
    }
    case 'aids':
      return { ...entry.data, ...base, kind: 'aid' };
    case 'tools':
      return { ...entry.data, ...base, kind: 'tool', ...readToolLengths(entry, reading, faulty) };
    case 'consumables': {
      const { containers, ...data } = entry.data;
      const sizes = readContainers(containers, entry.path, reading, { mix: [], kind: undefined });
      return { ...data, ...base, kind: 'consumable', containers: sizes };
    }
    case 'hazards': {
      const { 'raised-by': raisedBy, ...data } = entry.data;
      return { ...data, ...base, kind: 'hazard', raisedBy };
    }
  }
}

function baseOf(entry: WrittenItem, reading: Reading, context: ItemsContext, faulty: Set<string>) {
  const { id, path, place, data } = entry;
  let when: Condition | undefined;
  if (data.when !== undefined) {
    when = reading.condition(`${path}.when`, data.when, context.variants);
    if (when === undefined) faulty.add('when');
  }
  return {
    id,
    place,
    when,
    limits: 'limits' in data ? readLimits(data.limits ?? {}, path, reading, faulty) : [],
    placeOf: (member: string) => reading.written.placeOf(`${path}.${member}`),
  };
}

function readMix(
  mix: NonNullable<ItemsInput['circuits'][string]['mix']>,
  entry: WrittenItem,
  reading: Reading,
  faulty: Set<string>,
): Circuit['mix'] {
  const shares = Object.entries(mix).flatMap(([name, text]) => {
    const what = `the share of ${name} in ${entry.id}`;
    const share = reading.quantity(`${entry.path}.mix.${name}`, text, 'share', what);
    if (share === undefined) faulty.add('mix');
    return share === undefined ? [] : [{ name, share }];
  });
  const percent = shares.reduce((sum, { share }) => sum + (canonical(share).low?.value ?? 0), 0);
  // Half a thousandth of slack for thirds: 33.3 + 33.3 + 33.4.
  if (percent > 100.0005) {
    const place = reading.written.placeOf(`${entry.path}.mix`);
    reading.facts.push({ kind: 'mix-over', place, percent });
  }
  return shares;
}
