/** Something outside the manual's text keeps a command from running: exit code 2. */
export class CannotRun extends Error {
  /** What to do about it. */
  readonly advice: string | undefined;

  constructor(message: string, advice?: string) {
    super(message);
    this.advice = advice;
  }
}
