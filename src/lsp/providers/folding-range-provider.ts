// What can be folded: blocks, orders, comments of several lines, and `#region`-like marks in comments.

import { CstUtils } from 'langium';
import { FoldingRangeKind, type FoldingRange } from 'vscode-languageserver';
import * as ast from '../../language/generated/ast.js';
import { extentOf, type EstateDocument } from '../document.js';

export function foldingRanges(document: EstateDocument): FoldingRange[] {
  const ranges: FoldingRange[] = [];
  const fold = (start: number, end: number, kind?: FoldingRangeKind): void => {
    const startLine = document.positionAt(start).line;
    const endLine = document.positionAt(end).line - (kind ? 0 : 1); // the closing brace stays in sight
    if (endLine > startLine) ranges.push({ startLine, endLine, ...(kind ? { kind } : {}) });
  };
  const root = document.root();
  for (const block of root.blocks) {
    const extent = extentOf(block);
    if (extent && document.text[extent.end - 1] === '}') fold(extent.start, extent.end);
    if (ast.isJob(block)) {
      for (const order of block.facts.filter(ast.isOrder)) {
        const inner = extentOf(order);
        if (inner) fold(inner.start, inner.end);
      }
    }
  }
  if (root.$cstNode) {
    for (const leaf of CstUtils.flattenCst(root.$cstNode)) {
      if (leaf.hidden && leaf.tokenType.name === 'ML_COMMENT')
        fold(leaf.offset, leaf.end, FoldingRangeKind.Comment);
    }
  }
  return [...ranges, ...regions(document)];
}

function regions(document: EstateDocument): FoldingRange[] {
  const open: number[] = [];
  const found: FoldingRange[] = [];
  document.text.split('\n').forEach((line, number) => {
    if (/^\s*\/\/\s*#region\b/.test(line)) open.push(number);
    else if (/^\s*\/\/\s*#endregion\b/.test(line)) {
      const startLine = open.pop();
      if (startLine !== undefined) found.push({ startLine, endLine: number, kind: FoldingRangeKind.Region });
    }
  });
  return found;
}
