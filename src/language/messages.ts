// What the parser and the lexer say when they cannot follow: what was expected and where, in the words of the language,
// never in the names of tokens or rules.

import { capital, list as listOf } from '../domain/units/wording.js';
import type { ILexerErrorMessageProvider, IParserErrorMessageProvider, IToken, TokenType } from 'chevrotain';
import { GrammarAST, type Grammar } from 'langium';
import { nearest } from './nearest.js';

type MismatchedToken = Parameters<IParserErrorMessageProvider['buildMismatchTokenMessage']>[0];
type NoAlternative = Parameters<IParserErrorMessageProvider['buildNoViableAltMessage']>[0];

export class TroughlineParserMessages implements IParserErrorMessageProvider {
  /** Told how many messages the text at hand has drawn so far. */
  onMessage: (count: number) => void = () => undefined;
  private count = 0;
  private readonly firstWords: ReadonlyMap<string, readonly string[]>;

  constructor(grammar: Grammar) {
    this.firstWords = firstWordsOf(grammar);
  }

  startText(): void {
    this.count = 0;
  }

  buildMismatchTokenMessage(options: MismatchedToken): string {
    return this.counted(this.mismatch(options));
  }

  buildNotAllInputParsedMessage({ firstRedundant }: { firstRedundant: IToken; ruleName: string }): string {
    return this.counted(this.tooMuch(firstRedundant));
  }

  buildNoViableAltMessage(options: NoAlternative): string {
    return this.counted(this.noAlternative(options));
  }

  buildEarlyExitMessage({
    actual,
    previous,
  }: {
    expectedIterationPaths: TokenType[][];
    actual: IToken[];
    previous: IToken;
    customUserDescription?: string;
    ruleName: string;
  }): string {
    return this.counted(`Something is missing${after(previous)}, before ${found(actual[0])}.`);
  }

  private counted(message: string): string {
    this.onMessage(++this.count);
    return message;
  }

  private mismatch({ expected, actual, previous, ruleName }: MismatchedToken): string {
    const rule = plain(ruleName);
    if (rule === 'Step' && expected.name === ':')
      return this.notAFact('Order', isEnd(actual) ? actual : previous);
    if (expected.name === 'EOF') return this.tooMuch(actual);
    if (expected.name === '}') return this.notAFact(rule, actual);
    if (expected.name === 'ID' && isWord(actual)) return takenWord(actual);
    if (expected.name === 'STRING' && actual.image === '"') return unclosed;
    const feet = feetAndInches(previous, actual);
    if (feet !== undefined) return feet;
    return (
      this.misspeltRow(rule, previous) ??
      `Expected ${describe(expected)}${after(previous)}, but found ${found(actual)}.`
    );
  }

  private tooMuch(firstRedundant: IToken): string {
    if (firstRedundant.image === '}')
      return 'This `}` closes nothing: the block before it is closed already.';
    return `A block starts here with one of ${list(this.wordsFor('Block'))}, but found ${found(firstRedundant)}.${this.meant('Block', firstRedundant)}`;
  }

  private noAlternative({ expectedPathsPerAlt, actual, previous, ruleName }: NoAlternative): string {
    const rule = plain(ruleName);
    const [next] = actual;
    const needed = needs[rule];
    if (needed) return `Expected ${needed}${after(previous)}, but found ${found(next)}.`;
    if (next && rule.endsWith('Fact')) return this.notAFact(rule.slice(0, -'Fact'.length), next);
    const firsts = new Map(
      expectedPathsPerAlt.flat().flatMap(([first]) => (first ? [[first.name, first] as const] : [])),
    );
    // In a row of an inspection a wrong word after the point is told by what could follow it.
    const words = [...firsts.values()].map(describe);
    const meant = next
      ? didYouMean(
          next.image,
          [...firsts.values()].filter(isKeywordType).map((type) => wordOf(type)),
        )
      : '';
    const wanted = `Expected ${list([...new Set(words)])}${after(previous)}, but found ${found(next)}.`;
    return meant ? wanted + meant : (this.misspeltRow(rule, previous) ?? wanted);
  }

