// Everything the commands need from the outside, as one argument: streams, the working folder, the environment.
// Results go to `out`, everything else to `err`; tests hand in their own.

export interface Console {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly readStdin: () => Promise<Uint8Array>;
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly outIsTerminal: boolean;
  /** The words that start this program, for whoever is to call it later. */
  readonly self: readonly string[];
  /** Says on a terminal what takes a while; gone with the next line that is printed. Elsewhere nothing is said. */
  readonly progress: (text: string) => void;
  /** Resolves after so many milliseconds; false where whoever waits should end. */
  readonly wait: (milliseconds: number) => Promise<boolean>;
}

/** 0 clean, 1 findings, 2 usage, configuration or I/O, 70 a fault of ours. */
export const Exit = { clean: 0, findings: 1, trouble: 2, fault: 70 } as const;

/** Trouble that is told in one line and ends the command with exit code 2. */
export class Trouble extends Error {
  override readonly name = 'Trouble';
}

export type ColourChoice = 'auto' | 'always' | 'never';

/** NO_COLOR (no-color.org) and a stream that is no terminal both mean plain text, unless asked for. */
export function wantsColour(choice: ColourChoice, console: Console): boolean {
  if (choice !== 'auto') return choice === 'always';
  return console.outIsTerminal && !console.env['NO_COLOR'] && console.env['TERM'] !== 'dumb';
}
