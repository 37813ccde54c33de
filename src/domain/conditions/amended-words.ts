// What a correction beside the liner is of, in words: `plate at 9.1 m clock 5:00`, `current loaded`, `panel torn at 14.2 m`.

import type { Amendment } from '../model/records.js';
import { conditionWords } from './kinds.js';

export function amendedWords({ of }: Pick<Amendment, 'of'>): string {
  switch (of.kind) {
    case 'plate':
    case 'flight':
    case 'hold-down':
    case 'worn':
      return `${of.kind} at ${of.at.text}${of.clock ? ` clock ${of.clock.text}` : ''}`;
    case 'current':
      return [of.kind, of.which].filter(Boolean).join(' ');
    case 'speed':
    case 'meter':
      return of.kind;
    case 'condition':
      return conditionWords(of.line);
  }
}
