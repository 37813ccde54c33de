// What stands at an offset of a text: the token, the tree node it belongs to, and its part in that node.

import { AstUtils, CstUtils, GrammarAST, type AstNode, type LeafCstNode } from 'langium';
import { isOwnToken, writtenAs } from '../language/row-starts.js';
import type { EstateDocument } from './document.js';

export interface Cursor {
  readonly leaf: LeafCstNode;
  readonly node: AstNode;
  /** Grammar rule a keyword stands in; for a value the rule that holds it, not `Quantity` itself. */
  readonly rule: string;
  /** Set where the token is a keyword. */
  readonly keyword?: string;
  /** The property of the node that the token fills. */
  readonly property?: string;
}

/** The token at or just before an offset; undefined between tokens. */
export function cursorAt(document: EstateDocument, offset: number): Cursor | undefined {
  const root = document.root().$cstNode;
  const leaf = root && (CstUtils.findLeafNodeAtOffset(root, offset) ?? before(root, offset));
  return leaf && describe(leaf);
}

function before(
  root: Parameters<typeof CstUtils.findLeafNodeAtOffset>[0],
  offset: number,
): LeafCstNode | undefined {
  const leaf = offset > 0 ? CstUtils.findLeafNodeAtOffset(root, offset - 1) : undefined;
  return leaf && leaf.end === offset ? leaf : undefined;
}

/** Undefined for a comment: it belongs to no rule. */
export function describe(leaf: LeafCstNode): Cursor | undefined {
  if (leaf.hidden) return undefined;
  const source = leaf.grammarSource;
  const node = leaf.astNode;
  if (!source) return undefined;
  const assignment = assignmentOf(leaf);
  const holder = GrammarAST.isKeyword(source) ? source : (assignment ?? source);
  const rule = AstUtils.getContainerOfType(holder, GrammarAST.isParserRule)?.name ?? node.$type;
  const property = assignment?.feature;
  const keyword = GrammarAST.isKeyword(source)
    ? source.value
    : isOwnToken(leaf.tokenType)
      ? writtenAs(leaf.tokenType.name)
      : undefined;
  return {
    leaf,
    node,
    rule,
    ...(keyword === undefined ? {} : { keyword }),
    ...(property === undefined ? {} : { property }),
  };
}

/** As much of a CST node as is looked at. */
interface Contained {
  readonly grammarSource?: GrammarAST.AbstractElement | undefined;
  readonly container?: unknown;
}

/** The assignment a token fills, looking out through the data type rules (Quantity, Day) that wrap single tokens. */
function assignmentOf(leaf: LeafCstNode): GrammarAST.Assignment | undefined {
  let at: Contained | undefined = leaf;
  for (let depth = 0; at && depth < 4; depth += 1) {
    const source = at.grammarSource;
    const assignment = source && AstUtils.getContainerOfType(source, GrammarAST.isAssignment);
    if (assignment) return assignment;
    const rule = source && AstUtils.getContainerOfType(source, GrammarAST.isParserRule);
    if (!rule || (rule.dataType === undefined && !isWrapper(rule.name))) return undefined;
    at = at.container as Contained | undefined; // a CST node's container is a CST node
  }
  return undefined;
}

function isWrapper(rule: string): boolean {
  return (
    rule === 'Quantity' ||
    rule === 'Numeral' ||
    rule === 'Day' ||
    rule === 'ClockTime' ||
    rule === 'QualifiedName' ||
    rule === 'StepAction'
  );
}