  /** A word where a block goes on or ends. */
  private notAFact(rule: string, actual: IToken): string {
    const block = blocks[rule] ?? 'block';
    if (isEnd(actual)) return `The file ends inside ${article(block)}: a closing \`}\` is missing.`;
    if (actual.image === '{') return `This \`{\` opens nothing: ${article(block)} is open already.`;
    const word = actual.image.replace(/\s+/g, ' ');
    if (rule === 'Job' && word === 'screw change')
      return 'A job says `change screw`; `screw change` is the record of one that was done, a block of its own.';
    if (this.wordsFor('Block').includes(word) && !this.wordsFor(rule).includes(word)) {
      return `${capital(article(block))} is not closed before ${found(actual)}: a closing \`}\` is missing.`;
    }
    return `${found(actual)} is not something ${article(block)} says${rule === 'Order' ? ' next' : ''}.${this.meant(rule, actual)}`;
  }

  private meant(rule: string, actual: IToken): string {
    return didYouMean(actual.image, this.wordsFor(rule)) || ` It can say ${list(this.wordsFor(rule))}.`;
  }

  /** A misspelt first word of a row is first taken for the name of a point; what follows then seems wrong. */
  private misspeltRow(rule: string, previous: IToken | undefined): string | undefined {
    const block = rule === 'AsFitted' ? 'Reline' : rule === 'Reading' ? 'Inspection' : undefined;
    // Short names of points lie near to any short word.
    if (
      !block ||
      previous?.tokenType.name !== 'ID' ||
      previous.image.length < 4 ||
      didYouMean(previous.image, this.wordsFor(block)) === ''
    )
      return undefined;
    return this.notAFact(block, previous);
  }

  private wordsFor(rule: string): readonly string[] {
    return this.firstWords.get(contents[rule] ?? rule) ?? [];
  }
}

export class TroughlineLexerMessages implements ILexerErrorMessageProvider {
  buildUnexpectedCharactersMessage(fullText: string, startOffset: number, length: number): string {
    const wrong = fullText.slice(startOffset, startOffset + Math.min(length, 20));
    if (wrong.startsWith('"')) return unclosed;
    if (fullText.startsWith('/*', startOffset)) return 'This comment has no end: a closing `*/` is missing.';
    if (/^[“”„«»]/.test(wrong))
      return `Text stands between straight quotes: write " instead of ${wrong.charAt(0)}.`;
    if (/^\p{L}/u.test(wrong))
      return `\`${wrong}\` cannot stand here: names are made of the letters A to Z, digits, _ and -, everything else stands in quotes.`;
    if (/[\p{Cc}\p{Cn}\p{Cs}]/u.test(wrong))
      return 'Characters that cannot be printed have no meaning here; delete them.';
    return `\`${wrong}\` has no meaning here.`;
  }

  buildUnableToPopLexerModeMessage(): string {
    return 'This has no meaning here.';
  }
}

const unclosed = 'This text has no closing quote on its line: write `"` where it ends.';

/** What a rule that reads one value wants. */
const needs: Readonly<Record<string, string>> = {
  Quantity: 'a number with its unit (such as `8.4 mm`)',
  Numeral: 'a whole number',
  Day: 'a date (such as `2026-03-14`)',
  ClockTime: 'a clock position (such as `7:30`)',
  RunName: 'the number of a run, or `above` and the break at its tail end',
  QualifiedName: 'the name of a conveyor',
};

const blocks: Readonly<Record<string, string>> = {
  Plant: 'plant',
  Liner: 'liner',
  Screw: 'screw',
  Conveyor: 'conveyor',
  Inspection: 'inspection',
  Reline: 'reline',
  ScrewChange: 'screw change',
  Job: 'job',
  Order: 'order',
  EstateFile: 'file',
  Block: 'file',
};

/** The rule that holds what a block can say. */
const contents: Readonly<Record<string, string>> = {
  Plant: 'PlantFact',
  Liner: 'LinerFact',
  Screw: 'ScrewFact',
  Conveyor: 'ConveyorFact',
  Inspection: 'InspectionRow',
  Reline: 'RelineFact',
  ScrewChange: 'ScrewChangeFact',
  Job: 'JobFact',
  Order: 'Step',
  EstateFile: 'Block',
};

function describe(type: TokenType): string {
  switch (type.name) {
    case 'QUANTITY':
      return needs['Quantity'] ?? 'a quantity';
    case 'NUMBER':
      return 'a number';
    case 'DATE':
      return needs['Day'] ?? 'a date';
    case 'CLOCK':
      return needs['ClockTime'] ?? 'a clock position';
    case 'ID':
      return 'a name';
    case 'STRING':
      return 'a text in quotes';
    case 'EOF':
      return 'the end of the file';
    default:
      return `\`${wordOf(type)}\``;
  }
}

