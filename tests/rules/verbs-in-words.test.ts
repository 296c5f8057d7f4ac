import { describe, expect, it } from 'vitest';
import { wordsFound } from './inspect-step.ts';

// Sentences as a careful writer puts them; common practice, no published source.

const sound = [
  ':remove[Unscrew the guard bolts]{item=guard-bolt}.',
  ':remove[Fit a puller and draw the belt guard off]{item=guard}.',
  ':remove[Tighten the jack under the belt guard]{item=guard}.',
  ':remove[Push the belt in and lift it away]{item=belt}.',
  ':install[Remove the old belt and lay a new one over the pulleys]{item=belt new}.',
  ':install[Put the belt guard on]{item=guard}.',
  ':loosen[Tighten the guard bolts a little, then loosen them]{item=guard-bolt}.',
  ':torque[Loosen the guard bolts and tighten them again]{item=guard-bolt}.',
  ':torque[Loosen the hose band]{item=guard-bolt}.',
  ':tighten[Turn the hose band in]{item=band}.',
  ':disconnect[Pull the return hose off]{item=hose}.',
  ':connect[Push the return hose on]{item=hose}.',
  ':drain[Let the gear oil run out]{item=oil}.',
  ':fill[Pour the gear oil in]{item=oil}.',
  ':set[Open the fuel cock]{item=cock to=shut}.',
  ':fit[Pull the drum pin back and let it snap into its hole]{item=pin}.',
  ':withdraw[Pull the drum pin]{item=pin}.',
  ':replace[Remove the belt]{item=belt}.',
  ':check[Tighten nothing]{item=belt}.',
  ':remove{item=belt}',
];

const unsound: readonly (readonly [step: string, words: string])[] = [
  [':loosen[Tighten the four guard bolts]{item=guard-bolt}.', 'Tighten'],
  [':loosen[Evenly re-tighten the bolts]{item=guard-bolt}.', 're-tighten'],
  [':torque[Loosen the guard bolts by a turn]{item=guard-bolt}.', 'Loosen'],
  [':tighten[Slacken the hose band]{item=band}.', 'Slacken'],
  [':remove[Install the belt guard]{item=guard}.', 'Install'],
  [':remove[Put the belt guard back]{item=guard}.', 'Put'],
  [':discard[Refit the belt]{item=belt}.', 'Refit'],
  [':install[Remove the belt guard]{item=guard}.', 'Remove'],
  [':install[Take the shield off]{item=guard}.', 'Take'],
  [':install[Then take off the guard]{item=guard}.', 'take off'],
  [':return[Remove it]{item=guard}.', 'Remove'],
  [':install[Remove]{item=guard} the belt guard.', 'Remove'],
  [':connect[Disconnect the return hose]{item=hose}.', 'Disconnect'],
  [':disconnect[Connect the return hose]{item=hose}.', 'Connect'],
  [':drain[Fill the gear oil]{item=oil}.', 'Fill'],
  [':fill[Drain the gear oil]{item=oil}.', 'Drain'],
  [':fit[Withdraw the drum pin]{item=pin}.', 'Withdraw'],
  [':withdraw[Fit the drum pin]{item=pin}.', 'Fit'],
  [':cap[Uncap the return hose]{item=hose}.', 'Uncap'],
  [':uncap[Cap the return hose]{item=hose}.', 'Cap'],
  [':isolate[Reconnect the battery]{item=battery}.', 'Reconnect'],
  [':restore[Switch the battery off]{item=battery}.', 'Switch'],
];

const differing = (step: string) => wordsFound(step).filter(({ rule }) => rule === 'verb-differs');

describe('verb-differs', () => {
  it.for(sound)('says nothing to: %s', (step) => {
    expect(differing(step).map(({ message }) => message)).toEqual([]);
  });

  it.for(unsound)('finds in: %s', ([step, words]) => {
    expect(differing(step).map(({ data }) => data.words)).toEqual([words]);
  });
});
