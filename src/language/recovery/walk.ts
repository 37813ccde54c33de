// A text that does not parse, read line by line: which lines are facts of their block, and which are not. A line that breaks is
// left where it ends; the next line that begins a fact of the block, or its brace, goes on. Braces are taken as missing or too
// many only where the lines around them say so: a heading of another block, a line further out, facts behind a closing brace.

import type { ILexingError, IToken } from 'chevrotain';
import { mostSlips } from '../parser.js';
import { evidenceOf, type Evidence, type OpenBlock } from './evidence.js';
import { leftLineOf, type LeftLine } from './left-line.js';
import type { LinePattern, LinePatterns, LinePlace } from './pattern.js';
import { placesOf, type TokenPlaces } from './places.js';
import { follow, likeWords } from './repairs.js';
import type { BrokenLine } from './broken-line.js';
import { toldWithoutSigns, withOddSign, withoutSoftSigns } from './odd-signs.js';
import { imagesOf, isFalseUnit, isValue, isWord, wordOf, type Word } from './word.js';
import { slipOf, type Slip } from './slip.js';
import { braces } from './telling.js';
import { tellsOfADayInDoubt } from './uncertain-day.js';

/** A name that a heading which cannot be read declares. */
export interface HalfName {
  /** Undefined where the word that says what it is cannot be read. */
  readonly block: string | undefined;
  /** Empty where the heading has none: it may be any. */
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

export interface Walked {
  readonly slips: readonly Slip[];
  /** Tokens that are not read, by number: from, and past the last. */
  readonly dropped: readonly (readonly [number, number])[];
  /** Braces that are missing: behind which token. */
  readonly put: readonly { readonly after: number; readonly brace: '{' | '}' }[];
  readonly left: readonly LeftLine[];
  readonly names: readonly HalfName[];
}

type Line =
  | { readonly kind: 'whole'; readonly end: number }
  | { readonly kind: 'broken'; readonly at: number; readonly end: number; readonly standing: LinePlace };

export function walk(
  text: string,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
  patternOf: LinePatterns,
  rowsEnd: (before: number) => number,
): Walked {
  return new Walk(text, tokens, errors, patternOf, rowsEnd).run();
}

class Walk {
  private readonly slips: Slip[] = [];
  private readonly dropped: [number, number][] = [];
  private readonly put: { after: number; brace: '{' | '}' }[] = [];
  private readonly left: LeftLine[] = [];
  private readonly names: HalfName[] = [];
  private readonly open: OpenBlock[] = [];
  private readonly places: TokenPlaces;
  private readonly evidence: Evidence;
  private at = 0;
  /** The block that was closed last, and the number of its brace. */
  private closed: { readonly open: OpenBlock; readonly brace: number } | undefined;
  /** In a run of lines outside any block that nobody can read: only the first is told. */
  private adrift = false;
  /** How far in the first of them stands: what is no further in and begins with a word of the language is told too. */
  private adriftAt = 0;
  /** Where the line before on the same line of text began, while no brace stands between. */
  private lineStart = 0;
  /** What the line at hand was probably meant to begin with. */
  private meant: string | undefined;

  constructor(
    private readonly text: string,
    private readonly tokens: readonly IToken[],
    errors: readonly ILexingError[],
    private readonly patternOf: LinePatterns,
    /** Where the last row ends that has been taken out of the text before an offset; 0 where there is none. */
    private readonly rowsEnd: (before: number) => number,
  ) {
    this.places = placesOf(text, tokens, errors);
    this.evidence = evidenceOf(this.places, patternOf);
  }

  run(): Walked {
    while (this.at < this.tokens.length && this.slips.length < mostSlips) this.step();
    const gaveUp = this.at < this.tokens.length;
    if (gaveUp) this.giveUp();
    else if (this.open.length > 0) this.unclosed(undefined);
    for (const { offset, length, message } of gaveUp ? [] : this.places.untold().slice(0, mostSlips))
      this.slips.push({ start: offset, end: Math.min(offset + length, this.text.length), message });
    this.slips.sort((a, b) => a.start - b.start);
    const { slips, dropped, put, left, names } = this;
    return { slips, dropped, put, left, names };
  }

