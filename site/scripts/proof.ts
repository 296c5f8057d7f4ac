import { keepUp } from './proof/keep-up.ts';
import { openPlaces } from './proof/open-places.ts';
import { placeNotes } from './proof/place-notes.ts';
import { chooseMachine } from './variant-page.ts';

placeNotes(document);
chooseMachine(document);
openPlaces(document);
keepUp(document);
