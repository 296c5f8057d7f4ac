import type { Choice, Machines } from './machines.ts';

/** Attributes that are not chosen are named up to this many. */
const mostOpen = 3;

/** "infeed winch: yes; brakes: overrun; air cleaner: any"; `none` where nothing is chosen. */
export function choiceWords({ attributes }: Machines, known: Choice, none: string): string {
  if (known.size === 0) return none;
  const open = attributes.filter(({ id }) => !known.has(id));
  const told = attributes.flatMap(({ id, name }) => {
    const value = known.get(id);
    if (value !== undefined) return [`${name}: ${value}`];
    return open.length > mostOpen ? [] : [`${name}: any`];
  });
  return [...told, ...(open.length > mostOpen ? ['all else: any'] : [])].join('; ');
}

/** The choice that an address asks for; undefined where it asks for none. Names that the manual does not have are passed over. */
export function choiceIn(query: string, { attributes }: Machines): Choice | undefined {
  const asked = new URLSearchParams(query);
  const choice = new Map<string, string>();
  for (const { id, values } of attributes) {
    const value = asked.get(id);
    if (value !== null && values.includes(value)) choice.set(id, value);
  }
  return choice.size > 0 ? choice : undefined;
}

/** A query with a choice in it, other parameters left as they are: "?winch=yes&brakes=overrun", or nothing. */
export function queryWith(query: string, { attributes }: Machines, choice: Choice): string {
  const parameters = new URLSearchParams(query);
  for (const { id } of attributes) parameters.delete(id);
  for (const [id, value] of choice) parameters.set(id, value);
  const text = parameters.toString();
  return text === '' ? '' : `?${text}`;
}