  private get top(): OpenBlock | undefined {
    return this.open.at(-1);
  }

  private type(at: number): string {
    return this.places.type(at);
  }

  private step(): void {
    const type = this.type(this.at);
    if (type === '}')
      return this.evidence.isFurtherOut(this.at, this.open) ? this.unclosed(this.at, 1) : this.close();
    if (type === '{') return this.opensNothing();
    if (this.evidence.isOutside(this.at, this.open)) return this.unclosed(this.at);
    if (this.evidence.isOutOfOrder(this.at, this.open)) return this.unclosed(this.at, 1);
    if (!this.top && this.reopen()) return;
    if (this.top && this.top.block === undefined) {
      this.drop(this.at, this.at + 1);
      this.at += 1;
      return;
    }
    const block = this.top?.block ?? 'Block';
    const pattern = this.patternOf.inside(this.top?.block);
    if (this.places.isFirst(this.at) || ['{', '}'].includes(this.type(this.at - 1))) this.lineStart = this.at;
    const line = this.readLine(this.at, pattern);
    if (line.kind === 'whole') this.takeWhole(line.end);
    else this.takeBroken(line, block, pattern);
  }

  private takeWhole(end: number): void {
    const from = this.at;
    this.adrift = false;
    this.at = end;
    const { lost = false } = this.top ?? {};
    if (this.type(end - 1) === '{') this.enter(from, this.evidence.blockOf(this.type(from)), lost);
    if (lost) this.drop(from, end);
  }

  private enter(from: number, block: string | undefined, lost: boolean): void {
    this.open.push({ block, column: this.places.column(from), heading: from, lost });
  }

  /** Follows one line as far as it goes. */
  private readLine(from: number, pattern: LinePattern): Line {
    let standing = pattern.start;
    let at = from;
    for (; at < this.tokens.length; at++) {
      const type = this.type(at);
      if (at > from && this.places.isFirst(at) && this.endsBefore(at, pattern, standing)) break;
      const next = pattern.next(standing, type);
      if (next === undefined) break;
      standing = next;
      if (type === '{') return this.judged(from, at, at + 1, standing, pattern);
    }
    return this.judged(from, at, at, standing, pattern);
  }

  private judged(from: number, at: number, end: number, standing: LinePlace, pattern: LinePattern): Line {
    const isOver =
      end >= this.tokens.length ||
      this.type(end - 1) === '{' ||
      this.places.isFirst(end) ||
      this.type(end) === '}' ||
      this.begins(end, pattern);
    const whole = end > from && pattern.isWhole(standing) && isOver;
    if (whole && !this.places.hasError(from, end)) return { kind: 'whole', end };
    return { kind: 'broken', at, standing, end: this.endOfBroken(from, Math.max(end, from + 1), pattern) };
  }

  /** Whether the line above is over where this one begins: a fact that goes on below its line does so with another word. */
  private endsBefore(at: number, pattern: LinePattern, standing: LinePlace): boolean {
    const type = this.type(at);
    if (type === '}') return true;
    if (!this.begins(at, pattern)) return false;
    if (pattern.isWhole(standing)) return true;
    return type !== 'ID' || (at + 1 < this.tokens.length && !this.places.isFirst(at + 1));
  }

  private begins(at: number, pattern: LinePattern): boolean {
    return pattern.first.has(this.type(at)) || this.evidence.isOutside(at, this.open);
  }

  /** `2 bolts loose`: a line that begins with how many there are. */
  private isCount(at: number): boolean {
    const { image = '' } = this.tokens[at] ?? {};
    const next = this.type(at + 1);
    return isFalseUnit(image) || (this.type(at) === 'NUMBER' && (isWord(next) || next === 'ID'));
  }

