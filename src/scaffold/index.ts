export {
  type Answers,
  defaultMachine,
  defaultTitle,
  type UnitsFirst,
  unitsFirst,
} from './answers.ts';
export { plainLine } from './plain-line.ts';
export { scaffold } from './scaffold.ts';
