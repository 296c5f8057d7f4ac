import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carryOver } from '../../site/scripts/job/carry-over.ts';
import { fingerprint } from '../../site/scripts/job/fingerprint.ts';
import type { Job, Mark } from '../../site/scripts/job/job.ts';
import { jobNotes } from '../../site/scripts/job/job-notes.ts';
import {
  described,
  finished,
  type Jobs,
  noJobs,
  openJob,
  reset,
  shown,
  withMark,
  without,
} from '../../site/scripts/job/jobs.ts';
import { localTime, shortTime } from '../../site/scripts/job/local-time.ts';
import { progress } from '../../site/scripts/job/progress.ts';
import { asStored, fromStored } from '../../site/scripts/job/stored-jobs.ts';

const early = '2031-04-09T12:03:05+02:00';
const later = '2031-04-09T12:20:00+02:00';
const beginning = {
  id: 'a',
  name: 'WO 1',
  technician: 'A. Field',
  revision: '2',
  variant: undefined,
};
const tick = (key: string, isSet = true): Mark => ({ kind: 'tick', key, print: `p${key}`, isSet });
const read = (key: string, value: string): Mark => ({
  kind: 'reading',
  key,
  print: `p${key}`,
  value,
});
const one = withMark(noJobs, tick('1/'), early, beginning);
const job = (jobs: Jobs): Job => {
  const open = openJob(jobs);
  if (open === undefined) throw new Error('no job is open');
  return open;
};

describe('jobs of a sheet', () => {
  test('the first tick begins a job, and the first reading as well', () => {
    expect(job(one)).toMatchObject({ name: 'WO 1', started: early, revision: '2', last: '1/' });
    expect(job(one).ticks).toEqual({ '1/': { at: early, print: 'p1/' } });
    const byReading = withMark(noJobs, read('4/rod', ' 49.95 '), early, beginning);
    expect(job(byReading).readings['4/rod']?.value).toBe('49.95');
  });

  test('what marks nothing begins nothing', () => {
    expect(withMark(noJobs, tick('1/', false), early, beginning)).toBe(noJobs);
    expect(withMark(noJobs, read('4/rod', '  '), early, beginning)).toBe(noJobs);
    expect(described(noJobs, { name: 'WO 2' })).toEqual(noJobs);
  });

  test('a tick that is taken back is gone, and so is a reading that is wiped out', () => {
    const two = withMark(one, tick('2/'), later, beginning);
    expect(Object.keys(job(withMark(two, tick('1/', false), later, beginning)).ticks)).toEqual([
      '2/',
    ]);
    const reading = withMark(one, read('4/rod', '50'), later, beginning);
    expect(job(withMark(reading, read('4/rod', ''), later, beginning)).readings).toEqual({});
  });

  test('a mark after the end opens the job again', () => {
    const done = finished(one, later);
    expect(job(done).finished).toBe(later);
    expect(job(withMark(done, tick('2/'), later, beginning)).finished).toBeUndefined();
  });

  test('two jobs are kept apart, even if they begin at the same moment', () => {
    const two = withMark(shown(one, undefined), tick('3/'), early, { ...beginning, name: 'WO 2' });
    expect(two.kept.map(({ id, name, ticks }) => [id, name, Object.keys(ticks)])).toEqual([
      ['a', 'WO 1', ['1/']],
      ['a-2', 'WO 2', ['3/']],
    ]);
    expect(job(shown(two, 'a')).name).toBe('WO 1');
    expect(without(two, 'a-2')).toEqual({ open: undefined, kept: [job(one)] });
    expect(without(two, 'a').open).toBe('a-2');
    expect(shown(two, 'gone').open).toBeUndefined();
  });

  test('reset clears the open job alone and puts it on the revision of now', () => {
    const two = withMark(shown(one, undefined), tick('3/'), early, beginning);
    const cleared = reset(two, '3');
    expect(job(cleared)).toMatchObject({
      ticks: {},
      readings: {},
      last: undefined,
      revision: '3',
      name: 'WO 1',
    });
    expect(cleared.kept[0]).toEqual(two.kept[0]);
  });

  test('the machine of a job is the first one that was chosen', () => {
    const chosen = withMark(one, tick('2/'), later, { ...beginning, variant: 'brakes: drum' });
    expect(job(chosen).variant).toBe('brakes: drum');
    const other = withMark(chosen, tick('3/'), later, { ...beginning, variant: 'brakes: none' });
    expect(job(other).variant).toBe('brakes: drum');
  });
});

