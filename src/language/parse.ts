// Text → syntax tree, comments, and slips: places where the parser could not follow, in plain words. Slips that only follow
// from an earlier one are dropped: a slip counts again once a whole fact has been read cleanly since the last.

import type { IRecognitionException, IToken } from 'chevrotain';
import type { AstNode, ParseResult } from 'langium';
import type { EstateFile } from './generated/ast.js';
import { scanComments, type Comment } from './comments.js';
import { liftRows, type Lifted } from './lifting.js';
import { mostSlips } from './parser.js';
import { createReadingRows, type ReadingRows, type TextSpan } from './reading-rows.js';
import { createTroughlineServices, type TroughlineServices } from './module.js';

export interface SyntaxSlip {
  readonly start: number;
  readonly end: number;
  readonly message: string;
  /** The word that was probably meant in its place. */
  readonly corrected?: string;
}

export interface ParsedText {
  readonly text: string;
  readonly root: EstateFile;
  /** What the author is told. */
  readonly slips: readonly SyntaxSlip[];
  /** Where the parser lost its way, in order, those that only follow from an earlier slip included. */
  readonly lost: readonly number[];
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
  const result = services().parser.LangiumParser.parse<EstateFile>(lifted.rest);
  return { text, root: result.value, ...slipsOf(text, result, lifted.rows), comments, rows: lifted.rows };
}

function services(): TroughlineServices {
  return (ownServices ??= createTroughlineServices().troughline);
}

/** A slip, with whether the parser was in the middle of a fact, and whether it is told whatever stands before it. */
interface Lost extends SyntaxSlip {
  readonly inFact: boolean;
  readonly whole?: boolean;
}

function slipsOf(
  text: string,
  result: ParseResult<EstateFile>,
  lifted: ReadingRows,
): Pick<ParsedText, 'slips' | 'lost'> {
  // Where the text ends for a reader: at the last word, whoever has read it.
  const lastEnd = Math.max(lifted.lastEnd, result.value.$cstNode?.end ?? 0);
  const all: Lost[] = result.lexerErrors.map((error) => ({
    start: error.offset,
    end: Math.min(error.offset + error.length, text.length),
    message: error.message,
    inFact: true,
    whole: 'whole' in error,
  }));
  for (const error of result.parserErrors)
    all.push({
      ...placeOfError(error, lastEnd),
      inFact: !betweenFacts.test(error.context.ruleStack.at(-1) ?? ''),
    });
  all.sort((a, b) => a.start - b.start);
  const kept = withoutEchoes(all, cleanFacts(result.value, lifted, all));
  const last = result.parserErrors.length < mostSlips ? undefined : result.parserErrors[mostSlips - 1];
  const lost = all.map((slip) => slip.start);
  if (!last) return { slips: kept, lost };
  const { start, end } = placeOfError(last, lastEnd);
  const rest = {
    start,
    end,
    message: `More than ${mostSlips} slips: what follows is not read until those above are mended.`,
  };
  return { slips: [...kept, rest], lost };
}

/** Rules in which the parser stands when one fact or block is over and the next has not begun. */
const betweenFacts = /^(EstateFile|Plant|Liner|Screw|Conveyor|Inspection|Reline|ScrewChange|Job|Order)\W?$/;

/** The message at the word it is about: the one that was not expected, or the one before it that the parser took for a name. */
function placeOfError({ token, message, ...rest }: IRecognitionException, lastEnd: number): SyntaxSlip {
  // Only some kinds of the parser's errors carry the token before.
  const { previousToken } = rest as { readonly previousToken?: IToken };
  const before = previousToken && isPlaced(previousToken) ? previousToken : undefined;
  const about = aboutWord.exec(message)?.[1];
  const corrected = meantWord.exec(message)?.[1];
  const wrong = before && about === before.image ? before : isPlaced(token) ? token : undefined;
  if (wrong) {
    return {
      start: wrong.startOffset,
      end: wrong.startOffset + wrong.image.length,
      message,
      ...(corrected === undefined ? {} : { corrected }),
    };
  }
  const end = Math.max(before ? before.startOffset + before.image.length : 0, lastEnd);
  return { start: Math.max(0, end - 1), end, message };
}

// Forms of the messages (messages.ts) that name the wrong word first, or end with the right one.
const aboutWord = /^`([^`]+)` is not something /;
const meantWord = /Did you mean `([^`]+)`\?$/;

/** The end-of-file token, and tokens put in by recovery, have no place of their own. */
function isPlaced(token: IToken): boolean {
  return Number.isFinite(token.startOffset) && token.startOffset >= 0 && token.tokenType.name !== 'EOF';
}

/** The first slip, and each later one that has a clean fact between it and the slip before it. */
function withoutEchoes(slips: readonly Lost[], clean: readonly TextSpan[]): readonly SyntaxSlip[] {
  const kept: SyntaxSlip[] = [];
  let fact = 0;
  let last = -1;
  for (const { inFact: _, whole, ...slip } of slips) {
    const { start, end } = slip;
    while (fact < clean.length && (clean[fact]?.start ?? Infinity) < last) fact++;
    const between = clean[fact];
    if (whole || kept.length === 0 || (between && between.end <= start)) kept.push(slip);
    last = Math.max(last, end);
  }
  return kept;
}

/** Facts and rows read to their end without a slip, in the order of the text. */
function cleanFacts(root: EstateFile, lifted: ReadingRows, slips: readonly Lost[]): readonly TextSpan[] {
  if (slips.length < 2) return [];
  const facts = root.blocks.flatMap((block): readonly TextSpan[] => {
    const nodes: readonly AstNode[] = 'facts' in block ? block.facts : 'rows' in block ? block.rows : [];
    return nodes.flatMap(({ $cstNode: place }) => (place ? [{ start: place.offset, end: place.end }] : []));
  });
  const all = [...facts, ...lifted.extents()].sort((a, b) => a.start - b.start);
  let next = 0;
  return all.filter(({ start, end }, index) => {
    while (next < slips.length && (slips[next]?.end ?? Infinity) <= start) next++;
    const slip = slips[next];
    if (!slip) return true;
    // A slip behind a fact that the parser had not finished belongs to that fact.
    const follows = (all[index + 1]?.start ?? Infinity) > slip.start;
    return slip.start >= end && !(slip.inFact && follows);
  });
}
