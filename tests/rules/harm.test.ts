import { describe, expect, it } from 'vitest';
import { graveWord, injuryWord, isOnlyDamage } from '../../src/rules/wording/harm.ts';

/**
 * ANSI Z535.6: DANGER and WARNING for death or serious injury, CAUTION for minor or moderate injury, NOTICE for
 * matters that are not about injury. Which outcomes count as serious is common practice (OSHA 1904.39 has
 * amputation and loss of an eye reported as severe injuries).
 */
const grave = [
  'Death',
  'Amputation',
  'Fatal electric shock',
  'Crushing',
  'Crushed hand',
  'Severe burns',
  'Loss of an eye',
  'Serious injury',
  'Asphyxiation',
];
const injuries = [
  'Cuts to the hands',
  'Burns to the skin',
  'Scalding',
  'Injury',
  'Loss of hearing',
  'Skin irritation',
];
const damages = [
  'Damage to the bearing',
  'Seized engine: overheats',
  'The gasket leaks',
  'Stripped threads',
];

describe('words of harm', () => {
  it.for(grave)('take “%s” for death or serious injury', (harm) =>
    expect(graveWord(harm)).toBeDefined(),
  );
  it.for([...injuries, ...damages])('do not take “%s” for it', (harm) =>
    expect(graveWord(harm)).toBeUndefined(),
  );
  it.for([...injuries, ...grave])('take “%s” for an injury', (harm) => {
    expect(injuryWord(harm)).toBeDefined();
    expect(isOnlyDamage(harm)).toBe(false);
  });
  it.for(damages)('take “%s” for damage alone', (harm) => expect(isOnlyDamage(harm)).toBe(true));
  it.for([
    'Crushed hose',
    'A crushing load on the frame',
    'The engine can die',
    'Burnt clutch',
    'Cuts in the belt',
  ])('take “%s” for no injury to people', (harm) => expect(injuryWord(harm)).toBeUndefined());
});
