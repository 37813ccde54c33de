// What a correction beside the liner is of, in words: `plate at 9.1 m`, `current`, `panel torn at 14.2 m`.

import type { Amendment } from '../model/records.js';
import { conditionWords } from './kinds.js';

export function amendedWords({ of }: Pick<Amendment, 'of'>): string {
  switch (of.kind) {
    case 'plate':
    case 'flight':
      return `${of.kind} at ${of.at.text}`;
    case 'current':
      return 'current';
    case 'meter':
      return 'meter';
    case 'condition':
      return conditionWords(of.line);
  }
}
