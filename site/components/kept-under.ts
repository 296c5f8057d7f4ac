import { frame } from 'tallybolt:book';

/** The name under which a browser keeps what belongs to this manual. Manuals of one title differ in their address. */
export const keptUnder = frame.address ?? frame.title;
