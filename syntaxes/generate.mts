// Writes troughline.tmLanguage.json from the language's own grammar, so that colouring knows every keyword and no other.
// Run: npx tsx syntaxes/generate.mts. A test fails when the file is not what this makes.

import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AstUtils, EmptyFileSystem, GrammarAST } from 'langium';
import { createTroughlineServices } from '../src/language/module.js';

const blockRules = [
  'Plant',
  'Liner',
  'Screw',
  'Conveyor',
  'Inspection',
  'Correction',
  'Reline',
  'PanelsMoved',
  'ScrewChange',
  'MeterChange',
  'DutyChange',
  'Patch',
  'Serviced',
  'Job',
];

/** Rules that give a name to something inside a block. */
const namingRules = [
  'Outage',
  'Crew',
  'AccessUnit',
  'Layer',
  'Section',
  'Break',
  'Access',
  'Isolation',
  'Hatch',
  'LiftingPoint',
  'Point',
];

export function textMateGrammar(): string {
  const { blocks, facts, words, actions, naming } = keywords();
  const name = '[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*';
  const made = {
    $schema: 'https://raw.githubusercontent.com/martinring/tmlanguage/master/tmlanguage.json',
    name: 'Troughline',
    scopeName: 'source.troughline',
    comment: 'Made by syntaxes/generate.mts; do not edit.',
    patterns: [
      'comment',
      'string',
      'header',
      'declaration',
      'date',
      'clock',
      'quantity',
      'number',
      'reading',
      'action',
      'fact-of-words',
      'word-of-words',
      'fact',
      'word',
      'operator',
    ].map((each) => ({ include: `#${each}` })),
    repository: {
      comment: {
        patterns: [
          {
            name: 'comment.line.double-slash.troughline',
            begin: '//',
            end: '$',
            patterns: [
              {
                match: String.raw`(?<=//)\s*(allow)\s+(TL\d+(?:\s*,\s*TL\d+)*)`,
                captures: {
                  1: { name: 'keyword.other.allow.troughline' },
                  2: { name: 'constant.other.code.troughline' },
                },
              },
            ],
          },
          {
            name: 'comment.block.documentation.troughline',
            begin: String.raw`/\*\*(?!/)`,
            end: String.raw`\*/`,
          },
          { name: 'comment.block.troughline', begin: String.raw`/\*`, end: String.raw`\*/` },
        ],
      },
      // A mark of inches stands right after its number and opens nothing.
      string: { name: 'string.quoted.double.troughline', match: String.raw`(?<![0-9])"[^"\n\r]*"` },
      header: {
        // At the start of the line, or with the brace in sight: `liner X` inside a conveyor is a fact and no header.
        match: String.raw`(?:^|^\s+(?=[^{}"]*"?[^"{}]*"?[^{}"]*\{))(${any(blocks)})[ \t]+(?:(${name})(\.))?(${name})`,
        captures: {
          1: { name: 'keyword.control.block.troughline' },
          2: { name: 'entity.name.namespace.troughline' },
          3: { name: 'punctuation.separator.troughline' },
          4: { name: 'entity.name.type.troughline' },
        },
      },
      declaration: {
        match: String.raw`(?<![\w-])(${any(naming)})[ \t]+(${name})(?=[ \t]+(?:at|every|from|clock|[0-9"]|${any(words)})|[ \t]*$)`,
        captures: {
          1: { name: 'keyword.control.fact.troughline' },
          2: { name: 'entity.name.tag.troughline' },
        },
      },
      date: {
        name: 'constant.numeric.date.troughline',
        match: String.raw`(?<![\w.-])\d{4}-\d{1,2}-\d{1,2}(?![\w-])`,
      },
      clock: { name: 'constant.numeric.clock.troughline', match: String.raw`(?<![\w.])\d{1,2}:\d{2}(?!\d)` },
      quantity: {
        match: String.raw`(?<![\w.])([+-]?(?:\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?))[ \t]*(?!(?:${any([...facts, ...words, ...actions])})(?![\w-]))([A-Za-z%°µμ£$€][A-Za-z0-9%°µμ²³·$€]*(?:/[A-Za-z0-9°µμ²³%]+)*|"(?=\s|$)|1?/[A-Za-z°]+)`,
        captures: {
          1: { name: 'constant.numeric.troughline' },
          2: { name: 'keyword.other.unit.troughline' },
        },
      },
      number: {
        name: 'constant.numeric.troughline',
        match: String.raw`(?<![\w.-])[+-]?\d+(?:[.,]\d+)?(?![\w.])`,
      },
      action: { name: 'support.function.step.troughline', match: whole(actions) },
      // Several words first, so that `trough showing` is not read as `trough`.
      'fact-of-words': { name: 'keyword.control.fact.troughline', match: whole(facts.filter(several)) },
      'word-of-words': { name: 'constant.language.troughline', match: whole(words.filter(several)) },
      fact: { name: 'keyword.control.fact.troughline', match: whole(facts.filter((each) => !several(each))) },
      word: { name: 'constant.language.troughline', match: whole(words.filter((each) => !several(each))) },
      reading: {
        match: String.raw`^\s*(${name})(?=[ \t]+(?:thickness|colour|color|trough[ \t]+showing|not[ \t]+seen)(?![\w-]))`,
        captures: { 1: { name: 'variable.other.point.troughline' } },
      },
      operator: { name: 'keyword.operator.troughline', match: String.raw`±|\+/-` },
    },
  };
  return `${JSON.stringify(made, undefined, 2)}\n`;
}

function keywords() {
  const grammar = createTroughlineServices(EmptyFileSystem).troughline.Grammar;
  const blocks = new Set<string>();
  const facts = new Set<string>();
  const words = new Set<string>();
  const actions = new Set<string>();
  const naming = new Set<string>();
  for (const rule of grammar.rules) {
    if (!GrammarAST.isParserRule(rule)) continue;
    const found = AstUtils.streamAllContents(rule)
      .filter(GrammarAST.isKeyword)
      .filter(({ value }) => /^[a-z]/.test(value))
      .toArray();
    for (const [index, keyword] of found.entries()) {
      const assignment = AstUtils.getContainerOfType(keyword, GrammarAST.isAssignment);
      if (index === 0 && blockRules.includes(rule.name)) blocks.add(keyword.value);
      else if (rule.name === 'StepAction') actions.add(keyword.value);
      else if (assignment && assignment.feature !== 'key') words.add(keyword.value);
      else facts.add(keyword.value);
      if (index === 0 && namingRules.includes(rule.name)) naming.add(keyword.value);
    }
  }
  for (const block of blocks) facts.add(block); // inside another block they are facts
  for (const word of words) if (facts.has(word) || blocks.has(word)) words.delete(word);
  for (const action of actions) facts.delete(action);
  return {
    blocks: [...blocks],
    facts: [...facts],
    words: [...words],
    actions: [...actions],
    naming: [...naming],
  };
}

function several(keyword: string): boolean {
  return keyword.includes(' ');
}

/** Longest first, so that `hold-downs off` is not read as `hold-downs`; blanks between words may be any. */
function any(words: readonly string[]): string {
  return [...words]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.split(' ').join(String.raw`[ \t]+`))
    .join('|');
}

function whole(words: readonly string[]): string {
  return String.raw`(?<![\w-])(?:${any(words)})(?![\w-])`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(new URL('troughline.tmLanguage.json', import.meta.url), textMateGrammar());
}
