// Growing selections: the word, the fact, the block, the text.

import { CstUtils, type CstNode } from 'langium';
import type { Position, SelectionRange } from 'vscode-languageserver';
import type { EstateDocument } from '../document.js';

export function selectionRanges(document: EstateDocument, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => {
    const whole: SelectionRange = { range: document.range(0, document.text.length) };
    const root = document.root().$cstNode;
    const leaf = root && CstUtils.findLeafNodeAtOffset(root, document.offsetAt(position));
    if (!leaf) return whole;
    const nodes: CstNode[] = [];
    for (let node: CstNode | undefined = leaf; node; node = node.container) {
      const last = nodes.at(-1);
      if (!last || node.offset < last.offset || node.end > last.end) nodes.push(node);
    }
    return nodes.reduceRight<SelectionRange>((parent, node) => {
      const range = document.range(node.offset, node.end);
      return same(range, parent.range) ? parent : { range, parent };
    }, whole);
  });
}

function same(a: SelectionRange['range'], b: SelectionRange['range']): boolean {
  return (
    a.start.line === b.start.line &&
    a.start.character === b.start.character &&
    a.end.line === b.end.line &&
    a.end.character === b.end.character
  );
}
