// Where something is to be completed: the text, its surroundings, and what is typed already.

import type { Range } from 'vscode-languageserver';
import type { Session } from '../session.js';
import { subjectOf, type Surroundings } from '../expected.js';
import type { Declaration } from '../document-symbols.js';
import type { EstateDocument } from '../document.js';

export interface CompletionContext {
  readonly session: Session;
  readonly document: EstateDocument;
  readonly around: Surroundings;
  readonly line: string;
  readonly range: Range;
  readonly typed: string;
  readonly snippets: boolean;
}

/** The conveyors that the block is about; none where it names none, several where the name is in doubt. */
export function conveyorsHere({ session, document, around }: CompletionContext): readonly Declaration[] {
  const { conveyor } = subjectOf(document.text, around);
  return conveyor ? session.symbols().conveyorOf(conveyor) : [];
}
