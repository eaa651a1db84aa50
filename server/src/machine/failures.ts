/** The system's errors when a file cannot be read or written. */

/** The system's code of a failure, such as ENOENT; `undefined` for a failure that did not come from the system. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

/** The code of a failure that should come from the system. @throws any other failure again */
export function codeOfSystem(error: unknown): string {
  const code = codeOf(error);
  if (code === undefined) throw error;
  return code;
}

/** Why the system did not let a file be read. */
export function reasonOf(code: string): string {
  switch (code) {
    case 'ENOENT':
      return 'it does not exist';
    case 'EACCES':
    case 'EPERM':
      return 'permission is denied';
    case 'EISDIR':
      return 'it is a folder';
    case 'ENOTDIR':
      return 'a part of its path is no folder';
    case 'ENOSPC':
      return 'the disk is full';
    case 'EDQUOT':
      return 'what you may have on the disk is used up';
    case 'EFBIG':
      return 'it would be larger than a file may be';
    case 'EROFS':
      return 'the disk can only be read';
    case 'EPIPE':
      return 'nobody reads it any more';
    case 'ELOOP':
      return 'its symbolic links lead in a circle';
    default:
      return `the system says ${code}`;
  }
}
