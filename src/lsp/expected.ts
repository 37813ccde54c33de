// What the grammar expects at a spot of a text. Only the enclosing block headers and the current line are looked at, in a
// shortened form: a slip further up never takes the proposals away, and the length of the text does not matter.

import { AstUtils, GrammarAST } from 'langium';
import { findFirstFeatures, findNextFeatures, type NextFeature } from 'langium/lsp';
import { languageServices } from './document.js';
import type { ConveyorName } from './document-symbols.js';

/** The blocks that are open at an offset, outermost first, and the text of the line so far. */
export interface Surroundings {
  readonly blocks: readonly { readonly keyword: string; readonly header: string; readonly start: number }[];
  readonly lineStart: number;
  readonly inComment: boolean;
  readonly inString: boolean;
}

const blockStart =
  /(?:^|[\n}{])[ \t]*(plant|liner|screw[ \t]+change|screw|conveyor|inspection|reline|job|order)\b[^\n{}]*$/;

export function surroundingsAt(text: string, offset: number): Surroundings {
  const blocks: { keyword: string; header: string; start: number }[] = [];
  let lineStart = 0;
  let inComment = false;
  let inString = false;
  let at = 0;
  let headerFrom = 0;
  while (at < offset) {
    const char = text[at];
    const two = text.slice(at, at + 2);
    inComment = false;
    inString = false;
    if (two === '//' || two === '/*') {
      const close = two === '//' ? text.indexOf('\n', at) : text.indexOf('*/', at + 2) + 2;
      const end = close < 2 && two === '/*' ? text.length : close < 0 ? text.length : close;
      if (offset <= end - (two === '/*' ? 1 : 0) || end === text.length) inComment = offset > at;
      if (inComment) break;
      at = end;
      continue;
    }
    if (char === '"') {
      // An inch mark stands right after a number; a string starts after a blank.
      const close = /\d/.test(text[at - 1] ?? '') ? at : text.indexOf('"', at + 1);
      const line = text.indexOf('\n', at);
      const end = close < 0 || (line >= 0 && line < close) ? (line < 0 ? text.length : line) : close + 1;
      if (close !== at && offset < end) {
        inString = true;
        break;
      }
      at = Math.max(end, at + 1);
      continue;
    }
    if (char === '\n') lineStart = headerFrom = at + 1;
    else if (char === '{') {
      const header = text.slice(headerFrom, at);
      const keyword = blockStart.exec(`\n${header}`)?.[1]?.replace(/[ \t]+/g, ' ') ?? '';
      blocks.push({ keyword, header, start: headerFrom });
      lineStart = headerFrom = at + 1;
    } else if (char === '}') {
      blocks.pop();
      lineStart = headerFrom = at + 1;
    }
    at += 1;
  }
  return { blocks, lineStart, inComment, inString };
}

const headers: Readonly<Record<string, string>> = {
  plant: 'plant X {',
  liner: 'liner X {',
  screw: 'screw X {',
  conveyor: 'conveyor X {',
  job: 'job X {',
  order: 'order {',
  inspection: 'inspection X 2000-01-01 meter 0 h {',
  reline: 'reline X 2000-01-01 meter 0 h {',
  'screw change': 'screw change X 2000-01-01 meter 0 h {',
};

/** A text with the same expectations at its end as the real one has at the start of `line`'s last token. */
export function shortened(blocks: Surroundings['blocks'], line: string): string {
  return `${blocks.map(({ keyword }) => headers[keyword] ?? '').join('\n')}\n${line}`;
}

export interface Expected {
  readonly feature: GrammarAST.AbstractElement;
  readonly rule: string;
  /** Starts a new block, fact, row or step. */
  readonly begins: boolean;
  readonly property?: string;
  /** Node type the name refers to, for a reference. */
  readonly refersTo?: string;
}

export function expectedAfter(head: string): readonly Expected[] {
  const services = languageServices();
  const { tokens, tokenIndex, elementStack } = services.parser.CompletionParser.parse(head);
  const next: NextFeature[] =
    tokenIndex === 0
      ? firstOfEntry()
      : findNextFeatures([elementStack.map((feature) => ({ feature }))], tokens.slice(tokenIndex));
  return next.map(({ feature, type }) => {
    const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
    const assignment = AstUtils.getContainerOfType(feature, GrammarAST.isAssignment);
    return {
      feature,
      rule,
      begins: rule === 'StepAction' || (type !== undefined && beginnings().has(rule)),
      ...(assignment ? { property: assignment.feature } : {}),
      ...(GrammarAST.isCrossReference(feature) ? { refersTo: feature.type.$refText } : {}),
    };
  });
}

function firstOfEntry(): NextFeature[] {
  const entry = languageServices().Grammar.rules.find((rule) => GrammarAST.isParserRule(rule) && rule.entry);
  if (!entry || !GrammarAST.isParserRule(entry)) return [];
  return findFirstFeatures(entry.definition)
    .flatMap((path) => path.at(-1) ?? [])
    .map((feature) => ({ type: 'Block', ...feature }));
}

let beginningRules: Set<string> | undefined;

/** Rules whose nodes stand on a line of their own. */
function beginnings(): Set<string> {
  if (beginningRules) return beginningRules;
  const unions = new Set([
    'Block',
    'PlantFact',
    'LinerFact',
    'ScrewFact',
    'ConveyorFact',
    'InspectionRow',
    'RelineFact',
    'ScrewChangeFact',
    'JobFact',
  ]);
  beginningRules = new Set(['Step']);
  for (const rule of languageServices().Grammar.rules) {
    if (!GrammarAST.isParserRule(rule) || !unions.has(rule.name)) continue;
    for (const call of AstUtils.streamAllContents(rule))
      if (GrammarAST.isRuleCall(call)) beginningRules.add(call.rule.$refText);
  }
  return beginningRules;
}

/** The conveyor a block is about, and the date of its record, from the header as far as it is typed. */
export function subjectOf(
  text: string,
  { blocks }: Surroundings,
): { conveyor?: ConveyorName; date?: string } {
  for (const { keyword, header, start } of blocks) {
    if (keyword === 'inspection' || keyword === 'reline' || keyword === 'screw change') {
      const [, name = '', date] =
        /(?:inspection|reline|change)[ \t]+([\w.-]+)(?:[ \t]+(\d{4}-\d{2}-\d{2}))?/.exec(header) ?? [];
      return { ...(name ? { conveyor: split(name) } : {}), ...(date ? { date } : {}) };
    }
    if (keyword === 'conveyor') {
      const name = /conveyor[ \t]+([\w-]+)/.exec(header)?.[1];
      return name ? { conveyor: { name } } : {};
    }
    if (keyword === 'job') {
      const name = /^[ \t]*conveyor[ \t]+([\w.-]+)/m.exec(text.slice(text.indexOf('{', start) + 1))?.[1];
      return name ? { conveyor: split(name) } : {};
    }
  }
  return {};
}

/** `Plant.Conveyor` or `Conveyor`. */
export function split(name: string): ConveyorName {
  const [first = '', second] = name.split('.');
  return second ? { plant: first, name: second } : { name: first };
}
