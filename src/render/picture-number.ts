/** A number of a picture as its text, to a hundredth. */
export const pictureNumber = (value: number): string => String(Math.round(value * 100) / 100);
