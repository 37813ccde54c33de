// Lists in a finding name at most five things unless a rule says otherwise: a message has to fit a line of the Problems view.

import { list as listAll } from '../../domain/units/wording.js';

export function list(words: readonly string[], joint: 'and' | 'or' = 'and', most = 5): string {
  return listAll(words, joint, most);
}
