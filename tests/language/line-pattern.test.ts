// The machines that follow a line word by word (recovery/pattern.ts), held against the parser made from the same grammar: a line
// cut off behind each of its words is whole for the one just where it parses for the other.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createTroughlineServices } from '../../src/language/module.js';
import { patternsOf, type LinePattern, type LinePatterns } from '../../src/language/recovery/pattern.js';
import { wordType } from '../../src/language/row-starts.js';

const services = createTroughlineServices().troughline;
const { LangiumParser, Lexer } = services.parser;
/** Made anew each time: the grammar does not change, and what is remembered hides a fault. */
const fresh = (): LinePatterns => patternsOf(services.Grammar);

interface SoundLine {
  /** By the word of its heading; undefined for a line outside any block. */
  readonly block: string | undefined;
  readonly heading: string;
  readonly text: string;
}

/** The lines of a text, each with the heading it stands under; a nested block goes by its own. */
function linesIn(text: string): readonly SoundLine[] {
  const open: string[] = [];
  return text.split('\n').flatMap((whole) => {
    const line = whole.replace(/\s*\/\/.*$/, '').trim();
    if (line === '') return [];
    if (line === '}') {
      open.pop();
      return [];
    }
    const heading = open.at(-1);
    const found: SoundLine = {
      block: heading === undefined ? undefined : typesOf(heading)[0],
      heading: open.join('\n'),
      text: line,
    };
    if (line.endsWith('{')) open.push(line);
    return [found];
  });
}

const typesOf = (line: string): readonly string[] => Lexer.tokenize(line).tokens.map(wordType);

