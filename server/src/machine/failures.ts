/** What the system says where something of it cannot be read or written. */

/** The system's code of a failure, such as ENOENT; `undefined` for a failure that is none of the system's. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

/** The same of a failure that can be the system's alone. @throws what is none of the system's */
export function codeOfSystem(error: unknown): string {
  const code = codeOf(error);
  if (code === undefined) throw error;
  return code;
}

/** Why the system did not let a file be read. */
export function reasonOf(code: string): string {
  switch (code) {
    case 'ENOENT':
      return 'it is not there';
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