describe('stored jobs', () => {
  test('come back as they were', () => {
    const text = fc.string();
    const marks = fc.dictionary(text, fc.record({ at: text, print: text }), {
      noNullPrototype: true,
    });
    const values = fc.record({ at: text, print: text, value: text });
    const some = fc.option(text, { nil: undefined });
    const jobs = fc.uniqueArray(
      fc.record({
        id: text,
        name: text,
        technician: text,
        started: text,
        finished: some,
        revision: some,
        variant: some,
        last: some,
        lost: fc.array(text),
        ticks: marks,
        readings: fc.dictionary(text, values, { noNullPrototype: true }),
      }),
      { selector: ({ id }) => id },
    );
    fc.assert(
      fc.property(jobs, (kept) => {
        const all = { open: kept[0]?.id, kept };
        expect(fromStored(asStored(all))).toEqual(all);
      }),
    );
  });

  test.each([
    null,
    '',
    'not JSON',
    '[]',
    '7',
    '{"form":2,"kept":[]}',
    '{"form":1,"kept":[{"id":7}],"open":"a"}',
  ])('%j is no job', (text) => {
    expect(fromStored(text)).toEqual(noJobs);
  });

  test('a mark that is not whole is left out, and the job stays', () => {
    const stored = JSON.parse(asStored(one));
    stored.kept[0].ticks['2/'] = { at: 7 };
    stored.kept[0].readings = 'spoilt';
    expect(fromStored(JSON.stringify(stored))).toEqual(one);
  });
});

describe('how far a job is', () => {
  const rows = ['1', '2', '2.1', '2.2', '3'].map((step) => ({
    step,
    number: step,
    isTop: !step.includes('.'),
  }));
  const with_ = (last: string | undefined, ...steps: string[]) => ({
    last,
    ticks: Object.fromEntries(steps.map((step) => [`${step}/`, { at: early, print: '' }])),
  });

  test('steps in steps are not counted, as the sheet does not count them', () => {
    expect(progress(with_('2.1/', '1', '2.1'), rows)).toMatchObject({ done: 1, all: 3 });
  });

  test.each([
    [undefined, [], '1'],
    ['1/', ['1'], '2'],
    ['2/', ['2'], '2.1'],
    ['2.2/Measure it', ['1'], '2.2'],
    ['3/', ['2', '3'], '1'],
    ['3/', ['1', '2', '2.1', '2.2', '3'], undefined],
    ['9/', ['1'], '2'],
  ] as const)('after %j with %j done it goes on at %j', (last, done, next) => {
    expect(progress(with_(last, ...done), rows).next?.step).toBe(next);
  });
});

describe('what was passed over', () => {
  const rows = ['1', '2', '2.1', '3'].map((step) => ({
    step,
    number: step,
    isTop: !step.includes('.'),
  }));
  const done = (last: string, ...steps: string[]) => ({
    last,
    ticks: Object.fromEntries(steps.map((step) => [`${step}/`, { at: early, print: '' }])),
  });

  test.each([
    ['1/', ['1'], 0],
    ['2/', ['2'], 1],
    ['2/', ['1'], 0],
    ['2.1/', ['2.1'], 2],
    ['2.1/rod', [], 1],
    ['3/', ['3'], 0],
    ['3/', ['1', '2', '2.1', '3'], 0],
  ] as const)('after %j with %j done: %i', (last, steps, count) => {
    expect(progress(done(last, ...steps), rows).passedOver).toBe(count);
  });
});

