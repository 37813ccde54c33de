// Growing selections: the word, the fact, the block, the text.

import { CstUtils, type CstNode } from 'langium';
import type { Position, SelectionRange } from 'vscode-languageserver';
import type { Text } from '../texts.js';

export function selectionRanges(text: Text, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => {
    const whole: SelectionRange = { range: text.range(0, text.text.length) };
    const root = text.root().$cstNode;
    const leaf = root && CstUtils.findLeafNodeAtOffset(root, text.offsetAt(position));
    if (!leaf) return whole;
    const nodes: CstNode[] = [];
    for (let node: CstNode | undefined = leaf; node; node = node.container) {
      const last = nodes.at(-1);
      if (!last || node.offset < last.offset || node.end > last.end) nodes.push(node);
    }
    return nodes.reduceRight<SelectionRange>((parent, node) => {
      const range = text.range(node.offset, node.end);
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
