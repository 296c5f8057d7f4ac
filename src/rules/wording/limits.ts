/** Words in a sentence of a step. ASD-STE100 Issue 9, rule 5.1. */
export const mostWords = 20;

/** Actions in a sentence of a step. ASD-STE100 Issue 9, rule 5.2, wants one; a few that go together do no harm. */
export const mostActions = 3;
