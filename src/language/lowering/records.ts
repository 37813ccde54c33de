// Relines, screw changes, meter changes and duty changes → drafts. A record whose conveyor, date or meter reading cannot be
// read is left out: nothing about exposure may be guessed.

import type { AstNode } from 'langium';
import type * as ast from '../generated/ast.js';
import type { MeterReading } from '../../domain/model/records.js';
import type {
  DutyChange,
  MeterChange,
  OldPanel,
  PanelsMoved,
  Patch,
  Service,
} from '../../domain/model/records.js';
import type { Mutable } from '../../domain/model/other-facts.js';
import { formatClock } from '../../domain/units/clock.js';
import { chainageText } from '../../domain/units/length-words.js';
import type { Stretch } from '../../domain/model/stretch.js';
import type { Draft, RelineDraft, ScrewChangeDraft } from '../sheet.js';
import { notesOf, present, stated, wordsSaid, type FactAccount } from './block.js';
import { chainage, panelLength, someLength, thickness as thicknessLimit } from './limits.js';
import { lowerFlight } from './along.js';
import { lowerPlateReading } from './plate-reading.js';
import { createReader, type Reader } from './reader.js';
import { lowerSeenAt, middleOf, sectorWords } from './seen-at.js';
import { seenInWork } from './seen-beside.js';
import { lowerWork } from './work.js';
import { lowerPanels, lowerPanelsFitted, lowerStretches } from './stretch.js';

/** Meter, and the tonnes counter where one is kept; what was not read is left out. Undefined where it cannot be made out. */
export function lowerMeter(
  reader: Reader,
  node: ast.Inspection | ast.Reline | ast.PanelsMoved | ast.ScrewChange,
): MeterReading | undefined {
  const hours = reader.quantity(node, 'meter', 'duration', 'meter reading');
  const error =
    'meterError' in node
      ? reader.quantity(node, 'meterError', 'duration', 'error of the meter reading')
      : undefined;
  const tonnes = reader.quantity(node, 'tonnes', 'mass', 'tonnes counter');
  if (node.meter !== undefined && !hours) return undefined;
  return stated({ hours, error, tonnes });
}

/** `meter not read` on a line of a block whose heading has a reading. */
export function tellMeterTwice(
  reader: Reader,
  { what, name }: FactAccount,
  heading: { readonly $type: string; readonly meter?: string } & AstNode,
  facts: readonly AstNode[],
): void {
  if (heading.meter === undefined) return;
  for (const fact of facts)
    if (fact.$type === 'MeterNotRead')
      reader.problems.push({
        kind: 'repeated fact',
        origin: reader.origin(fact),
        block: `${what} ${name}`.trim(),
        fact: 'meter',
        first: reader.part(heading, 'meter'),
      });
}

