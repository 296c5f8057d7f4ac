import { display } from './display.ts';

display(document);
