import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 180_000,
    // Most of the time goes into commands and browsers, which leave the worker idle.
    maxWorkers: '100%',
  },
});