export function lowerReline(reader: Reader, block: FactAccount, node: ast.Reline): RelineDraft | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const meter = lowerMeter(reader, node);
  tellMeterTwice(reader, block, node, node.facts);
  const scope: (Stretch | undefined)[] = [];
  const asFitted: (RelineDraft['asFitted'][number] | undefined)[] = [];
  const oldPanels: (OldPanel | undefined)[] = [];
  const panelsFitted: (RelineDraft['panelsFitted'][number] | undefined)[] = [];
  const panelThicknesses: (RelineDraft['panelThicknesses'][number] | undefined)[] = [];
  const offcuts: (RelineDraft['offcuts'][number] | undefined)[] = [];
  const plates: (RelineDraft['plates'][number] | undefined)[] = [];
  const mirrored = node.facts.some(looksUpstream);
  let newThickness: RelineDraft['newThickness'];
  let linerUse: RelineDraft['linerUse'];
  let fittingTemperature: RelineDraft['fittingTemperature'];
  let by: string | undefined;

  for (const fact of node.facts) {
    const origin = reader.origin(fact);
    switch (fact.$type) {
      case 'LinerUse':
        if (block.first('liner', fact)) linerUse = reader.use(fact, 'liner');
        break;
      case 'Scope':
        scope.push(...lowerStretches(reader, fact.stretch));
        break;
      case 'TemperatureRange':
        if (block.first('fitting temperature', fact))
          fittingTemperature = reader.range(fact, 'temperature', 'fitting temperature');
        break;
      case 'By':
        if (block.first('by', fact)) by = fact.who;
        break;
      case 'View':
      case 'WorkRow':
      case 'MeterNotRead':
        break;
      case 'NewThickness': {
        const thickness = reader.quantity(fact, 'thickness', 'length', 'thickness', thicknessLimit);
        const error = reader.quantity(fact, 'error', 'length', 'error of the thickness');
        if (block.first('thickness', fact) && thickness)
          newThickness = { thickness, origin, ...stated({ error }) };
        break;
      }
      case 'PlateReading':
        plates.push(lowerPlateReading(reader, fact, mirrored));
        break;
      case 'AsFitted':
        asFitted.push(lowerAsFitted(reader, fact));
        break;
      case 'OldPanel':
        oldPanels.push(lowerOldPanel(reader, fact));
        break;
      case 'PanelsFitted':
        panelsFitted.push(lowerPanelsFitted(reader, fact));
        break;
      case 'PanelThickness': {
        const thickness = reader.quantity(fact, 'thickness', 'length', 'thickness');
        const error = reader.quantity(fact, 'error', 'length', 'error of the thickness');
        for (const stretch of lowerStretches(reader, fact.stretch))
          panelThicknesses.push(stretch && thickness && { stretch, thickness, origin, ...stated({ error }) });
        break;
      }
      case 'Offcut': {
        const length = reader.quantity(fact, 'length', 'length', 'length of the offcut', panelLength);
        const count = fact.count === undefined ? undefined : reader.count(fact, 'count', 'number of offcuts');
        offcuts.push(length && { length, count: count?.count ?? 1, origin });
        break;
      }
      case 'Condition':
        oldPanels.push(wornThroughIn(reader, fact, mirrored));
        break;
      case 'Finding':
      case 'NextLook':
      case 'Photo':
        break;
    }
  }
  // A stretch that cannot be read must not widen the reline to the whole liner.
  if (!conveyorUse || !date || !meter || scope.includes(undefined)) return undefined;
  return {
    conveyorUse,
    date,
    meter,
    origin: reader.origin(node),
    scope: present(scope),
    asFitted: present(asFitted),
    oldPanels: present(oldPanels),
    panelsFitted: present(panelsFitted),
    panelThicknesses: present(panelThicknesses),
    plates: present(plates),
    offcuts: present(offcuts),
    ...seenInWork(reader, node.facts, mirrored),
    ...stated({ linerUse, fittingTemperature, by, newThickness }),
  };
}

function lowerOldPanel(reader: Reader, fact: ast.OldPanel): OldPanel | undefined {
  const point = reader.name(fact, 'point');
  const at = reader.quantity(fact, 'chainage', 'length', 'chainage', chainage);
  const panel = lowerPanels(reader, fact.panel);
  const clock = middleOf(reader.clock(fact, 'clock'), reader.clock(fact, 'clockEnd'));
  const thickness = reader.quantity(fact, 'thickness', 'length', 'thickness', thicknessLimit);
  const error = reader.quantity(fact, 'error', 'length', 'error of the thickness', thicknessLimit);
  const spot: OldPanel['spot'] | undefined = point
    ? { kind: 'point', point }
    : panel
      ? { kind: 'panel', panel, ...stated({ clock }) }
      : at && { kind: 'chainage', at, ...stated({ clock }) };
  if (!spot || (!thickness && !fact.wornThrough)) return undefined;
  const note = present([sectorWords(fact), notesOf(fact)]).join(': ') || undefined;
  return { spot, origin: reader.origin(fact), ...stated({ thickness, error, note }) };
}

