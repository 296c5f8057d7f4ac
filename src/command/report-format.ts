/** How a report can be written. */
export const reportFormats = ['text', 'json', 'sarif', 'junit', 'markdown'] as const;

export type ReportFormat = (typeof reportFormats)[number];
