// Names of the estate that fit: only crews of this plant, breaks of this conveyor, colours of the liner fitted on the day.

import { CompletionItemKind, type CompletionItem } from 'vscode-languageserver';
import { subjectOf, type Expected } from '../expected.js';
import type { Declaration, NameKind } from '../document-symbols.js';
import { pointNames } from '../point-names.js';
import { shortestName } from '../shortest-name.js';
import { conveyorsHere, type CompletionContext } from './completion-context.js';

const referred: Readonly<Record<string, NameKind>> = {
  Plant: 'plant',
  Liner: 'liner',
  Screw: 'screw',
  Conveyor: 'conveyor',
  Outage: 'outage',
  Crew: 'crew',
  AccessUnit: 'access unit',
  Crane: 'crane',
  Job: 'job',
  Break: 'break',
  Step: 'step',
};

const icons: Readonly<Partial<Record<NameKind, CompletionItemKind>>> = {
  plant: CompletionItemKind.Module,
  liner: CompletionItemKind.Class,
  screw: CompletionItemKind.Class,
  conveyor: CompletionItemKind.Unit,
  outage: CompletionItemKind.Event,
  step: CompletionItemKind.Method,
  layer: CompletionItemKind.Color,
  point: CompletionItemKind.Property,
};

export function nameItems(expected: Expected, place: CompletionContext): CompletionItem[] {
  const kind = referred[expected.refersTo ?? ''];
  if (!kind) return [];
  const { session, document, around } = place;
  const names = session.symbols();
  const conveyors = conveyorsHere(place);
  const all = names.declared(kind);
  let fitting: readonly Declaration[] = all;
  if (kind === 'break') fitting = all.filter(({ owner }) => owner && conveyors.includes(owner));
  if (kind === 'outage' || kind === 'crew' || kind === 'access unit' || kind === 'crane') {
    const plants = conveyors.map((conveyor) => names.plantOf(conveyor));
    if (conveyors.length > 0) fitting = all.filter(({ owner }) => plants.includes(owner));
  }
  if (kind === 'step') {
    const start = around.blocks.at(-1)?.start ?? 0;
    const here = document.offsetAt(place.range.start);
    fitting = all.filter(
      (step) =>
        step.document === document &&
        step.start >= start &&
        document.text.slice(start, step.start).split('}').length === 1 &&
        step.start !== here,
    );
  }
  return fitting.map((declaration) => ({
    label: kind === 'conveyor' ? shortestName(session, declaration) : declaration.name,
    kind: icons[kind] ?? CompletionItemKind.Variable,
    detail: `${kind}${titleOf(declaration)}`,
    textEdit: {
      range: place.range,
      newText: kind === 'conveyor' ? shortestName(session, declaration) : declaration.name,
    },
  }));
}

function titleOf(declaration: Declaration): string {
  const title = 'title' in declaration.node ? declaration.node.title : undefined;
  return typeof title === 'string' && title !== '' ? `: ${title.replace(/^"|"$/g, '')}` : '';
}

/** Places for a plain word that means something: points, colours, weekdays, materials. */
export function wordItems(expected: Expected, place: CompletionContext): CompletionItem[] {
  const item = (label: string, kind: CompletionItemKind, detail?: string): CompletionItem => ({
    label,
    kind,
    ...(detail ? { detail } : {}),
    textEdit: { range: place.range, newText: label },
  });
  const names = place.session.symbols();
  if (expected.property === 'point' && (expected.rule === 'Reading' || expected.rule === 'AsFitted')) {
    const conveyors = conveyorsHere(place);
    return names
      .declared('point')
      .filter(({ owner }) => owner && conveyors.includes(owner))
      .flatMap((point) =>
        pointNames(point).map((name) =>
          item(name, CompletionItemKind.Property, `point of ${point.owner?.name ?? ''}`),
        ),
      );
  }
  if (expected.property === 'colour') {
    const { date } = subjectOf(place.document.text, place.around);
    const [liner] = conveyorsHere(place).flatMap((conveyor) => names.linersOf(conveyor, date));
    return names
      .declared('layer')
      .filter(({ owner }) => owner === liner)
      .map((layer, index) =>
        item(layer.name, CompletionItemKind.Color, `layer ${index + 1} of ${liner?.name ?? ''}`),
      );
  }
  if (expected.property === 'days')
    return ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((day) =>
      item(day, CompletionItemKind.EnumMember),
    );
  if (expected.rule === 'Material')
    return ['PE1000'].map((material) => item(material, CompletionItemKind.Value));
  if (expected.rule === 'Bolt' || expected.rule === 'DrivePlate')
    return ['M8', 'M10', 'M12', 'M16', 'M20', 'M24'].map((size) => item(size, CompletionItemKind.Value));
  return [];
}
