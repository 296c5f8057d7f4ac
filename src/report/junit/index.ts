export { reportAsJunit } from './report-as-junit.ts';
