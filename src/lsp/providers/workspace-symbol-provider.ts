// Finds things of the whole estate by name, records by conveyor and date.

import { SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver';
import type { Session } from '../session.js';
import type { NameKind } from '../document-symbols.js';
import { locationOf } from './definition-provider.js';

const kinds: Readonly<Record<NameKind, SymbolKind>> = {
  plant: SymbolKind.Namespace,
  liner: SymbolKind.Class,
  screw: SymbolKind.Class,
  conveyor: SymbolKind.Module,
  job: SymbolKind.Package,
  outage: SymbolKind.Event,
  crew: SymbolKind.Object,
  'access unit': SymbolKind.Object,
  crane: SymbolKind.Object,
  layer: SymbolKind.Field,
  point: SymbolKind.Key,
  break: SymbolKind.Interface,
  section: SymbolKind.Field,
  access: SymbolKind.Field,
  isolation: SymbolKind.Field,
  hatch: SymbolKind.Field,
  'lifting point': SymbolKind.Field,
  'hold-down': SymbolKind.Field,
  brace: SymbolKind.Field,
  cover: SymbolKind.Field,
  step: SymbolKind.Method,
};

const most = 500;

export function workspaceSymbols(session: Session, query: string): WorkspaceSymbol[] {
  const declared = session
    .symbols()
    .declarations.filter((declaration) =>
      matches(`${declaration.owner?.name ?? ''} ${declaration.name}`, query),
    )
    .map((declaration): WorkspaceSymbol => ({
      name: declaration.name,
      kind: kinds[declaration.kind],
      containerName: declaration.owner
        ? `${declaration.kind} of ${declaration.owner.name}`
        : declaration.kind,
      location: locationOf(declaration),
    }));
  return [...declared, ...recordsLike(session, query)].slice(0, most);
}

const header =
  /^[ \t]*(inspection|reline|screw[ \t]+change|meter[ \t]+change)[ \t]+([\w.-]+)[ \t]+([\d./-]+)/gm;

/** Record headers, found by their first line so that thousands of inspections need no tree. */
function recordsLike(session: Session, query: string): WorkspaceSymbol[] {
  const found: WorkspaceSymbol[] = [];
  for (const document of session.documents()) {
    for (const match of document.text.matchAll(header)) {
      const [line, kind = '', conveyor = '', date = ''] = match;
      const name = `${conveyor} ${kind.replace(/\s+/g, ' ')} ${date}`;
      if (!matches(name, query)) continue;
      found.push({
        name,
        kind: SymbolKind.Event,
        location: { uri: document.uri, range: document.range(match.index, match.index + line.length) },
      });
      if (found.length >= most) return found;
    }
  }
  return found;
}

/** Letters of the query in order, in any case. */
function matches(name: string, query: string): boolean {
  let from = 0;
  const low = name.toLowerCase();
  for (const letter of query.toLowerCase()) {
    if (letter === ' ') continue;
    from = low.indexOf(letter, from) + 1;
    if (from === 0) return false;
  }
  return true;
}
