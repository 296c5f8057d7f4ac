export { type DitaFile, ditaFiles } from './dita-files.ts';
