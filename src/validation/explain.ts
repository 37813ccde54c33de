// A rule told to a person: for `explain CODE` on the command line, and in Markdown for hovers and rule pages.

import { ruleOf, rules } from './catalogue.js';
import { markedLines, shownLines } from './example.js';
import type { Rule } from './rule.js';
import type { RuleThreshold } from './threshold.js';

/** Plain text, lines of at most 88 characters; undefined for a code that does not exist. */
export function explain(code: string): string | undefined {
  const rule = ruleOf(code);
  if (!rule) return undefined;
  return [
    `${rule.code} ${rule.title} (${rule.severity})`,
    '',
    ...wrap(`Why it matters: ${rule.why}`),
    '',
    ...wrap(`What to do: ${rule.todo}`),
    '',
    ...(rule.threshold ? [...wrap(thresholdWords(rule, rule.threshold)), ''] : []),
    'Reported:',
    ...indented(pointed(markedLines(rule, 'bad'))),
    '',
    'Right:',
    ...indented(shownLines(rule, 'good')),
    '',
  ].join('\n');
}

/** Markdown with code blocks in the language; undefined for a code that does not exist. */
export function explainInMarkdown(code: string): string | undefined {
  const rule = ruleOf(code);
  if (!rule) return undefined;
  return [
    `### ${rule.code}: ${rule.title}`,
    `*${rule.severity}*`,
    `**Why it matters.** ${rule.why}`,
    `**What to do.** ${rule.todo}`,
    ...(rule.threshold ? [thresholdWords(rule, rule.threshold)] : []),
    `Reported:\n\n${fenced(shownLines(rule, 'bad'))}`,
    `Right:\n\n${fenced(shownLines(rule, 'good'))}`,
    '',
  ].join('\n\n');
}

function thresholdWords({ code }: Rule, { usual, what, basis }: RuleThreshold): string {
  return (
    `Threshold: ${usual}. ${what} Where it comes from: ${basis}. ` +
    `A plant sets its own in its block: \`threshold ${code} ${usual} "why"\`.`
  );
}

/** One line a rule, for listing them all. */
export function listRules(): string {
  return rules.map((rule) => `${rule.code}  ${rule.severity.padEnd(11)}  ${rule.title}`).join('\n') + '\n';
}

/** Codes that start as the given text does, for completion and "did you mean". */
export function codesLike(text: string): readonly Rule['code'][] {
  const start = text.toUpperCase();
  return rules.map((rule) => rule.code).filter((code) => code.startsWith(start));
}

const width = 88;

/** Lines of at most 88 characters, for a terminal. */
export function wrap(text: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

/** The marked spot underlined. */
function pointed(text: string): string {
  return text
    .split('\n')
    .flatMap((line) => {
      const start = line.indexOf('«');
      if (start < 0) return [line.replace('»', '')];
      const length = Math.max(1, line.indexOf('»') - start - 1);
      return [line.replace(/[«»]/g, ''), `${' '.repeat(start)}${'^'.repeat(length)}`];
    })
    .join('\n');
}

function indented(text: string): string[] {
  return text.split('\n').map((line) => (line === '' ? '' : `    ${line}`));
}

function fenced(text: string): string {
  return `\`\`\`troughline\n${text}\n\`\`\``;
}
