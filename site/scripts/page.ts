import { display } from './display.ts';
import { keepOffline } from './offline.ts';

display(document);
const script = document.currentScript;
if (script instanceof HTMLScriptElement)
  keepOffline(document, new URL('../offline.js', script.src).href);
