/** A number that the writer typed before a paragraph, in place of a numbered list: "Step 1:", "(2)", "b)". */
export const typedNumber =
  /^\s*(?:step\s+\d{1,2}\s*[.:)–—-]?|\(?\d{1,2}[.):]|\([a-h]\)|[a-h]\))\s+/i;

/** Heads of table columns that hold work to do. */
export const workColumn =
  /^\s*(?:actions?|work|what to do|do|do this|steps?|tasks?|operations?|instructions?)\s*$/i;

/** Beside such a column the others say what may have to be done one day, not now. */
export const adviceColumn =
  /\b(?:symptoms?|faults?|problems?|causes?|complaints?|troubles?|remed(?:y|ies)|intervals?|every|when|hours|how often|if)\b/i;

/** Words with which a sentence speaks of other times than now. */
export const otherTimes =
  /\b(?:every|after|before|whenever|when|once|if|unless|until|only|always|never|at least|at the latest|yearly|monthly|weekly|daily)\b/i;

/** A word that marks a sentence as a note. */
export const noteLabel =
  /^\s*(?:note|notice|important|attention|caution|warning|danger|tip|remark|hint)\s*[:!–—-]\s*/i;

/** Beside the work, a sentence with one of these does not speak of this job, or only of a case. */
export const otherCases =
  /\b(?:every|after|whenever|when|once|if|unless|until|only|always|never|at least|at the latest|yearly|monthly|weekly|daily|may|can|should|instead|otherwise)\b/i;