const lines = [
  ...['examples/6-screw-change/compost.trough', 'examples/7-five-years/history.trough'].flatMap((file) =>
    linesIn(readFileSync(file, 'utf8').replace(/\/\*[^]*?\*\//g, '')),
  ),
  ...linesIn(`job J {
  order {
    isolate
    g: gate shut Gate by Alpha
    strip run 1 by Alpha, Bravo after g, h takes 3 h
    patch from 9 m to 10 m by Alpha hot work shielded wet "seam"
  }
}
plant A {
  crew Alpha 4 people skills fitting, welding cost 48 EUR/h
  duty 110 h/week ± 15 %
}`),
].filter(({ text }, i, all) => all.findIndex((other) => other.text === text) === i);

/** Where a line stands after its words; undefined where it cannot be followed. */
function standingAfter(pattern: LinePattern, types: readonly string[]): number | undefined {
  return types.reduce<number | undefined>(
    (standing, type) => (standing === undefined ? undefined : pattern.next(standing, type)),
    pattern.start,
  );
}

/** One line or, for a parser that knows no lines, several side by side. */
function isRead(pattern: LinePattern, types: readonly string[]): boolean {
  let standing = pattern.start;
  for (const type of types) {
    const next = pattern.next(standing, type);
    const begun = next === undefined && pattern.isWhole(standing) ? pattern.next(pattern.start, type) : next;
    if (begun === undefined) return false;
    standing = begun;
  }
  return pattern.isWhole(standing);
}

describe('a line', () => {
  const patternOf = fresh();
  const blockOf = (word: string | undefined): string | undefined =>
    word === 'order'
      ? 'Order'
      : patternOf('Block')
          .ways(patternOf('Block').start)
          .find(({ token }) => token === word)?.fact;
  const parses = (heading: string, line: string): boolean => {
    const depth = heading === '' ? 0 : heading.split('\n').length;
    const closed = '}'.repeat(depth + (line.endsWith('{') ? 1 : 0));
    const { parserErrors, lexerErrors } = LangiumParser.parse(`${heading}\n${line}\n${closed}`);
    return parserErrors.length + lexerErrors.length === 0;
  };

  it('is followed to its end, and may end where the parser lets it', () => {
    expect(lines.length).toBeGreaterThan(100);
    for (const { block, heading, text } of lines) {
      const pattern = fresh().inside(blockOf(block));
      const { tokens } = Lexer.tokenize(text);
      for (const { startOffset, image } of tokens) {
        const part = text.slice(0, startOffset + image.length);
        const standing = standingAfter(pattern, typesOf(part));
        expect(standing === undefined, part).toBe(false);
        expect(pattern.isWhole(standing ?? -1), part).toBe(parses(heading, part));
      }
    }
  });

  it('with two of its words said twice, or with one left out, is whole where the parser reads it', () => {
    for (const { block, heading, text } of lines) {
      const pattern = fresh().inside(blockOf(block));
      const { tokens } = Lexer.tokenize(text);
      const images = tokens.map(({ image }) => image);
      for (let at = 1; at < images.length; at++)
        for (const [from, again] of [
          [at + 2, at],
          [at + 3, at],
          [at, at + 1],
        ] as const) {
          const line = [...images.slice(0, from), ...images.slice(again)].join(' ');
          if (line.indexOf('{') !== line.lastIndexOf('{')) continue;
          expect(isRead(pattern, typesOf(line)), line).toBe(parses(heading, line));
        }
    }
  });

  it('goes on with the words that are named, and with no others', () => {
    const patternOf = fresh();
    for (const rule of ['Block', 'PlantFact', 'InspectionRow', 'Step', 'ConveyorFact']) {
      const pattern = patternOf(rule);
      const seen = new Set([pattern.start]);
      for (const standing of [...seen]) {
        const ways = new Set(pattern.ways(standing).map(({ token }) => token));
        for (const token of [...pattern.words, 'lubricate']) {
          const next = pattern.next(standing, token);
          expect(next !== undefined, `${rule}: ${token}`).toBe(ways.has(token));
          // Asked again it gives the same.
          expect(pattern.next(standing, token)).toBe(next);
          if (next !== undefined) seen.add(next);
        }
      }
      expect([...pattern.first].sort()).toEqual(
        [...new Set(pattern.ways(pattern.start).map(({ token }) => token))].sort(),
      );
      expect(pattern.isWhole(pattern.start)).toBe(false);
      expect([pattern.isWhole(-1), pattern.ways(-1), pattern.next(-1, 'duty')]).toEqual([
        false,
        [],
        undefined,
      ]);
    }
  });

  it('knows its fact, the rule of each word, and all words of a fact', () => {
    const patternOf = fresh();
    const plant = patternOf.inside('Plant');
    const wayOf = (pattern: LinePattern, token: string): unknown => {
      const way = pattern.ways(pattern.start).find((each) => each.token === token);
      return way && [way.rule, way.fact];
    };
    expect(wayOf(plant, 'crew')).toEqual(['Crew', 'Crew']);
    expect(wayOf(patternOf.inside('Inspection'), 'at')).toEqual(['Reading', 'Reading']);
    expect(wayOf(patternOf('Block'), 'plant')).toEqual(['Plant', 'Plant']);
    const quantity = plant
      .ways(standingAfter(plant, ['duty']) ?? -1)
      .find(({ token }) => token === 'QUANTITY');
    expect(quantity).toMatchObject({ rule: 'Quantity', fact: 'PlantMeasure' });
    expect([...plant.wordsOf('Shift')].sort()).toEqual(
      [',', 'CLOCK', 'ID', 'NUMBER', 'QUANTITY', 'on', 'shift', 'to'].sort(),
    );
    expect(plant.wordsOf('Liner').size).toBe(0);
    expect([plant.words.has('skills'), plant.words.has('layer')]).toEqual([true, false]);
  });

  it('stands in a block that has lines, or outside any', () => {
    const patternOf = fresh();
    const blocks = ['Plant', 'Liner', 'Screw', 'Conveyor', 'Inspection', 'Reline', 'Job', 'Order'];
    expect(blocks.map((block) => patternOf.hasLines(block))).toEqual(blocks.map(() => true));
    expect([undefined, 'Crew', 'Patch', ''].map((block) => patternOf.hasLines(block))).toEqual(
      [undefined, 'Crew', 'Patch', ''].map(() => false),
    );
    expect(patternOf.inside('Plant')).toBe(patternOf('PlantFact'));
    for (const none of [undefined, 'Crew']) expect(patternOf.inside(none)).toBe(patternOf('Block'));
    expect(() => patternOf('Gearing')).toThrow('no rule Gearing');
    expect(() => patternOf('ID')).toThrow('no rule ID');
  });
});
