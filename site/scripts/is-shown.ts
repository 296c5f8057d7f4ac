/** Whether neither an element nor anything around it is hidden. */
export const isShown = (element: Element): boolean => element.closest('[hidden]') === null;
