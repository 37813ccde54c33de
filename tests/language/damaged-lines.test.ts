// A sample of damaged lines: each is told once, on its own line, and nothing is said of the lines around it. All lines and all
// ways are taken by tests/bench/damaged-lines.ts, which prints how often.

import { globSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { randomSeed } from '../kit/random-seed.js';
import { createTroughlineServices } from '../../src/language/module.js';
import { parseText } from '../../src/language/parse.js';
import { recover } from '../../src/language/recover.js';
import { Bench, damagesOf, drawer, estateOf, ways } from './damage.js';

const services = createTroughlineServices().troughline;
const walked = (text: string): ReturnType<typeof recover> =>
  recover(text, services.parser.Lexer.tokenize(text), services.Grammar);
const sound = estateOf(globSync('examples/*/**/*.trough').filter((file) => !/every-mistake|ci\//.test(file)));

const rounds = Number(process.env['TROUGHLINE_ROUNDS'] ?? 150);

describe('lines of sound texts', () => {
  it('all read by themselves, and stay as they are', () => {
    for (const { uri, text } of sound) {
      const { slips, text: kept } = walked(text);
      expect(slips, uri).toEqual([]);
      const images = (of: string): readonly string[] =>
        services.parser.Lexer.tokenize(of).tokens.map(({ image }) => image);
      expect(images(kept)).toEqual(images(text));
    }
  });

  it('damaged in one place leave no other line unread', () => {
    const draw = drawer(randomSeed);
    for (const text of sound)
      for (const damage of damagesOf(text, draw, ['  section S2 6 m'], () => draw(120) === 0)) {
        const { slips, left } = parseText(damage.text);
        const near = slips.map(({ start }) => damage.text.slice(0, start).split('\n').length - damage.line);
        const what = `${damage.uri}: ${damage.before} -> ${damage.after}`;
        expect(slips.length, what).toBeLessThanOrEqual(1);
        expect(
          near.every(
            (lines) => lines === 0 || lines === 1 || (lines === -1 && damage.way === 'brace missing'),
          ),
          what,
        ).toBe(true);
        expect(left.length, what).toBeLessThanOrEqual(1);
      }
  });

  it('damaged in many places are still read to the end: what is left parses, and its lines stay where they are', () => {
    const draw = drawer(randomSeed);
    const junk = ['{', '}', '"', '“', '5 mm', 'P1', 'order {', '/*', 'x'];
    for (let round = 0; round < rounds; round++) {
      const { text } = sound[draw(sound.length)] ?? { text: '' };
      const pieces = text.split(/(?<=\s)/);
      for (let n = draw(6); n >= 0; n--) {
        const at = draw(pieces.length);
        if (draw(3) > 0) pieces.splice(at, draw(3), `${junk[draw(junk.length)] ?? ''} `);
        else pieces.splice(at, 1);
      }
      const damaged = pieces.join('');
      const { text: kept, slips } = walked(damaged);
      const { parserErrors, lexerErrors } = services.parser.LangiumParser.parse(kept);
      expect(
        parserErrors.map(({ message, token }) => `${message} ${token.image}`),
        damaged,
      ).toEqual([]);
      expect(lexerErrors, damaged).toEqual([]);
      expect(kept.slice(0, damaged.length).split('\n').length).toBeLessThanOrEqual(
        damaged.split('\n').length,
      );
      for (const { start, end, message } of slips) {
        expect(start < end && end <= Math.max(1, damaged.length), message).toBe(true);
        expect(message).toMatch(/[.?]$/);
      }
    }
  });

  it('are told once and alone, in at least 95 of a hundred damages of every kind', () => {
    const draw = drawer(randomSeed);
    const bench = new Bench(estateOf(['examples/1-first-conveyor/first.trough']));
    let [counted, good] = [0, 0];
    const seen = new Set<string>();
    for (const text of bench.estate)
      for (const damage of damagesOf(text, draw, ['  fill 0.4', '  scope all'], () => draw(3) > 0)) {
        const { here, elsewhere, isError } = bench.judge(damage);
        if (!isError) continue;
        seen.add(damage.way);
        counted++;
        if (here.length === 1 && elsewhere.length === 0) good++;
      }
    expect(counted).toBeGreaterThan(50);
    expect(seen.size).toBe(ways.length);
    expect(good / counted).toBeGreaterThanOrEqual(0.95);
  });
});
