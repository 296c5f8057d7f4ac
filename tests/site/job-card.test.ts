import { describe, expect, test } from 'vitest';
import { jobCardSchema } from '../../schemas/job-card.ts';
import type { Job } from '../../site/scripts/job/job.ts';
import { cardName, jobCard } from '../../site/scripts/job/job-card.ts';

const facts = {
  manual: 'Cart manual',
  isDraft: false,
  id: 'wheels',
  title: 'Look at the wheels',
  document: 'CM-1',
  revision: '3',
};
const at = '2031-04-09T12:03:05+02:00';
const end = '2031-04-09T13:00:00+02:00';
const job: Job = {
  id: 'a',
  name: 'WO 4711/2',
  technician: 'A. Field',
  started: at,
  finished: end,
  revision: '2',
  variant: 'brakes: drum',
  last: '4/rod',
  lost: ['6'],
  ticks: { '1/': { at, print: '' }, '3/left': { at, print: '' } },
  readings: {
    '4/rod': { at, print: '', value: '50,2' },
    '4/note': { at, print: '', value: 'rusty' },
    '4/worn': { at, print: '', value: 'about 3' },
  },
};
const step = (number: string, places: readonly string[] = []) => ({
  step: number,
  number,
  isTop: true,
  places,
});
const box = { number: '4', low: undefined, high: undefined, unit: undefined };
const limited = { ...box, low: 49.9, high: 50, unit: 'mm' };

const card = jobCard(
  job,
  facts,
  [step('1'), step('2'), step('3', ['left', 'right'])],
  [
    { ...limited, key: '4/rod', what: 'rod: value read' },
    { ...limited, key: '4/other', what: 'other rod: value read' },
    { ...limited, key: '4/worn', what: 'wear: value read' },
    { ...box, key: '4/note', what: 'note', number: undefined },
  ],
  end,
);

describe('the card of a job', () => {
  test('says what was ticked when, place by place, and what is open', () => {
    expect(card.steps).toEqual([
      { step: '1', done: at },
      { step: '2' },
      { step: '3', places: [{ place: 'left', done: at }, { place: 'right' }] },
    ]);
  });

  test('has each reading with its limits and how it keeps them', () => {
    expect(card.readings).toEqual([
      {
        step: '4',
        what: 'rod: value read',
        value: '50,2',
        at,
        low: 49.9,
        high: 50,
        unit: 'mm',
        verdict: 'above',
      },
      {
        step: '4',
        what: 'other rod: value read',
        low: 49.9,
        high: 50,
        unit: 'mm',
        verdict: 'empty',
      },
      {
        step: '4',
        what: 'wear: value read',
        value: 'about 3',
        at,
        low: 49.9,
        high: 50,
        unit: 'mm',
        verdict: 'unclear',
      },
      { what: 'note', value: 'rusty', at, verdict: 'no-limits' },
    ]);
  });

  test('names sheet, revisions, machine, people and times', () => {
    expect(card).toMatchObject({
      manual: { title: 'Cart manual' },
      sheet: { id: 'wheels', document: 'CM-1', revision: '3' },
      job: {
        name: 'WO 4711/2',
        technician: 'A. Field',
        started: at,
        finished: end,
        revision: '2',
        machine: 'brakes: drum',
        changedSince: ['6'],
      },
      written: end,
    });
  });

  test('keeps the schema, also when written to a file and read again', () => {
    expect(jobCardSchema.parse(JSON.parse(JSON.stringify(card)))).toEqual(card);
    const draft = jobCard(
      { ...job, finished: undefined, lost: [] },
      { ...facts, isDraft: true },
      [],
      [],
      end,
    );
    expect(jobCardSchema.parse(draft).manual.draft).toBe(true);
    expect(jobCardSchema.safeParse({ ...card, written: '2031-04-09 13:00' }).success).toBe(false);
  });

  test('has a file name that any disk takes', () => {
    expect(cardName(card)).toBe('job-WO-4711-2-CM-1.json');
    const nameless = { ...card, job: { ...card.job, name: '' } };
    expect(cardName(nameless)).toBe('job-2031-04-09T12-03-CM-1.json');
  });
});
