import { describe, expect, test } from 'vitest';
import { formulaOf, formulas, formulasOf } from '../../../src/generators/appendix/formulas.js';

describe('the formulas of the appendix', () => {
  test('have ids that are unique and fit a link', () => {
    const ids = formulas.map((formula) => formula.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  test('each say what they are, where they come from, and one line of formula', () => {
    for (const { title, formula, source, symbols } of formulas) {
      expect(title).not.toBe('');
      expect(source.length).toBeGreaterThan(5);
      expect(formula).not.toMatch(/\n/);
      for (const { symbol, unit, meaning } of symbols) {
        expect([symbol, unit, meaning].every((text) => text !== '')).toBe(true);
        expect(unit).not.toMatch(/ /);
      }
    }
  });

  test('explain no symbol twice and every explained symbol of one letter appears', () => {
    for (const { id, formula, symbols } of formulas) {
      const names = symbols.map((each) => each.symbol);
      expect(new Set(names).size, id).toBe(names.length);
      for (const name of names.filter((each) => /^[A-Za-zα-ω]$/.test(each)))
        expect(formulaText(id) + formula, `${id}: ${name}`).toContain(name);
    }
  });

  test('are found by id, and cited in one line', () => {
    expect(formulaOf('capacity').symbols.map((each) => `${each.symbol} ${each.unit}`)).toContain('Q m³/h');
    expect(formulas).toHaveLength(
      formulasOf.wear.length + formulasOf.machine.length + formulasOf.work.length,
    );
  });
});

function formulaText(id: string): string {
  return formulas
    .filter((formula) => formula.id === id)
    .map((formula) => formula.formula + formula.symbols.map((each) => each.meaning).join(' '))
    .join(' ');
}
