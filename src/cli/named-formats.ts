// `--format NAME` or `--format NAME=FILE`, given several times: which forms to print, and where to.

import { Trouble } from './console.js';

export interface NamedFormat<T extends string> {
  readonly name: T;
  /** Undefined: standard output. */
  readonly file: string | undefined;
}

export function namedFormats<T extends string>(
  asked: readonly string[],
  known: readonly T[],
  otherwise: T,
): readonly NamedFormat<T>[] {
  if (asked.length === 0) return [{ name: otherwise, file: undefined }];
  return asked.map((text) => {
    const at = text.indexOf('=');
    const name = at < 0 ? text : text.slice(0, at);
    const format = known.find((each) => each === name);
    if (!format) throw new Trouble(`--format ${name}: not one of ${known.join(', ')}`);
    const file = at < 0 ? undefined : text.slice(at + 1);
    if (file === '') throw new Trouble(`--format ${text}: names no file`);
    return { name: format, file };
  });
}
