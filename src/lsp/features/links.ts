// Photos named in inspections, as links. A path is taken from the folder of the text; one that leaves it is left alone,
// so that opening an estate from elsewhere cannot point at files of the reader's own.

import { CstUtils } from 'langium';
import { URI, Utils } from 'vscode-uri';
import type { DocumentLink } from 'vscode-languageserver';
import type { Text } from '../texts.js';
import { describe } from '../cursor.js';

export function documentLinks(text: Text): DocumentLink[] {
  const root = text.text.includes('photo') ? text.root().$cstNode : undefined;
  if (!root) return [];
  const links: DocumentLink[] = [];
  for (const leaf of CstUtils.flattenCst(root)) {
    if (leaf.tokenType.name !== 'STRING') continue;
    const cursor = describe(leaf);
    if (cursor?.rule !== 'Photo') continue;
    const path = leaf.text.slice(1, -1);
    if (
      path === '' ||
      path.startsWith('/') ||
      path.includes('\\') ||
      path.includes(':') ||
      path.split('/').includes('..')
    )
      continue;
    const target = Utils.joinPath(Utils.dirname(URI.parse(text.uri)), path);
    links.push({
      range: text.range(leaf.offset + 1, leaf.end - 1),
      target: target.toString(),
      tooltip: 'Open the photo',
    });
  }
  return links;
}
