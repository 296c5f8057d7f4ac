declare namespace App {
  interface Locals {
    /** There on the pages of the proof, and on no page that is published. */
    readonly proof?: import('./proof-page.ts').ProofPage;
  }
}
