// What a line may say, word by word: each rule of the grammar as a small machine that takes one token after the other. The
// grammar of facts nests nowhere, so such a machine knows exactly how far a line can be followed and how it may go on,
// however many words ahead. A block ends for it at its opening brace: what stands inside are lines of their own.

import { GrammarAST, type Grammar } from 'langium';
import { writtenAs } from '../row-starts.js';

/** A token that may come next: a keyword, or a kind of value in capitals. */
export interface NextToken {
  readonly token: string;
  /** The rule of the grammar in which the token stands: the same word can mean two things in two places. */
  readonly rule: string;
  /** The fact that is being read: `Bolt`, `Reading`. */
  readonly fact: string;
  readonly to: number;
}

/** Where a line has got to, by number: all the places of the machine that it may stand at. */
export type LinePlace = number;

export interface LinePattern {
  readonly start: LinePlace;
  /** Undefined where the token cannot stand. */
  next(standing: LinePlace, token: string): LinePlace | undefined;
  /** A line may end here. */
  isWhole(standing: LinePlace): boolean;
  ways(standing: LinePlace): readonly NextToken[];
  /** Tokens that a line can begin with. */
  readonly first: ReadonlySet<string>;
  /** Every token that any line can hold. */
  readonly words: ReadonlySet<string>;
  /** Every token that the fact can hold. */
  wordsOf(fact: string): ReadonlySet<string>;
}

export interface LinePatterns {
  (rule: string): LinePattern;
  /** The lines inside a block, by its rule; those of a file for none. */
  inside(block: string | undefined): LinePattern;
  /** The blocks that have a line which begins with this word. */
  blocksSaying(word: string): readonly string[];
  /** Whether a block holds lines of its own. */
  hasLines(block: string | undefined): boolean;
}

const known = new WeakMap<Grammar, LinePatterns>();

/** The machines of a grammar, once for all who ask and each made when it is first asked for. */
export function patternsOf(grammar: Grammar): LinePatterns {
  const patterns = known.get(grammar) ?? patternsIn(grammar);
  known.set(grammar, patterns);
  return patterns;
}

function patternsIn(grammar: Grammar): LinePatterns {
  const made = new Map<string, LinePattern>();
  const patternOf = (name: string): LinePattern => {
    const known = made.get(name) ?? makePattern(grammar, name);
    made.set(name, known);
    return known;
  };
  const contents = contentsIn(grammar);
  return Object.assign(patternOf, {
    inside: (block: string | undefined) => patternOf(contents.get(block ?? '') ?? 'Block'),
    blocksSaying: (word: string) =>
      [...contents].flatMap(([block, rule]) =>
        block !== 'Order' && block !== 'EstateFile' && patternOf(rule).first.has(word) ? [block] : [],
      ),
    hasLines: (block: string | undefined) => contents.has(block ?? ''),
  });
}

/** By block, the rule that stands between its braces any number of times. */
function contentsIn(grammar: Grammar): ReadonlyMap<string, string> {
  return new Map(
    grammar.rules.flatMap((rule) => {
      if (!GrammarAST.isParserRule(rule) || !GrammarAST.isGroup(rule.definition)) return [];
      const { elements } = rule.definition;
      const brace = elements.findIndex((one) => GrammarAST.isKeyword(one) && one.value === '{');
      const list = brace < 0 ? undefined : elements[brace + 1];
      return list && GrammarAST.isAssignment(list) && GrammarAST.isRuleCall(list.terminal)
        ? [[rule.name, list.terminal.rule.$refText] as const]
        : [];
    }),
  );
}

interface Place {
  readonly ways: NextToken[];
  /** Places that are reached without a token. */
  readonly free: FreeStep[];
}

/** Of parts that stand in any order each stands once: which have stood is kept beside the place, a bit a part. */
interface FreeStep {
  readonly to: number;
  /** Into a part: where its bit is not set yet. */
  readonly part?: number;
  /** Behind the last of them: they are forgotten, as no such group stands within another. */
  readonly leaves?: true;
}

function makePattern(grammar: Grammar, name: string): LinePattern {
  const places: Place[] = [];
  const add = (): number => places.push({ ways: [], free: [] }) - 1;
  const [from, end] = [add(), add()];
  const rule = grammar.rules.find((one) => one.name === name);
  if (!rule || !GrammarAST.isParserRule(rule)) throw new Error(`The grammar has no rule ${name}`);
  const compile = compiler(places, add, end);
  compile(rule.definition, from, end, { rule: name, fact: name });

  const words = new Map<string, Set<string>>();
  for (const { ways: each } of places)
    for (const { fact, token } of each) words.set(fact, (words.get(fact) ?? new Set()).add(token));
  const { start, ways, next, isWhole } = standings(places, from, end);
  return {
    start,
    next,
    isWhole,
    ways,
    first: new Set(ways(start).map(({ token }) => token)),
    words: new Set(places.flatMap(({ ways: each }) => each.map(({ token }) => token))),
    wordsOf: (fact) => words.get(fact) ?? new Set(),
  };
}

