import { isCancel, select, text } from '@clack/prompts';
import { defaultMachine, defaultTitle, plainLine, type UnitsFirst } from '../scaffold/index.ts';
import { CannotRun } from './cannot-run.ts';
import type { ScaffoldOptions } from './scaffold-options.ts';

/** Asks on the terminal for what the options leave open; an empty answer takes what is offered. */
export async function askScaffold(given: ScaffoldOptions): Promise<ScaffoldOptions> {
  const machine =
    given.machine ?? (await line('What is the machine called?', defaultMachine)) ?? defaultMachine;
  const title = given.title ?? (await line('Title of the manual?', defaultTitle(machine)));
  const units = given.units ?? (await whichUnits());
  const prefix =
    given.prefix ?? (await line('What do its document numbers begin with?', undefined));
  return { ...given, machine, title, units, prefix };
}

async function line(message: string, offered: string | undefined): Promise<string | undefined> {
  const placeholder = offered ?? 'nothing: the number alone';
  const answer = await text({ message, placeholder, defaultValue: offered ?? '' });
  if (isCancel(answer)) throw stopped();
  return plainLine(answer) || offered;
}

async function whichUnits(): Promise<UnitsFirst> {
  const answer = await select<UnitsFirst>({
    message: 'Which units stand first?',
    options: [
      { value: 'metric', label: 'N·m, mm, L, kg' },
      { value: 'inch-first', label: 'lbf·ft, in, US qt, lb' },
    ],
  });
  if (isCancel(answer)) throw stopped();
  return answer;
}

const stopped = (): CannotRun => new CannotRun('Stopped before anything was written.');
