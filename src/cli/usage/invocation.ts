// What a command needs from around it when it is called.

import type { Console } from '../console.js';

export interface Invocation {
  readonly console: Console;
  readonly version: string;
  /** Takes the exit code of the command that was called. */
  readonly finish: (code: number) => void;
}
