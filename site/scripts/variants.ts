import { chooseMachine } from './variant-page.ts';

chooseMachine(document);
