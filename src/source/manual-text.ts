/** Whether a path, from the folder of a manual and with `/`, is that of a text that belongs to the manual. */
export const isManualText = (path: string): boolean =>
  /^(manual\.yaml|machines\/.*\.ya?ml|procedures\/.*\.md)$/.test(path);