/** `panel torn at 14.2 m worn through` says of the liner that came out what `old panel at 14.2 m worn through` does. */
function wornThroughIn(reader: Reader, fact: ast.Condition, mirrored: boolean): OldPanel | undefined {
  if (!fact.wornThrough) return undefined;
  const { point, panel, at, clock } = lowerSeenAt(reader, fact, mirrored);
  const spot: OldPanel['spot'] | undefined = point
    ? { kind: 'point', point }
    : panel
      ? { kind: 'panel', panel, ...stated({ clock }) }
      : at && { kind: 'chainage', at, ...stated({ clock }) };
  return spot && { spot, origin: reader.origin(fact), ...stated({ note: notesOf(fact) }) };
}

export function lowerPanelsMoved(
  reader: Reader,
  block: FactAccount,
  node: ast.PanelsMoved,
): Draft<PanelsMoved> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const meter = lowerMeter(reader, node);
  tellMeterTwice(reader, block, node, node.facts);
  const moves: (PanelsMoved['moves'][number] | undefined)[] = [];
  const measured: (PanelsMoved['measured'][number] | undefined)[] = [];
  let by: string | undefined;
  for (const fact of node.facts) {
    const origin = reader.origin(fact);
    if (fact.$type === 'By' && block.first('by', fact)) by = fact.who;
    else if (fact.$type === 'AsFitted') measured.push(lowerAsFitted(reader, fact));
    else if (fact.$type === 'MovedThickness') measured.push(lowerMovedThickness(reader, fact));
    else if (fact.$type === 'PanelMove') {
      const panel = lowerPanels(reader, fact.panel);
      const other = lowerPanels(reader, fact.other);
      const whole = panel && (fact.turned || other);
      moves.push(whole ? { panel, origin, ...stated({ other, note: notesOf(fact) }) } : undefined);
    }
  }
  if (!conveyorUse || !date || !meter || moves.includes(undefined)) return undefined;
  return {
    conveyorUse,
    date,
    meter,
    moves: present(moves),
    measured: present(measured),
    ...seenInWork(reader, node.facts),
    origin: reader.origin(node),
    ...stated({ by }),
  };
}

function lowerAsFitted(reader: Reader, fact: ast.AsFitted): RelineDraft['asFitted'][number] | undefined {
  const point = reader.name(fact, 'point');
  const thickness = reader.quantity(fact, 'thickness', 'length', 'thickness');
  const error = reader.quantity(fact, 'error', 'length', 'error of the thickness');
  return point && thickness && { point, thickness, origin: reader.origin(fact), ...stated({ error }) };
}

/** By the name that a reading at that spot has; without a clock position none has it, and the panel is as thin as this there. */
function lowerMovedThickness(
  reader: Reader,
  fact: ast.MovedThickness,
): PanelsMoved['measured'][number] | undefined {
  const at = reader.quantity(fact, 'chainage', 'length', 'chainage', chainage);
  const clock = reader.clock(fact, 'clock');
  const thickness = reader.quantity(fact, 'thickness', 'length', 'thickness', thicknessLimit);
  if (!at || !thickness) return undefined;
  const where = chainageText(at.value, /(ft|in)$/.test(at.text) ? 'in' : 'mm');
  const name = [where, clock && formatClock(clock.hours)].filter(Boolean).join(' ');
  return {
    point: { name, origin: at.origin },
    at,
    thickness,
    origin: reader.origin(fact),
    ...stated({ clock }),
  };
}

export function lowerScrewChange(
  reader: Reader,
  block: FactAccount,
  node: ast.ScrewChange,
): ScrewChangeDraft | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const meter = lowerMeter(reader, node);
  tellMeterTwice(reader, block, node, node.facts);
  let screwUse: ScrewChangeDraft['screwUse'];
  let scope: ScrewChangeDraft['scope'];
  const taken: Mutable<ScrewChangeDraft['taken']> = { flights: [], flightDiameters: [] };
  for (const fact of node.facts) {
    if (fact.$type === 'ScrewUse' && block.first('screw', fact)) screwUse = reader.use(fact, 'screw');
    else if (fact.$type === 'ScrewScope' && block.first('scope', fact)) scope = lowerScrewScope(reader, fact);
    else if (fact.$type === 'By') block.first('by', fact);
    else if (fact.$type === 'FlightReading') lowerFlight(reader, fact, false, taken);
  }
  if (!conveyorUse || !date || !meter) return undefined;
  return {
    conveyorUse,
    date,
    meter,
    taken,
    ...seenInWork(reader, node.facts),
    origin: reader.origin(node),
    ...stated({ screwUse, scope }),
  };
}

