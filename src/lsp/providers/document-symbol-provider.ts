// The outline of a text: its blocks and the parts in them. Half-typed blocks keep their place as far as they were read.

import type { AstNode } from 'langium';
import { SymbolKind, type DocumentSymbol } from 'vscode-languageserver';
import * as ast from '../../language/generated/ast.js';
import { extentOf, type EstateDocument } from '../document.js';

export function outline(document: EstateDocument): DocumentSymbol[] {
  return document.root().blocks.flatMap((block) => symbolOf(document, block) ?? []);
}

function symbolOf(document: EstateDocument, node: AstNode): DocumentSymbol | undefined {
  const extent = extentOf(node);
  const label = labelOf(node);
  if (!extent || !label) return undefined;
  const range = document.range(extent.start, extent.end);
  const firstLine = document.text.indexOf('\n', extent.start);
  const selectionEnd = firstLine < 0 ? extent.end : Math.min(firstLine, extent.end);
  const children = childrenOf(node).flatMap((child) => symbolOf(document, child) ?? []);
  return {
    name: label.name,
    ...(label.detail ? { detail: label.detail } : {}),
    kind: label.kind,
    range,
    selectionRange: document.range(extent.start, Math.max(extent.start, selectionEnd)),
    ...(children.length > 0 ? { children } : {}),
  };
}

interface Label {
  readonly name: string;
  readonly detail?: string | undefined;
  readonly kind: SymbolKind;
}

function childrenOf(node: AstNode): readonly AstNode[] {
  if (ast.isPlant(node) || ast.isLiner(node) || ast.isConveyor(node) || ast.isJob(node)) return node.facts;
  if (ast.isOrder(node)) return node.steps;
  return []; // readings stay out: an inspection can have thousands, and they are the text itself
}

/** What the outline calls a node; undefined for facts that are not things. */
export function labelOf(node: AstNode): Label | undefined {
  if (ast.isPlant(node)) return named(node, SymbolKind.Namespace);
  if (ast.isLiner(node)) return named(node, SymbolKind.Class, `liner${titled(node.title)}`);
  if (ast.isScrew(node)) return named(node, SymbolKind.Class, `screw${titled(node.title)}`);
  if (ast.isConveyor(node)) return named(node, SymbolKind.Module);
  if (ast.isJob(node)) return named(node, SymbolKind.Package);
  if (ast.isInspection(node)) return record(node, `inspection ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isReline(node)) return record(node, `reline ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isPanelsMoved(node))
    return record(node, `panels moved ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isScrewChange(node))
    return record(node, `screw change ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isMeterChange(node))
    return record(node, `meter change ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isCorrection(node)) return record(node, `correction ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isServiced(node)) return record(node, `serviced ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isPatch(node)) return record(node, `patch ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isDriveChange(node))
    return record(node, `drive change ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isDutyChange(node)) return record(node, `duty from ${node.date ?? ''}`.trim(), SymbolKind.Event);
  if (ast.isOutage(node))
    return named(node, SymbolKind.Event, `outage ${node.from ?? ''} to ${node.to ?? ''}`);
  if (ast.isCrew(node)) return named(node, SymbolKind.Object, 'crew');
  if (ast.isAccessUnit(node)) return named(node, SymbolKind.Object, 'access unit');
  if (ast.isCrane(node)) return named(node, SymbolKind.Object, 'crane');
  if (ast.isLayer(node)) return named(node, SymbolKind.Field, node.thickness);
  if (ast.isSection(node)) return named(node, SymbolKind.Field, `section ${node.length ?? ''}`);
  if (ast.isBreak(node))
    return named(node, SymbolKind.Interface, `${node.kind ?? 'break'} at ${node.from ?? ''}`);
  if (ast.isPoint(node))
    return named(
      node,
      SymbolKind.Key,
      node.step ? `row of points every ${node.step}` : `${node.from ?? ''} ${node.clock ?? ''}`,
    );
  if (ast.isAccess(node)) return named(node, SymbolKind.Field, `access ${node.kind ?? ''}`);
  if (ast.isIsolation(node)) return named(node, SymbolKind.Field, `isolation ${node.kind ?? ''}`);
  if (ast.isHatch(node)) return named(node, SymbolKind.Field, 'hatch');
  if (ast.isLiftingPoint(node)) return named(node, SymbolKind.Field, 'lifting point');
  if (ast.isOrder(node)) return { name: 'order', kind: SymbolKind.Array };
  if (ast.isStep(node) && node.action)
    return {
      name: node.name ? `${node.name}: ${node.action}` : node.action,
      detail: node.stretch?.$cstNode?.text ?? node.gate?.$refText,
      kind: SymbolKind.Method,
    };
  return undefined;
}

function named(
  node: AstNode & { name?: string; title?: string },
  kind: SymbolKind,
  detail?: string,
): Label | undefined {
  return node.name ? { name: node.name, detail: detail ?? node.title, kind } : undefined;
}

function record(node: AstNode & { conveyor?: { $refText?: string } }, name: string, kind: SymbolKind): Label {
  return { name: `${node.conveyor?.$refText ?? ''} ${name}`.trim(), kind, detail: undefined };
}

function titled(title: string | undefined): string {
  return title ? `, ${title}` : '';
}
