/** How the pages look on this device. */
export interface DisplayChoice {
  readonly look: (typeof looks)[number];
  readonly type: (typeof types)[number];
}

export const looks = ['device', 'light', 'dark'] as const;
export const types = ['normal', 'large', 'larger'] as const;

/** Reads what `displayText` wrote; what cannot be read is as on any device. */
export function displayChoice(text: string | null): DisplayChoice {
  const words = (text ?? '').split(' ');
  return {
    look: looks.find((look) => words.includes(look)) ?? 'device',
    type: types.find((type) => words.includes(type)) ?? 'normal',
  };
}

/** A choice as it is kept; nothing where it is as on any device. */
export function displayText({ look, type }: DisplayChoice): string {
  return look === 'device' && type === 'normal' ? '' : `${look} ${type}`;
}
