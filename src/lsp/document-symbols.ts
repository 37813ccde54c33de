// What a single text declares and refers to, read from its tree; the same for a broken tree, as far as it was read. Declarations
// are looked for at once, references only when something asks: most texts of a large estate are inspections.

import { AstUtils, GrammarUtils, type AstNode } from 'langium';
import * as ast from '../language/generated/ast.js';
import type { EstateDocument } from './document.js';

export type NameKind =
  | 'plant'
  | 'liner'
  | 'screw'
  | 'conveyor'
  | 'job'
  | 'outage'
  | 'crew'
  | 'access unit'
  | 'crane'
  | 'layer'
  | 'point'
  | 'break'
  | 'section'
  | 'access'
  | 'isolation'
  | 'hatch'
  | 'lifting point'
  | 'hold-down'
  | 'brace'
  | 'cover'
  | 'step';

export interface Declaration {
  readonly kind: NameKind;
  readonly name: string;
  readonly document: EstateDocument;
  /** The name itself. */
  readonly start: number;
  readonly end: number;
  /** The whole block or fact. */
  readonly node: AstNode;
  readonly owner?: Declaration;
  /** A row of numbered points: P stands for P1, P2, … */
  readonly row: boolean;
  /** The plant a conveyor names. */
  readonly plant?: string;
}

/** A conveyor as a record names it. */
export interface ConveyorName {
  readonly plant?: string;
  readonly name: string;
}

export interface Reference {
  readonly kind: NameKind;
  readonly name: string;
  readonly document: EstateDocument;
  readonly start: number;
  readonly end: number;
  /** The conveyor the record or job is about. */
  readonly conveyor?: ConveyorName;
  /** The date of the record, as written. */
  readonly date?: string;
  /** For a step: the order it stands in. */
  readonly order?: AstNode;
  /** For the place of what was seen or done: a part by its name, where no point is called so. */
  readonly mayBePart?: true;
}

/** Which liner a conveyor has from which record on; the first has no date. */
export interface LinerFitted {
  readonly conveyor: ConveyorName;
  readonly date?: string;
  readonly liner: string;
}

/** Most texts of a large estate are inspections, which declare nothing and are then never parsed for names. */
const declares = /^[ \t]*(plant|liner|screw|conveyor|job|reline)\b/m;

const declaring = new WeakMap<EstateDocument, boolean>();

export function isDeclaring(document: EstateDocument): boolean {
  const known = declaring.get(document);
  if (known !== undefined) return known;
  const found = declares.test(document.text);
  declaring.set(document, found);
  return found;
}

export interface DocumentSymbols {
  readonly declarations: readonly Declaration[];
  readonly fitted: readonly LinerFitted[];
  references(): readonly Reference[];
}

const extracts = new WeakMap<EstateDocument, DocumentSymbols>();

export function symbolsIn(document: EstateDocument): DocumentSymbols {
  const known = extracts.get(document);
  if (known) return known;
  let references: readonly Reference[] | undefined;
  const made: DocumentSymbols = {
    ...declarationsIn(document),
    references: () => (references ??= collectReferences(document)),
  };
  extracts.set(document, made);
  return made;
}

function declarationsIn(document: EstateDocument): Pick<DocumentSymbols, 'declarations' | 'fitted'> {
  const declarations: Declaration[] = [];
  const fitted: LinerFitted[] = [];
  const declare = (
    kind: NameKind,
    node: AstNode & { name?: string },
    more: Partial<Declaration> = {},
  ): Declaration | undefined => {
    const cst = GrammarUtils.findNodeForProperty(node.$cstNode, 'name');
    if (!cst || !node.name) return undefined;
    const made: Declaration = {
      kind,
      name: node.name,
      document,
      start: cst.offset,
      end: cst.end,
      node,
      row: false,
      ...more,
    };
    declarations.push(made);
    return made;
  };
  const owned = (owner: Declaration | undefined): Partial<Declaration> => (owner ? { owner } : {});

  for (const block of document.root().blocks) {
    switch (block.$type) {
      case ast.Plant.$type: {
        const plant = declare('plant', block);
        for (const fact of block.facts) {
          if (ast.isOutage(fact)) declare('outage', fact, owned(plant));
          else if (ast.isCrew(fact)) declare('crew', fact, owned(plant));
          else if (ast.isAccessUnit(fact)) declare('access unit', fact, owned(plant));
          else if (ast.isCrane(fact)) declare('crane', fact, owned(plant));
        }
        break;
      }
      case ast.Liner.$type: {
        const liner = declare('liner', block);
        for (const fact of block.facts) if (ast.isLayer(fact)) declare('layer', fact, owned(liner));
        break;
      }
      case ast.Screw.$type:
        declare('screw', block);
        break;
      case ast.Conveyor.$type: {
        const plant = block.facts.find(ast.isPlantUse)?.plant?.$refText;
        const conveyor = declare('conveyor', block, plant ? { plant } : {});
        for (const fact of block.facts) {
          const kind = partKinds[fact.$type];
          if (kind)
            declare(kind, fact, { ...owned(conveyor), row: ast.isPoint(fact) && fact.step !== undefined });
          else if (ast.isConveyorLiner(fact) && conveyor && fact.liner?.$refText) {
            fitted.push({
              conveyor: { name: conveyor.name, ...(plant ? { plant } : {}) },
              liner: fact.liner.$refText,
            });
          }
        }
        break;
      }
      case ast.Reline.$type: {
        const use = block.facts.find(ast.isLinerUse);
        const conveyor = conveyorName(block.conveyor?.$refText);
        if (use?.liner?.$refText && conveyor)
          fitted.push({ conveyor, date: block.date, liner: use.liner.$refText });
        break;
      }
      case ast.Job.$type: {
        const job = declare('job', block);
        for (const fact of block.facts) {
          if (ast.isOrder(fact)) for (const step of fact.steps) declare('step', step, owned(job));
        }
        break;
      }
      default: // records declare nothing
        break;
    }
  }
  return { declarations, fitted };
}

