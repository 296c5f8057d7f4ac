declare module 'tallybolt:book' {
  /** Everything of the Book that is no collection. */
  export const frame: import('./book-module.ts').Frame;
  export const sheets: import('../render/index.ts').Book['sheets'];
  export const machines: import('../render/index.ts').Book['machines'];
  /** The pages of the machines. */
  export const machineLinks: readonly import('../render/index.ts').PageLink[];
}
