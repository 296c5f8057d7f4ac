/** 0 clean, 1 findings, 2 could not run. */
export type ExitCode = 0 | 1 | 2;
