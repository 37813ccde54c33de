// Text → syntax tree, comments, and slips: lines that cannot be read, each told once in plain words and left out of the tree.

import type { IRecognitionException } from 'chevrotain';
import type { EstateFile } from './generated/ast.js';
import { scanComments, type Comment } from './comments.js';
import { liftRows, type Lifted } from './lifting.js';
import type { SlipOptions } from './parser.js';
import { createReadingRows, type ReadingRows } from './reading-rows.js';
import { recover, type HalfName, type LeftLine, type Slip } from './recover.js';
import { createTroughlineServices, type TroughlineServices } from './module.js';

export interface ParsedText {
  readonly text: string;
  readonly root: EstateFile;
  /** What the author is told. */
  readonly slips: readonly Slip[];
  /** Lines that are not in the tree, in the order of the text. */
  readonly left: readonly LeftLine[];
  /** Names that headings declare which cannot be read. */
  readonly names: readonly HalfName[];
  readonly comments: readonly Comment[];
  /** Regular rows of inspections, which are not in the tree; lowering adds the others and finishes the columns, once. */
  readonly rows: ReadingRows;
}

/** A text made ready: its comments found and its regular rows taken out. */
export interface Prepared {
  readonly text: string;
  readonly comments: readonly Comment[];
  readonly lifted: Lifted;
}

let ownServices: TroughlineServices | undefined;

/** Takes the regular rows out, so that the parser has less to do. */
export function prepare(text: string): Prepared {
  const { definition } = services().parser.Lexer;
  const comments = scanComments(text);
  // Tokens of the grammar go by their words, those of values by names in capitals, which no word of the language is.
  return {
    text,
    comments,
    lifted: liftRows(
      text,
      comments,
      (word) => Object.hasOwn(definition, word) && word !== word.toUpperCase(),
    ),
  };
}

function asItStands(text: string): Prepared {
  return { text, comments: scanComments(text), lifted: { rest: text, rows: createReadingRows(), taken: 0 } };
}

/** Parses a text without an editor and without links between texts: every row a node, unless the text has been prepared. */
export function parseText(text: string, { comments, lifted }: Prepared = asItStands(text)): ParsedText {
  const { LangiumParser, Lexer } = services().parser;
  // What is a slip and what to tell of it is worked out line by line, so the parser need not go on from its first one.
  const result = LangiumParser.parse<EstateFile>(lifted.rest, { slips: 1 } as SlipOptions);
  const known = { text, comments, rows: lifted.rows };
  if (result.parserErrors.length + result.lexerErrors.length === 0)
    return { ...known, root: result.value, slips: [], left: [], names: [] };
  const recovered = recover(
    lifted.rest,
    Lexer.tokenize(lifted.rest),
    services().Grammar,
    lifted.rows.extents(),
  );
  const { value: root, parserErrors } = LangiumParser.parse<EstateFile>(recovered.text);
  const { left, names } = recovered;
  return { ...known, root, left, names, slips: [...recovered.slips, ...unforeseen(parserErrors)] };
}

/** What the parser cannot follow though every line reads by itself: none is known, and none must go untold. */
function unforeseen(errors: readonly IRecognitionException[]): readonly Slip[] {
  return errors.map(({ token, message }) => {
    const start = Number.isFinite(token.startOffset) ? Math.max(0, token.startOffset) : 0;
    return { start, end: start + Math.max(1, token.image.length), message };
  });
}

function services(): TroughlineServices {
  return (ownServices ??= createTroughlineServices().troughline);
}
