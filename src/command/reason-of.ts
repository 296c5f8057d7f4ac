const reasons: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  ENOENT: 'it is gone',
  ENOTDIR: 'a part of its path is a file',
  ELOOP: 'it leads back to itself',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EFBIG: 'a file would be larger than is allowed here',
  EIO: 'the disk fails',
  EROFS: 'the disk can only be read',
  EBUSY: 'it is in use, or another disk is mounted there',
  EXDEV: 'it is on another disk',
  EISDIR: 'it is a folder',
  ENAMETOOLONG: 'its name is too long',
};

/** Whether the system refused something: a full disk, a missing right, and no fault of the program. */
export const isOfSystem = (error: unknown): boolean => codeOf(error) in reasons;

/** What a failed call to the system means, in plain words. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return reasons[codeOf(error)] ?? error.message;
}

/** Its own code, or that of what it was thrown for. Builders written in other languages tell it in words only. */
function codeOf(error: unknown): string {
  for (let at = error, depth = 0; at instanceof Error && depth < 8; at = at.cause, depth += 1) {
    if ('code' in at && typeof at.code === 'string' && at.code in reasons) return at.code;
    const number = /\(os error (\d+)\)/.exec(at.message)?.[1];
    const [, code = (number && codes[number]) ?? ''] = /\b(E[A-Z]{2,}): /.exec(at.message) ?? [];
    if (code in reasons) return code;
  }
  return '';
}

/** Numbers of the system (POSIX as Linux and macOS have it, 112 Windows) for what fills or fails while files are written. */
const codes: Readonly<Record<string, string>> = {
  5: 'EIO',
  13: 'EACCES',
  24: 'EMFILE',
  27: 'EFBIG',
  28: 'ENOSPC',
  30: 'EROFS',
  112: 'ENOSPC',
  122: 'EDQUOT',
};
