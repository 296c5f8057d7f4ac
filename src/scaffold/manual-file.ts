import type { Answers } from './answers.ts';
import type { Figures } from './figures.ts';
import { yamlText } from './yaml-text.ts';

/** `manual.yaml`: what holds for every sheet. */
export function manualFile({ title, prefix, publisher }: Answers, figures: Figures): string {
  return `# What holds for every sheet of the manual. Lines that begin with # are comments.
title: ${yamlText(title)}
${optional('document-prefix', prefix, 'WM-3', 'The start of every document number.')}
edition: 1
${optional('publisher', publisher, 'Name of the maker or the workshop', 'Printed in the title block.')}

# Headings of the contents page, in this order. Each procedure names its own under system:.
systems: [Safety, Drive, Service]

# The first unit is printed, the second one in brackets behind it, worked out and rounded.
units:
${figures.units}

# In what the machines of this manual differ. Write when="lamp" or when="belts = two" wherever something
# holds only for some of them; everything is checked for each machine that there can be.
variants:
  lamp: { name: work lamp, values: [no, yes] }
  belts: { name: drive belts, values: [one, two] }

# With this line a part that is heavier than one person may lift needs a second person or a hoist in its step.
# Local rules say how much that is.
# lift-limit: ${figures.guardMass.endsWith('kg') ? '25 kg' : '50 lb'}

# Printed with every sheet. Have it read by those who answer for safety in your workplace.
safety: |
  This manual is for people who are trained on this machine and allowed to work on it.
  Local law, local codes and the rules of your workplace come first.
  Where they ask for a licence, only a licensed person may do the work.
  The figures of the maker of the machine come before those of this manual.
  Lock the energy out with your own padlock and keep its key with you until the job is complete.
  Wear safety glasses, safety shoes and gloves that suit the task.
  If a step is not clear, or the machine is not as the sheet says, stop and ask.
`;
}

function optional(key: string, value: string | undefined, example: string, why: string): string {
  return value === undefined ? `# ${why}\n# ${key}: ${example}` : `${key}: ${yamlText(value)}`;
}
