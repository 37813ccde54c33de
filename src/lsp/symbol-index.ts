// Which name is declared where, and used where. Read from the trees of the texts, broken ones too, and independent of
// the model, so that definition, references and rename work while half the estate is still being typed.
// A folder is an estate: liners, screws, plants, conveyors and jobs are known everywhere; points, breaks and sections
// belong to their conveyor, layers to their liner, crews, outages and access units to their plant, steps to their order.

import {
  symbolsIn,
  isDeclaring,
  type ConveyorName,
  type Declaration,
  type LinerFitted,
  type NameKind,
  type Reference,
} from './document-symbols.js';
import type { EstateDocument } from './document.js';

export interface ResolvedSymbol {
  readonly start: number;
  readonly end: number;
  readonly name: string;
  readonly declarations: readonly Declaration[];
  readonly reference?: Reference;
}

export interface SymbolIndex {
  readonly declarations: readonly Declaration[];
  declared(kind: NameKind): readonly Declaration[];
  /** The name at an offset of a text, with what it stands for; no declarations where it stands for nothing. */
  at(document: EstateDocument, offset: number): ResolvedSymbol | undefined;
  resolve(reference: Reference): readonly Declaration[];
  referencesTo(declaration: Declaration): readonly Reference[];
  /** References in one document, in text order. */
  referencesIn(document: EstateDocument): readonly Reference[];
  conveyorOf(name: ConveyorName): readonly Declaration[];
  /** The liner declarations a conveyor has had, the one fitted at the date first. */
  linersOf(conveyor: Declaration, date: string | undefined): readonly Declaration[];
  plantOf(conveyor: Declaration): Declaration | undefined;
}

export function symbolIndexOf(documents: readonly EstateDocument[]): SymbolIndex {
  const declaring = documents.filter(isDeclaring);
  const declarations = declaring.flatMap((document) => symbolsIn(document).declarations);
  const estate = declaredEstate(
    declarations,
    declaring.flatMap((document) => symbolsIn(document).fitted),
  );
  const resolve = (reference: Reference): readonly Declaration[] => resolveIn(estate, reference);
  return {
    ...estate,
    declarations,
    resolve,
    referencesTo: (declaration) =>
      documents
        .filter((document) => document.text.includes(declaration.name))
        .flatMap((document) => symbolsIn(document).references())
        .filter(
          (reference) =>
            (reference.kind === declaration.kind || reference.mayBePart === true) &&
            answersTo(declaration, reference.name) &&
            resolve(reference).includes(declaration),
        ),
    referencesIn: (document) => symbolsIn(document).references(),
    at(document, offset) {
      const here = (span: { start: number; end: number }): boolean =>
        span.start <= offset && offset <= span.end;
      const symbols = symbolsIn(document);
      // The list above holds the declarations of this very text, unless it is not part of the estate.
      const declaration = symbols.declarations.find(here);
      if (declaration) {
        const { start, end, name } = declaration;
        return { start, end, name, declarations: [declaration] };
      }
      const reference = symbols.references().find(here);
      if (!reference) return undefined;
      const { start, end, name } = reference;
      return { start, end, name, declarations: resolve(reference), reference };
    },
  };
}

/** What is declared, and how conveyors hang together with plants and liners. */
type DeclaredEstate = Pick<SymbolIndex, 'declared' | 'plantOf' | 'conveyorOf' | 'linersOf'>;

function declaredEstate(
  declarations: readonly Declaration[],
  fitted: readonly LinerFitted[],
): DeclaredEstate {
  const byKind = new Map<NameKind, Declaration[]>();
  for (const declaration of declarations) {
    const list = byKind.get(declaration.kind);
    if (list) list.push(declaration);
    else byKind.set(declaration.kind, [declaration]);
  }
  const declared = (kind: NameKind): readonly Declaration[] => byKind.get(kind) ?? [];

  const plantOf = (conveyor: Declaration): Declaration | undefined => {
    const plants = declared('plant');
    if (conveyor.plant !== undefined) return plants.find((plant) => plant.name === conveyor.plant);
    return plants.length === 1 ? plants[0] : undefined;
  };

  const conveyorOf = (wanted: ConveyorName): readonly Declaration[] =>
    declared('conveyor').filter(
      (conveyor) =>
        conveyor.name === wanted.name &&
        (wanted.plant === undefined || plantOf(conveyor)?.name === wanted.plant),
    );

  const linersOf = (conveyor: Declaration, date: string | undefined): readonly Declaration[] => {
    const history = fitted
      .filter((fit) => conveyorOf(fit.conveyor).includes(conveyor))
      .sort((a, b) => (a.date ?? '').localeCompare(b.date ?? ''));
    const before = history.filter((fit) => date === undefined || (fit.date ?? '') <= date).reverse();
    const after = history.filter((fit) => !before.includes(fit));
    const names = [...new Set([...before, ...after].map((fit) => fit.liner))];
    return names.flatMap((name) => declared('liner').filter((liner) => liner.name === name));
  };
  return { declared, plantOf, conveyorOf, linersOf };
}

function resolveIn(
  { declared, plantOf, conveyorOf, linersOf }: DeclaredEstate,
  reference: Reference,
): readonly Declaration[] {
  const called = (declaration: Declaration): boolean => answersTo(declaration, reference.name);
  const conveyors = reference.conveyor ? conveyorOf(reference.conveyor) : [];
  switch (reference.kind) {
    case 'plant':
    case 'liner':
    case 'screw':
    case 'job':
      return declared(reference.kind).filter(called);
    case 'conveyor':
      return reference.conveyor ? conveyors : declared('conveyor').filter(called);
    case 'outage':
    case 'crew':
    case 'access unit':
    case 'crane': {
      const plants = new Set(conveyors.map(plantOf));
      const all = declared(reference.kind).filter(called);
      const own = all.filter((declaration) => plants.has(declaration.owner));
      return own.length > 0 ? own : conveyors.length === 0 ? all : [];
    }
    case 'layer':
      for (const liner of conveyors.flatMap((conveyor) => linersOf(conveyor, reference.date))) {
        const layers = declared('layer').filter(
          (layer) => layer.owner === liner && layer.name === reference.name,
        );
        if (layers.length > 0) return layers;
      }
      return [];
    case 'step':
      return declared('step').filter((step) => called(step) && step.node.$container === reference.order);
    default: {
      const ofKind = (kind: NameKind): readonly Declaration[] =>
        declared(kind).filter(
          (part) => called(part) && part.owner !== undefined && conveyors.includes(part.owner),
        );
      const kinds = [reference.kind, ...(reference.mayBePart ? partsWithAPlace : [])];
      return kinds.map(ofKind).find((found) => found.length > 0) ?? [];
    }
  }
}

/** Parts that a record may name as its place, as the model looks for them (language/assembly/seen-places.ts). */
const partsWithAPlace: readonly NameKind[] = ['break', 'hatch', 'cover', 'hold-down', 'brace'];

/** True for the declared name and, for a row of points, for its numbered names. */
export function answersTo(declaration: Declaration, name: string): boolean {
  if (!declaration.row) return declaration.name === name;
  return name.startsWith(declaration.name) && /^[1-9]\d*$/.test(name.slice(declaration.name.length));
}
