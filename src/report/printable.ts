/**
 * A text of the manual that a terminal prints as it stands: characters that would move its cursor, change its
 * colours or turn the direction of the line are shown as �. A tab or a line end becomes one blank, so that columns stay.
 */
export function printable(text: string): string {
  return text.replaceAll(/[\t\n]/g, ' ').replace(/[\p{Cc}\p{Bidi_Control}]/gu, '�');
}