  /** The end of a line that breaks: that of the text's line, with lines below that only go on with it. */
  private endOfBroken(from: number, to: number, pattern: LinePattern): number {
    const fact = pattern.ways(pattern.start).find(({ token }) => token === this.type(from))?.fact;
    const words = fact === undefined ? new Set<string>() : pattern.wordsOf(fact);
    let end = from;
    const isEnd = (): boolean =>
      end >= this.tokens.length || this.type(end) === '}' || this.type(end - 1) === '{';
    // A block of one line holds several facts: what is broken there is over where the next one reads.
    const inOneLine = this.isInOneLine();
    do end++;
    while (
      !isEnd() &&
      (end < to || !this.places.isFirst(end)) &&
      !(inOneLine && end >= to && this.evidence.isFactAt(end, pattern))
    );
    while (!isEnd() && this.places.isFirst(end) && !this.begins(end, pattern)) {
      const type = this.type(end);
      // What stands no further in is a line of its own: it is told by itself.
      const isOwn = isWord(type) || type === 'ID' || type === 'QUANTITY' || this.isCount(end);
      if (this.places.column(end) <= this.places.column(from) && isOwn) break;
      if (!/^[^a-zA-Z]|^[A-Z]{3,}$/.test(type) && !words.has(type)) break;
      do end++;
      while (!isEnd() && !this.places.isFirst(end));
    }
    return end;
  }

  /** Facts stand side by side behind a brace. */
  private isInOneLine(): boolean {
    return !this.places.isFirst(this.lineStart);
  }

  private takeBroken(line: Extract<Line, { kind: 'broken' }>, block: string, pattern: LinePattern): void {
    const { end } = line;
    const head =
      block === 'Block' || this.type(this.at) === 'order'
        ? this.evidence.blockOf(this.type(this.at))
        : undefined;
    if (head !== undefined && this.isUnopened(line, pattern, head)) {
      this.tell({ ...this.places.lastSign(line.at - 1), message: braces.unopened(head) });
      this.put.push({ after: line.at - 1, brace: '{' });
      this.enter(this.at, head, false);
      this.at = line.at;
      return;
    }
    // A line of several facts of which one breaks is doubtful as a whole: what breaks it may belong to the fact before.
    const from = this.isInOneLine() ? this.at : Math.min(this.at, this.lineStart);
    const isOwn =
      block === 'Block' && this.places.isFirst(this.at) && this.places.column(this.at) <= this.adriftAt;
    const word = this.type(this.at);
    // A record of one line, or a fact of some block: what stands there was meant, whatever stood above it.
    const isKnown = this.patternOf('Block').first.has(word) || this.patternOf.blocksSaying(word).length > 0;
    // A number, a day or a text that stands there was meant too, whatever the line begins with.
    const saysMore =
      this.places.column(this.at) === 1 &&
      this.tokens.slice(from, end).some(({ tokenType: { name } }) => isValue(name) || name === 'STRING');
    const quiet =
      (this.adrift && !(isOwn && ((isWord(word) && isKnown) || saysMore))) ||
      (this.top?.lost === true && this.top.block === undefined);
    const error = this.places.takeErrors(from, end);
    if (error && !quiet) this.tell(this.oddSign(error, from, end, block, pattern));
    else if (!quiet) this.tellLine(from, end, line, block, pattern);
    this.drop(from, end);
    this.leave(from, end, pattern, block);
    const opens = this.type(end - 1) === '{';
    if (block === 'Block') this.lostHeading(end, opens);
    else if (opens) this.enter(from, block === 'Job' ? 'Order' : undefined, true);
    this.meant = undefined;
    this.at = end;
  }