const partKinds: Readonly<Record<string, NameKind>> = {
  [ast.Section.$type]: 'section',
  [ast.Break.$type]: 'break',
  [ast.Point.$type]: 'point',
  [ast.Access.$type]: 'access',
  [ast.Isolation.$type]: 'isolation',
  [ast.Hatch.$type]: 'hatch',
  [ast.LiftingPoint.$type]: 'lifting point',
  [ast.HoldDown.$type]: 'hold-down',
  [ast.Brace.$type]: 'brace',
  [ast.Cover.$type]: 'cover',
};

function collectReferences(document: EstateDocument): readonly Reference[] {
  const found = referenceList(document);
  for (const block of document.root().blocks) {
    switch (block.$type) {
      case ast.Plant.$type:
        for (const fact of block.facts)
          if (ast.isOrderedStock(fact) || ast.isShelfStock(fact))
            found.add(fact.item === 'spiral' || fact.item === 'spirals' ? 'screw' : 'liner', fact, 'liner');
          else if (ast.isShelfPart(fact) || ast.isOrderedPart(fact)) found.addConveyor(fact);
        break;
      case ast.Conveyor.$type:
        for (const fact of block.facts) {
          if (ast.isPlantUse(fact)) found.add('plant', fact, 'plant');
          else if (ast.isConveyorLiner(fact)) {
            found.add('liner', fact, 'liner');
            found.addRuns(fact, about(conveyorName(block.name)));
          } else if (ast.isScrewUse(fact)) found.add('screw', fact, 'screw');
          else if (ast.isSafeguard(fact)) found.addPlaces(fact, about(conveyorName(block.name)));
        }
        break;
      case ast.Inspection.$type: {
        const scope = about(found.addConveyor(block), block.date);
        for (const row of block.rows) {
          if (ast.isReading(row)) {
            found.add('point', row, 'point', scope);
            found.add('layer', row, 'colour', scope);
          } else found.addPlaces(row, scope);
        }
        break;
      }
      case ast.Reline.$type: {
        const scope = about(found.addConveyor(block), block.date);
        for (const fact of block.facts) {
          if (ast.isLinerUse(fact)) found.add('liner', fact, 'liner');
          else if (ast.isAsFitted(fact) || ast.isOldPanel(fact)) found.add('point', fact, 'point', scope);
          else if (ast.isScope(fact) || ast.isPanelsFitted(fact) || ast.isPanelThickness(fact))
            found.addRuns(fact, scope);
          else if (tellsPlace(fact)) found.addPlaces(fact, scope);
        }
        break;
      }
      case ast.PanelsMoved.$type: {
        const scope = about(found.addConveyor(block), block.date);
        for (const fact of block.facts) {
          if (ast.isAsFitted(fact)) found.add('point', fact, 'point', scope);
          else if (ast.isPanelMove(fact)) found.addRuns(fact, scope);
          else if (tellsPlace(fact)) found.addPlaces(fact, scope);
        }
        break;
      }
      case ast.ScrewChange.$type: {
        const scope = about(found.addConveyor(block), block.date);
        for (const fact of block.facts) {
          if (ast.isScrewUse(fact)) found.add('screw', fact, 'screw');
          else if (tellsPlace(fact)) found.addPlaces(fact, scope);
        }
        break;
      }
      case ast.Correction.$type: {
        const scope = about(found.addConveyor(block), block.read);
        found.add('point', block, 'point', scope);
        if (block.seen) found.addPlaces(block.seen, scope);
        break;
      }
      case ast.Serviced.$type:
        found.addPlaces(block, about(found.addConveyor(block), block.date));
        break;
      case ast.Patch.$type:
      case ast.MeterChange.$type:
      case ast.DutyChange.$type:
      case ast.DriveChange.$type:
        found.addConveyor(block);
        break;
      case ast.Job.$type: {
        const of = block.facts.find(ast.isJobConveyor);
        const scope = about(of && found.addConveyor(of));
        for (const fact of block.facts) addJobFact(found, fact, scope);
        break;
      }
      default: // specifications refer to nothing
        break;
    }
  }
  return found.references.sort((a, b) => a.start - b.start);
}