interface Step {
  readonly whole: boolean;
  readonly ways: readonly NextToken[];
  readonly next: Map<string, LinePlace | undefined>;
}

/** Sets of places as single numbers, each worked out when a line first comes there. */
function standings(
  places: readonly Place[],
  from: number,
  end: number,
): Pick<LinePattern, 'start' | 'ways' | 'next' | 'isWhole'> {
  const steps: Step[] = [];
  const known = new Map<string, LinePlace>();
  const count = places.length;
  const standingAt = (each: readonly number[]): LinePlace => {
    const all = [...new Set(each.flatMap((one) => closure(places, one)))].sort((a, b) => a - b);
    const key = all.join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const ways = all.flatMap((one) => {
      const stood = one - (one % count);
      return (places[one % count]?.ways ?? []).map((way) => ({ ...way, to: way.to + stood }));
    });
    const standing = steps.push({ whole: all.includes(end), ways, next: new Map() }) - 1;
    known.set(key, standing);
    return standing;
  };
  return {
    start: standingAt([from]),
    ways: (standing) => steps[standing]?.ways ?? [],
    isWhole: (standing) => steps[standing]?.whole === true,
    next(standing, token) {
      const step = steps[standing];
      if (!step || step.next.has(token)) return step?.next.get(token);
      const to = step.ways.flatMap((way) => (way.token === token ? [way.to] : []));
      const next = to.length === 0 ? undefined : standingAt(to);
      step.next.set(token, next);
      return next;
    },
  };
}

interface Where {
  readonly rule: string;
  readonly fact: string;
}
type Compile = (element: GrammarAST.AbstractElement, from: number, to: number, where: Where) => void;

/** Lays an element of the grammar between two places. */
function compiler(places: Place[], add: () => number, end: number): Compile {
  const free = (from: number, to: number, more: Omit<FreeStep, 'to'> = {}): void =>
    void places[from]?.free.push({ to, ...more });
  const once: Compile = (element, from, to, where) => {
    if (GrammarAST.isKeyword(element)) {
      // Behind its brace a block holds lines of their own.
      places[from]?.ways.push({ token: element.value, ...where, to: element.value === '{' ? end : to });
    } else if (GrammarAST.isAssignment(element)) compile(element.terminal, from, to, where);
    else if (GrammarAST.isCrossReference(element)) {
      if (element.terminal) compile(element.terminal, from, to, where);
    } else if (GrammarAST.isRuleCall(element)) {
      const called = element.rule.ref;
      if (GrammarAST.isParserRule(called)) {
        const union = unions.test(where.rule);
        compile(called.definition, from, to, {
          rule: called.fragment ? where.rule : called.name,
          fact: union ? called.name : where.fact,
        });
      } else if (called) places[from]?.ways.push({ token: writtenAs(called.name), ...where, to });
    } else if (GrammarAST.isAlternatives(element)) {
      for (const one of element.elements) compile(one, from, to, where);
    } else if (GrammarAST.isUnorderedGroup(element)) {
      const between = add();
      free(from, between);
      free(between, to, { leaves: true });
      for (const [part, one] of element.elements.entries()) {
        const first = add();
        free(between, first, { part });
        compile(one, first, between, where);
      }
    } else if (GrammarAST.isGroup(element)) {
      let at = from;
      for (const [i, one] of element.elements.entries()) {
        const next = i === element.elements.length - 1 ? to : add();
        compile(one, at, next, where);
        at = next;
      }
      if (element.elements.length === 0) free(from, to);
    } else free(from, to);
  };
  const compile: Compile = (element, from, to, where) => {
    const { cardinality } = element;
    if (cardinality === undefined) return once(element, from, to, where);
    const [before, after] = [add(), add()];
    free(from, before);
    free(after, to);
    if (cardinality !== '+') free(before, after);
    if (cardinality !== '?') free(after, before);
    once(element, before, after, where);
  };
  return compile;
}

/** Rules that are no more than a choice of facts or blocks. */
const unions = /^(?:Block|InspectionRow|[A-Z][A-Za-z]*Fact)$/;

function closure(places: readonly Place[], from: number): readonly number[] {
  const count = places.length;
  const found = new Set([from]);
  for (const one of found) {
    const stood = Math.floor(one / count);
    for (const { to, part, leaves } of places[one % count]?.free ?? []) {
      const bit = part === undefined ? 0 : 1 << part;
      if ((stood & bit) === 0) found.add(to + (leaves ? 0 : stood | bit) * count);
    }
  }
  return [...found];
}
