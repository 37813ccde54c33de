// Where something is to be completed: the text, its surroundings, and what is typed already.

import type { Range } from 'vscode-languageserver';
import type { Desk } from '../desk.js';
import { subjectOf, type Surroundings } from '../expected.js';
import type { Declaration } from '../declared.js';
import type { Text } from '../texts.js';

export interface Place {
  readonly desk: Desk;
  readonly text: Text;
  readonly around: Surroundings;
  readonly line: string;
  readonly range: Range;
  readonly typed: string;
  readonly snippets: boolean;
}

/** The conveyors that the block is about; none where it names none, several where the name is in doubt. */
export function conveyorsHere({ desk, text, around }: Place): readonly Declaration[] {
  const { conveyor } = subjectOf(text.text, around);
  return conveyor ? desk.names().conveyorOf(conveyor) : [];
}