function found(token: IToken | undefined): string {
  if (!token || isEnd(token)) return 'the end of the file';
  const image = token.image.replace(/\s+/g, ' ');
  return `\`${image.length > 40 ? `${image.slice(0, 40)}…` : image}\``;
}

function after(previous: IToken | undefined): string {
  return previous && !isEnd(previous) && previous.image !== '' ? ` after ${found(previous)}` : '';
}

function takenWord(token: IToken): string {
  const word = token.image.replace(/\s+/g, ' ');
  const offered = word.replace(/(?:^|[ -])(.)/g, (_, letter: string) => letter.toUpperCase());
  return `\`${word}\` is a word of the language and cannot be a name; write \`${offered}\` or \`${offered}1\`, say.`;
}

function didYouMean(image: string, words: readonly string[]): string {
  const [near] = nearest(image, words, 2);
  return near === undefined ? '' : ` Did you mean \`${near}\`?`;
}

function list(items: readonly string[]): string {
  const quoted = items.map((item) =>
    /^[a-z-]+( [a-z-]+)*$/.test(item) && !item.startsWith('a ') && !item.startsWith('the ')
      ? `\`${item}\``
      : item,
  );
  return listOf(quoted, 'or');
}

function article(block: string): string {
  return /^[aeiou]/.test(block) ? `an ${block}` : `a ${block}`;
}

function isEnd(token: IToken): boolean {
  return token.tokenType.name === 'EOF';
}

function isWord(token: IToken): boolean {
  return isKeywordType(token.tokenType) && /^[a-z]/.test(token.image);
}

const values = new Set(['QUANTITY', 'NUMBER', 'DATE', 'CLOCK', 'ID', 'STRING', 'EOF']);

function isKeywordType(type: TokenType): boolean {
  return !values.has(type.name);
}

function wordOf(type: TokenType): string {
  return type.name;
}

/** Langium marks the names of its rules with an invisible letter. */
function plain(ruleName: string): string {
  return ruleName.replace(/\u200B/g, '');
}

/** The keywords with which each rule can begin, in the order of the grammar. */
function firstWordsOf(grammar: Grammar): ReadonlyMap<string, readonly string[]> {
  const known = new Map<string, readonly string[]>();
  const ofRule = (rule: GrammarAST.AbstractRule): readonly string[] => {
    const before = known.get(rule.name);
    if (before || !GrammarAST.isParserRule(rule)) return before ?? [];
    known.set(rule.name, []);
    const words = [...new Set(ofElement(rule.definition).words)];
    known.set(rule.name, words);
    return words;
  };
  const ofElement = (
    element: GrammarAST.AbstractElement,
  ): { readonly words: readonly string[]; readonly optional: boolean } => {
    const optional = element.cardinality === '?' || element.cardinality === '*';
    if (GrammarAST.isKeyword(element)) return { words: [element.value], optional };
    if (GrammarAST.isAssignment(element)) return { words: ofElement(element.terminal).words, optional };
    if (GrammarAST.isRuleCall(element))
      return { words: element.rule.ref ? ofRule(element.rule.ref) : [], optional };
    if (GrammarAST.isAlternatives(element))
      return { words: element.elements.flatMap((one) => ofElement(one).words), optional };
    if (GrammarAST.isGroup(element)) {
      const words: string[] = [];
      for (const one of element.elements) {
        const first = ofElement(one);
        words.push(...first.words);
        if (!first.optional) return { words, optional };
      }
      return { words, optional: true };
    }
    return { words: [], optional };
  };
  for (const rule of grammar.rules) ofRule(rule);
  return known;
}

/** `21 ft 6 in`: a length is one number with one unit. */
function feetAndInches(previous: IToken, actual: IToken): string | undefined {
  const feet = /^(\d+) *ft$/.exec(previous.image)?.[1];
  const inches = /^(\d+(?:\.\d+)?) *in$/.exec(actual.image)?.[1];
  return feet === undefined || inches === undefined
    ? undefined
    : `A length is one number with one unit: write \`${Number(feet) * 12 + Number(inches)} in\` for ${feet} ft ${inches} in.`;
}