describe('a job on a later revision', () => {
  const begun: Job = {
    ...job(one),
    last: '3/',
    ticks: {
      '1/': { at: early, print: 'park' },
      '2/left': { at: early, print: 'look' },
      '3/': { at: later, print: 'turn' },
    },
    readings: { '3/rod': { at: later, print: 'turn', value: '5' } },
  };
  const boxes = (...steps: readonly (readonly [step: string, print: string])[]) =>
    steps.flatMap(([step, print]) =>
      ['', 'left', 'rod'].map((name) => ({ key: `${step}/${name}`, print })),
    );

  test('is the same job where nothing has changed', () => {
    expect(carryOver(begun, boxes(['1', 'park'], ['2', 'look'], ['3', 'turn']))).toBe(begun);
  });

  test('marks go with their step to its new number', () => {
    const carried = carryOver(
      begun,
      boxes(['1', 'park'], ['2', 'new'], ['3', 'look'], ['4', 'turn']),
    );
    expect(Object.keys(carried.ticks)).toEqual(['1/', '3/left', '4/']);
    expect(Object.keys(carried.readings)).toEqual(['4/rod']);
    expect(carried).toMatchObject({ last: '4/', lost: [] });
  });

  test('a step that reads otherwise keeps no mark, and its old number is told', () => {
    const carried = carryOver(begun, boxes(['1', 'park'], ['2', 'look'], ['3', 'turn twice']));
    expect(Object.keys(carried.ticks)).toEqual(['1/', '2/left']);
    expect(carried).toMatchObject({ readings: {}, last: undefined, lost: ['3'] });
  });

  test('a mark does not move where two steps have its words', () => {
    const carried = carryOver(
      begun,
      boxes(['5', 'park'], ['6', 'park'], ['2', 'look'], ['3', 'turn']),
    );
    expect(carried.lost).toEqual(['1']);
  });

  test('says what is to be known before work goes on', () => {
    const now = { revision: '3', variant: undefined };
    const lost = { ...begun, lost: ['3', '4', '7'], variant: 'brakes: drum' };
    expect(jobNotes({ open: 'a', kept: [lost] }, now, false)).toEqual([
      'This browser keeps nothing for this page: ticks and readings are gone when it is closed. Save the job card before.',
      'This job was begun with revision 2; the sheet is now revision 3.',
      'Of the earlier sheet, steps 3, 4 and 7 had marks and read otherwise now: the marks were taken out. See what the sheet asks for there, and mark it anew.',
      'This job is for brakes: drum; the sheet now shows all machines.',
    ]);
    expect(jobNotes(one, { revision: '2', variant: undefined }, true)).toEqual([]);
    expect(jobNotes(noJobs, now, true)).toEqual([]);
  });
});

describe('times', () => {
  /* ISO 8601; the moments from `date -u -d @1933495385` and its like in other zones. */
  test.each([
    [1933495385, 120, '2031-04-09T12:03:05+02:00'],
    [1933495385, 0, '2031-04-09T10:03:05+00:00'],
    [1933495385, -210, '2031-04-09T06:33:05-03:30'],
    [1933495385, 345, '2031-04-09T15:48:05+05:45'],
    [951782400, -60, '2000-02-28T23:00:00-01:00'],
  ])('%i s at %i min is %s', (seconds, offset, text) => {
    expect(localTime(seconds * 1000, offset)).toBe(text);
  });

  test('say the moment that they are of', () => {
    const moments = fc.integer({ min: 0, max: 4e9 });
    const offsets = fc.integer({ min: -12 * 60, max: 14 * 60 });
    fc.assert(
      fc.property(moments, offsets, (seconds, offset) => {
        expect(Date.parse(localTime(seconds * 1000, offset))).toBe(seconds * 1000);
      }),
    );
  });

  test('of today are said without the day', () => {
    expect(shortTime(early, later)).toBe('12:03');
    expect(shortTime(early, '2031-04-10T01:00:00+02:00')).toBe('2031-04-09 12:03');
  });
});

describe('the print of a step', () => {
  /* FNV-1a, 32 bits: test values of draft-eastlake-fnv for these strings (from memory). */
  test.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('of %j', (text, hash) => {
    expect(fingerprint(text)).toBe(hash.toString(36));
  });

  test('is of the words and not of the white space', () => {
    expect(fingerprint(' Turn  the\n nut ')).toBe(fingerprint('Turn the nut'));
    expect(fingerprint('Turn the nut')).not.toBe(fingerprint('Turn the nuts'));
  });
});