interface ReferenceList {
  readonly references: Reference[];
  add(kind: NameKind, node: AstNode, property: string, more?: Partial<Reference>): void;
  /** The conveyor and, where it is written `Plant.Name`, the plant. */
  addConveyor(node: AstNode): ConveyorName | undefined;
  /** Breaks by which runs are named, anywhere below the node. */
  addRuns(node: AstNode, scope: Partial<Reference>): void;
  /** Where something was seen or done, or what work has ended was: a point, a part, or a panel by its run. */
  addPlaces(node: AstNode, scope: Partial<Reference>): void;
}

function referenceList(document: EstateDocument): ReferenceList {
  const references: Reference[] = [];
  const add: ReferenceList['add'] = (kind, node, property, more = {}) => {
    for (const cst of GrammarUtils.findNodesForProperty(node.$cstNode, property))
      references.push({ kind, name: cst.text, document, start: cst.offset, end: cst.end, ...more });
  };
  const addRuns: ReferenceList['addRuns'] = (node, scope) => {
    for (const child of AstUtils.streamAst(node))
      if (ast.isRunName(child)) {
        add('break', child, 'break', scope);
        add('break', child, 'other', scope);
      }
  };
  return {
    references,
    add,
    addRuns,
    addPlaces(node, scope) {
      for (const child of AstUtils.streamAst(node))
        add('point', child, 'point', { ...scope, mayBePart: true });
      addRuns(node, scope);
    },
    addConveyor(node) {
      const cst = GrammarUtils.findNodeForProperty(node.$cstNode, 'conveyor');
      const written = cst && conveyorName(cst.text);
      if (!cst || !written) return undefined;
      const { plant, name } = written;
      if (plant !== undefined) {
        const end = cst.offset + plant.length;
        references.push({ kind: 'plant', name: plant, document, start: cst.offset, end });
      }
      const before = cst.text.lastIndexOf('.');
      const start = cst.offset + before + 1 + (before < 0 ? 0 : cst.text.slice(before + 1).search(/\S/));
      const end = start + name.length;
      references.push({ kind: 'conveyor', name, document, start, end, conveyor: written });
      return written;
    },
  };
}

function addJobFact(found: ReferenceList, fact: ast.JobFact, scope: Partial<Reference>): void {
  if (ast.isJobWindow(fact)) found.add('outage', fact, 'outage', scope);
  else if (ast.isJobCrews(fact)) found.add('crew', fact, 'crews', scope);
  else if (ast.isJobAccessUnits(fact)) found.add('access unit', fact, 'units', scope);
  else if (ast.isJobCrane(fact)) found.add('crane', fact, 'crane', scope);
  else if (ast.isJobPart(fact)) found.add('job', fact, 'job');
  else if (ast.isJobScope(fact)) {
    found.add('liner', fact, 'liner');
    found.add('screw', fact, 'screw');
    found.addRuns(fact, scope);
  } else if (ast.isOrder(fact))
    for (const step of fact.steps) {
      found.add('crew', step, 'crews', scope);
      found.add('crew', step, 'attendants', scope);
      found.add('break', step, 'gate', scope);
      found.add('access unit', step, 'unit', scope);
      found.add('step', step, 'after', { order: fact });
      found.addRuns(step, scope);
    }
}

function about(conveyor: ConveyorName | undefined, date?: string): Partial<Reference> {
  return { ...(conveyor ? { conveyor } : {}), ...(date ? { date } : {}) };
}

function conveyorName(text: string | undefined): ConveyorName | undefined {
  const parts = text?.split('.').map((part) => part.trim());
  if (!parts || !parts[0]) return undefined;
  return parts[1] ? { plant: parts[0], name: parts[1] } : { name: parts[0] };
}

/** Of what a record of work tells beside its own. */
function tellsPlace(fact: AstNode): fact is ast.Condition | ast.Finding | ast.WorkRow {
  return ast.isCondition(fact) || ast.isFinding(fact) || ast.isWorkRow(fact);
}