function lowerScrewScope(reader: Reader, fact: ast.ScrewScope): ScrewChangeDraft['scope'] {
  const span = reader.range(fact, 'length', 'stretch', chainage);
  return span && { ...span, origin: reader.origin(fact) };
}

export function lowerMeterChange(reader: Reader, node: ast.MeterChange): Draft<MeterChange> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const old = reader.quantity(node, 'old', 'duration', 'last reading of the old meter');
  const fresh = reader.quantity(node, 'new', 'duration', 'first reading of the new meter');
  if (!conveyorUse || !date || !old || !fresh) return undefined;
  return {
    conveyorUse,
    date,
    old,
    new: fresh,
    origin: reader.origin(node),
    ...stated({ note: notesOf(node) }),
  };
}

export function lowerPatch(reader: Reader, node: ast.Patch): Draft<Patch> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const from = reader.quantity(node, 'from', 'length', 'chainage', chainage);
  const to = reader.quantity(node, 'to', 'length', 'chainage', chainage);
  const thickness = reader.quantity(node, 'thickness', 'length', 'thickness of the patch', someLength);
  const start = reader.clock(node, 'start');
  const end = reader.clock(node, 'end');
  if (!conveyorUse || !date || !from || !to || !thickness) return undefined;
  const photo = reader.photo(node);
  return {
    conveyorUse,
    date,
    from,
    to,
    thickness,
    origin: reader.origin(node),
    ...stated({
      sector: start && end && { from: start, to: end },
      by: node.by,
      photo,
      note: wordsSaid(node),
    }),
  };
}

export function lowerService(reader: Reader, node: ast.Serviced): Draft<Service> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const work = lowerWork(reader, node);
  return conveyorUse && date && work && { conveyorUse, date, ...work };
}

/** Work that a block tells of beside its own, on its conveyor and its day. */
export function lowerWorkIn(reader: Reader, node: ast.Block): readonly Draft<Service>[] {
  const facts = factsBesideWork(node);
  const rows = facts.filter((fact) => fact.$type === 'WorkRow');
  if (rows.length === 0) return [];
  // What is wrong with the heading is told where the block itself is read.
  const quiet = createReader(reader.source, []);
  const conveyorUse = quiet.use(node, 'conveyor');
  const date = quiet.day(node, 'date');
  if (!conveyorUse || !date) return [];
  const mirrored = facts.some(looksUpstream);
  const from = facts.find((fact) => fact.$type === 'MeasuredFrom')?.end;
  return rows.flatMap((row) => {
    const work = lowerWork(reader, row, mirrored);
    return work ? [{ conveyorUse, date, ...work, ...stated({ measuredFrom: from }) }] : [];
  });
}

type FactBesideWork = ast.InspectionRow | ast.RelineFact | ast.PanelsMovedFact | ast.ScrewChangeFact;

/** All that a block says which may tell of work beside its own. */
function factsBesideWork(node: ast.Block): readonly FactBesideWork[] {
  switch (node.$type) {
    case 'Inspection':
      return node.rows;
    case 'Reline':
    case 'PanelsMoved':
    case 'ScrewChange':
      return node.facts;
    default:
      return [];
  }
}

/** Whoever looked against the flow saw every clock position from the other side. */
function looksUpstream(fact: FactBesideWork): boolean {
  return fact.$type === 'View' && fact.direction === 'upstream';
}

export function lowerDutyChange(reader: Reader, node: ast.DutyChange): Draft<DutyChange> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const from = reader.day(node, 'date');
  const duty = node.value === undefined ? undefined : reader.toleranced(node, 'duty', 'duty');
  const speed = reader.quantity(node, 'speed', 'rotation', 'speed of the screw');
  if (!conveyorUse || !from || (node.value !== undefined ? !duty : !speed)) return undefined;
  return { conveyorUse, from, origin: reader.origin(node), ...stated({ duty, speed, note: notesOf(node) }) };
}
