const reasons: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  ENOENT: 'it is gone',
  ELOOP: 'it leads back to itself',
  EMFILE: 'too many files are open',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk can only be read',
};

/** What a failed call to the system means, in plain words. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const code = 'code' in error ? String(error.code) : '';
  return reasons[code] ?? error.message;
}
