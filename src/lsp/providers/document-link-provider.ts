// Photos named in inspections, as links. A path is taken from the folder of the text; one that leaves it is left alone,
// so that opening an estate from elsewhere cannot point at files of the reader's own.

import { CstUtils } from 'langium';
import type { DocumentLink } from 'vscode-languageserver';
import type { EstateDocument } from '../document.js';
import { describe } from '../cursor.js';
import { photoAddress } from '../photo-address.js';

export function documentLinks(document: EstateDocument): DocumentLink[] {
  const root = document.text.includes('photo') ? document.root().$cstNode : undefined;
  if (!root) return [];
  const links: DocumentLink[] = [];
  for (const leaf of CstUtils.flattenCst(root)) {
    if (leaf.tokenType.name !== 'STRING') continue;
    const cursor = describe(leaf);
    if (cursor?.property !== 'photo' && !(cursor?.rule === 'Photo' && cursor.property === 'path')) continue;
    const path = leaf.text.slice(1, -1);
    const target = photoAddress(document.uri, path);
    if (target === undefined) continue;
    links.push({
      range: document.range(leaf.offset + 1, leaf.end - 1),
      target,
      tooltip: 'Open the photo',
    });
  }
  return links;
}
