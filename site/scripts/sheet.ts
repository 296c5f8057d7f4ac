import { keepJobs } from './job/keep-jobs.ts';
import { watchReadings } from './readings.ts';

watchReadings(document);
keepJobs(document);
