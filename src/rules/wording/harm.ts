/**
 * Words of harm, sorted as ANSI Z535.6 sorts signal words: DANGER and WARNING for death or serious injury, CAUTION
 * for minor or moderate injury, NOTICE for damage alone. The lists hold only words that cannot be read otherwise.
 */

const bodyParts =
  'hands?|fingers?|thumbs?|arms?|legs?|foot|feet|toes?|limbs?|heads?|eyes?|face|skin|lungs?|hearing|chest|body';

const grave = new RegExp(
  [
    'death|fatal(?:ly|ity|ities)?|(?:you|people|persons?|anyone) (?:can |could |may |will )?die',
    'kill(?:s|ed)? (?:you|people|a person|persons|someone|the operator)|can kill',
    'amputat(?:ion|ions|e|es|ed)|dismember\\w*|decapitat\\w*',
    'electrocut(?:ion|e|es|ed)|asphyxiat\\w*|suffocat\\w*|drown(?:ing|s|ed)?',
    'loss of (?:an? )?(?:limb|hand|finger|eye|sight|life)s?|blindness|paralysis',
    '(?:serious|severe|permanent) (?:\\w+ )?(?:injury|injuries|burns?)',
    `crush(?:ing|ed|es)? (?:injury|injuries|(?:of |the |your )?(?:${bodyParts}))`,
  ]
    .map((words) => `\\b(?:${words})\\b`)
    .join('|'),
  'i',
);

/** "Crushing" says by itself that people are crushed; a crushed hose is damage. */
const crushAlone = /(?:^|[,;]|\band|\bor)\s*crush(?:ing)?\s*(?:$|[.,;]|\band\b|\bor\b)/i;

const injury = new RegExp(
  [
    '(?<!serious |severe )(?:personal )?(?:injury|injuries)|injure[sd]?',
    `(?:burns?|cuts?|burned|burnt|pinch(?:ed|es|ing)?) (?:to |on |of )?(?:the |your )?(?:${bodyParts})`,
    'scald(?:s|ed|ing)?|lacerations?|frostbite|poisoning',
    '(?:eye|skin|hearing|lung) (?:damage|irritation|loss)|loss of hearing',
  ]
    .map((words) => `\\b(?:${words})\\b`)
    .join('|'),
  'i',
);

/** Any of these, and a text may speak of people. */
const people = new RegExp(
  `\\b(?:${bodyParts}|injur\\w*|burns?|scald\\w*|cuts?|crush\\w*|shock|electr\\w*|pinch\\w*|strikes?|struck|entangle\\w*|trap\\w*|fall\\w*|fires?|explo\\w*|spray\\w*|eject\\w*|flying|thrown|poison\\w*|toxic|fumes?|breath\\w*|hot|persons?|people|operators?|technicians?|bystanders?|anyone|someone|you|your|kill\\w*|death|die|dies|fatal\\w*|amputat\\w*|asphyxia\\w*|suffocat\\w*|drown\\w*|blind\\w*|lacerat\\w*|loss of)\\b`,
  'i',
);

const damage =
  /\b(?:damage[sd]?|leaks?|leakage|wear|seiz(?:e|es|ed|ure)|corrosion|stripped threads?|scor(?:es?|ed|ing)|overheat(?:s|ed|ing)?)\b/i;

/** The word of death or serious injury in a text, as written. */
export function graveWord(text: string): string | undefined {
  const found = grave.exec(text)?.[0];
  return found ?? crushAlone.exec(text)?.[0].match(/crush(?:ing)?/i)?.[0];
}

/** The word of any injury in a text, as written. */
export function injuryWord(text: string): string | undefined {
  return graveWord(text) ?? injury.exec(text)?.[0];
}

/** Whether a text speaks of damage to things and of nobody. */
export function isOnlyDamage(text: string): boolean {
  return damage.test(text) && !people.test(text);
}
