/** The day of a check, YYYY-MM-DD, by the clock of the world and not of the place. */
export const today = (): string => new Date().toISOString().slice(0, 10);