  /** A sign that means nothing here, with the line that keeps it in quotes. */
  private oddSign(error: ILexingError, from: number, end: number, block: string, pattern: LinePattern): Slip {
    const told = { start: error.offset, end: error.offset + error.length, message: error.message };
    const { start } = this.places.span(from);
    const last = this.places.span(end - 1).end;
    const isOdd = /^[/!?'=;&+*#()@~<>’–—-]/.test(this.text.slice(error.offset));
    const stop = /[\r\n]|\/\//g;
    stop.lastIndex = Math.max(last, told.end);
    const close = stop.exec(this.text)?.index ?? this.text.length;
    const text = this.text.slice(start, close).trimEnd();
    if (!isOdd || told.start < start || /[\r\n]/.test(text) || tellsOfADayInDoubt(error.message)) return told;
    const words = this.tokens.slice(from, end).map(wordOf);
    const behind = (word: number): string => this.text.slice(this.places.span(from + word).end, close);
    const line = withOddSign(block, words, text, behind, pattern);
    const signs = words.map((_, i) => {
      const next = from + i + 1 < end ? this.places.span(from + i + 1).start : close;
      return this.text.slice(this.places.span(from + i).end, next).trim();
    });
    // `P4 8 mm?`: as a note the doubt would leave the reading its full weight.
    const isInDoubt = block === 'Inspection' && signs.some((each) => each.includes('?'));
    const doubtful = isInDoubt ? this.withoutSigns(words, signs, block, pattern) : undefined;
    if (doubtful && !doubtful.line) return { ...told, message: doubtful.message };
    const plain =
      !isInDoubt && (!line || line[0]?.type === 'finding')
        ? this.withoutSigns(words, signs, block, pattern)
        : undefined;
    const offered = plain?.line ?? line;
    if (!offered) return plain ? { ...told, message: plain.message } : told;
    const put = imagesOf(offered);
    return {
      ...told,
      message: plain?.line ? plain.message : `${error.message} In quotes it can: \`${put}\`.`,
      mend: { start, end: start + text.length, text: put },
    };
  }

  /** What is told of the line without signs that say nothing. */
  private withoutSigns(
    words: readonly Word[],
    signs: readonly string[],
    block: string,
    pattern: LinePattern,
  ): { readonly message: string; readonly line?: readonly Word[] } | undefined {
    const plain = withoutSoftSigns(words, signs);
    return (
      plain && toldWithoutSigns({ ...this.around(block, pattern), words: plain, ...follow(plain, pattern) })
    );
  }

  private around(block: string, pattern: LinePattern): Omit<BrokenLine, 'words' | 'reached' | 'standing'> {
    const { inside, blocksSaying } = this.patternOf;
    return { block, pattern, heading: this.heading(), inside, blocksSaying };
  }

  /** A heading without its brace: what stands below is of its block. */
  private isUnopened(
    { at, standing }: { at: number; standing: LinePlace },
    pattern: LinePattern,
    head: string,
  ): boolean {
    if (!pattern.ways(standing).some(({ token }) => token === '{') || this.places.hasError(this.at, at))
      return false;
    if (!this.places.isFirst(at)) return false;
    return this.type(at) === '}' || this.patternOf.inside(head).first.has(this.type(at));
  }

  /** Behind a heading that cannot be read: its name is known, its facts are looked at and not used. */
  private lostHeading(end: number, opens: boolean): void {
    const { image = '', tokenType } = this.tokens[this.at] ?? {};
    const like = likeWords(image, [...this.patternOf('Block').first])[0] ?? '';
    const block =
      this.evidence.blockOf(this.meant ?? '') ??
      this.evidence.blockOf(this.type(this.at)) ??
      this.evidence.blockOf(like);
    const known = block !== undefined && tokenType?.name === 'ID' && like !== '' ? this.at + 1 : this.at;
    const name = this.tokens.slice(known, end).find((token) => token.tokenType.name === 'ID');
    const { start, end: past } = name
      ? { start: name.startOffset, end: name.startOffset + name.image.length }
      : this.places.span(this.at);
    if (block !== undefined || (name && opens))
      this.names.push({ block, name: name?.image ?? '', start, end: past });
    const goesOn =
      this.patternOf.hasLines(block) &&
      end < this.tokens.length &&
      this.evidence.isFactAt(end, this.patternOf.inside(block));
    if (opens || (goesOn && this.evidence.blockOf(this.type(this.at)) !== undefined))
      this.enter(this.at, block, true);
    if (!this.adrift) this.adriftAt = this.places.column(this.at);
    this.adrift = !opens && !goesOn;
  }

  private tellLine(
    from: number,
    end: number,
    line: { readonly at: number; readonly standing: LinePlace },
    block: string,
    pattern: LinePattern,
  ): void {
    const words = this.tokens.slice(from, end).map(wordOf);
    const before = from < this.at ? follow(words.slice(0, this.at - from), pattern) : undefined;
    const { slip, meant } = slipOf(
      {
        ...this.around(block, pattern),
        from,
        words,
        reached: before ? this.at - from : line.at - from,
        standing: before?.standing ?? line.standing,
      },
      this.places,
    );
    this.meant = meant;
    this.tell(slip);
  }

  private heading(): readonly Word[] {
    const from = this.top?.heading;
    if (from === undefined) return [];
    let end = from;
    while (end < this.tokens.length && this.type(end) !== '{' && end < from + 12) end++;
    return this.tokens.slice(from, end).map(wordOf);
  }

  private leave(from: number, end: number, pattern: LinePattern, block: string): void {
    const line = leftLineOf(this.tokens.slice(from, end), pattern, block, this.meant);
    if (line) this.left.push(line);
  }

  private close(): void {
    const open = this.open.pop();
    this.adrift = false;
    if (!open) {
      this.tell({ ...this.places.span(this.at), message: braces.closesNothing });
      this.drop(this.at, this.at + 1);
      this.adrift = true;
    } else {
      if (open.lost) this.drop(this.at, this.at + 1);
      if (this.open.length === 0) this.closed = { open, brace: this.at };
    }
    this.at += 1;
  }

  private opensNothing(): void {
    const isStep = this.patternOf('Step').first.has(this.type(this.at + 1));
    if (this.top?.block === 'Job' && isStep && this.evidence.isFactAt(this.at + 1, this.patternOf('Step'))) {
      this.tell({ ...this.places.span(this.at), message: braces.unnamed });
      this.drop(this.at, this.at + 1);
      this.leave(this.at, this.at + 1, this.patternOf('Step'), 'Order');
      this.enter(this.at, 'Order', true);
      this.at += 1;
      return;
    }
    this.tell({ ...this.places.span(this.at), message: braces.opensNothing(this.top?.block) });
    this.drop(this.at, this.at + 1);
    if (!this.top) this.enter(this.at, undefined, true);
    this.at += 1;
  }

  /** A brace too many in the middle of a block: facts of the block that was closed stand behind it. */
  private reopen(): boolean {
    const { open, brace } = this.closed ?? {};
    if (!open?.block || brace === undefined || !this.places.isFirst(this.at)) return false;
    if (this.patternOf('Block').first.has(this.type(this.at))) return false;
    if (!this.evidence.isFactAt(this.at, this.patternOf.inside(open.block))) return false;
    if (!this.evidence.isClosedLater(this.at)) return false;
    this.tell({ ...this.places.span(brace), message: braces.tooSoon(open.block) });
    this.drop(brace, brace + 1);
    this.open.push(open);
    this.closed = undefined;
    return true;
  }

  /** Closes what should have been closed behind the line above. */
  private unclosed(before: number | undefined, count = this.open.length): void {
    const closing = this.open.splice(this.open.length - count);
    const blocks = closing.flatMap(({ block, lost }) => (block === undefined || lost ? [] : [block]));
    const after = (before ?? this.tokens.length) - 1;
    if (blocks.length > 0) {
      const word = before === undefined ? undefined : this.tokens[before]?.image;
      const rows = this.rowsEnd(before === undefined ? this.text.length : this.places.span(before).start);
      const end = Math.max(this.places.span(after).end, rows);
      this.tell({ start: Math.max(0, end - 1), end, message: braces.unclosed(blocks, word) });
    }
    for (const { lost } of closing) if (!lost) this.put.push({ after, brace: '}' });
    this.adrift = false;
  }

  private giveUp(): void {
    this.tell({
      ...this.places.span(this.at),
      message: `More than ${mostSlips} slips: what follows is not read until those above are mended.`,
    });
    this.drop(this.at, this.tokens.length);
    for (const { lost } of this.open) if (!lost) this.put.push({ after: this.at - 1, brace: '}' });
  }

  private tell(slip: Slip): void {
    this.slips.push(slip);
  }

  private drop(from: number, to: number): void {
    this.dropped.push([from, to]);
  }
}
