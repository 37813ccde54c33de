// Why did the system refuse? Its error codes in plain words.

export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'no such file or folder';
    case 'EACCES':
    case 'EPERM':
      return 'no permission';
    case 'EROFS':
      return 'the disk is read-only';
    case 'EBUSY':
      return 'another program holds it';
    case 'ELOOP':
      return 'a link that leads to itself';
    case 'EISDIR':
      return 'is a folder';
    case 'EEXIST':
    case 'ENOTDIR':
      return 'a file stands where a folder is needed';
    case 'ENOSPC':
      return 'no space left on the disk';
    case 'EDQUOT':
      return 'no space left of what this user may fill';
    case 'EMFILE':
    case 'ENFILE':
      return 'too many files are open';
    case 'ENAMETOOLONG':
      return 'the name is too long';
    default:
      return error instanceof Error ? error.message : String(error);
  }
}
