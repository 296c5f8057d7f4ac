/** Where something stands in the text of its condition: UTF-16 offsets, `end` exclusive. 0 to 0 in a made condition. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A name as it was written: an attribute or a value. */
export interface Name extends Span {
  readonly text: string;
}

/** `feed = hydraulic`, `feed != manual`, `engine in (petrol, diesel)`, `engine not in (petrol, diesel)`. */
export interface Test extends Span {
  readonly kind: 'test';
  readonly attribute: Name;
  readonly negated: boolean;
  readonly values: readonly [Name, ...Name[]];
}

/** `winch`: a yes/no attribute by its bare name. */
export interface BareTest extends Span {
  readonly kind: 'bare';
  readonly attribute: Name;
}

/**
 * `"the belt is cracked"`: a way through a branch, by its label. A description of a set also says which
 * way it means, since two branches may bear the same label.
 */
export interface Found extends Span {
  readonly kind: 'found';
  readonly label: string;
  readonly way?: { readonly attribute: string; readonly value: string };
}

/** `never`: no machine at all. */
export interface Never extends Span {
  readonly kind: 'never';
}

/** `!( … )`. */
export interface Not extends Span {
  readonly kind: 'not';
  readonly of: Condition;
}

/** `… & …` (all) or `… | …` (any), two parts or more. */
export interface Group extends Span {
  readonly kind: 'all' | 'any';
  readonly of: readonly [Condition, Condition, ...Condition[]];
}

/** Which machines something applies to, as written. */
export type Condition = Test | BareTest | Found | Never | Not | Group;
