// A plant block → Plant. Nothing in it is required; what cannot be read is reported and left out.

import type * as ast from '../generated/ast.js';
import type {
  AccessUnit,
  Crane,
  Cost,
  CostItem,
  Crew,
  Expedited,
  LeadItem,
  Outage,
  Plant,
  ShelfCount,
  ShelfItem,
  Shift,
  UnitTime,
  WorkItem,
} from '../../domain/model/plant.js';
import type { Dimension } from '../../domain/units/dimension.js';
import type { NamedPlant } from '../sheet.js';
import { assumed } from './assumed.js';
import { present, stated, type FactAccount } from './block.js';
import { panelLength, probability, someLength, someMass } from './limits.js';
import { textOf, wordsOf, type Reader } from './reader.js';

export function lowerPlant(
  reader: Reader,
  block: FactAccount,
  node: ast.Plant,
  doc: string | undefined,
): NamedPlant {
  let duty: Plant['duty'];
  let risk: Plant['risk'] | undefined;
  let contactRisk: Plant['contactRisk'] | undefined;
  let gasTestInterval: Plant['gasTestInterval'];
  let fittingTemperature: Plant['fittingTemperature'];
  let serviceTemperature: Plant['serviceTemperature'];
  const outages: (Outage | undefined)[] = [];
  const crews: (Crew | undefined)[] = [];
  const accessUnits: (AccessUnit | undefined)[] = [];
  const cranes: (Crane | undefined)[] = [];
  const shifts: (Shift | undefined)[] = [];
  const leadTimes: Plant['leadTimes'][number][] = [];
  const expedited: (Expedited | undefined)[] = [];
  const shelf: (ShelfCount | undefined)[] = [];
  const costs: Cost[] = [];
  const unitTimes: UnitTime[] = [];
  const once = onceByName(reader);
  const unread: string[] = [];
  const keep = <T>(
    items: (T | undefined)[],
    item: T | undefined,
    { name }: { readonly name: string },
  ): void => {
    items.push(item);
    if (item === undefined) unread.push(name);
  };

  for (const fact of node.facts) {
    const origin = reader.origin(fact);
    switch (fact.$type) {
      case 'PlantMeasure': {
        const key = wordsOf(fact, 'key') ?? '';
        if (!block.first(key, fact)) break;
        if (key === 'duty') duty = reader.toleranced(fact, 'duty', key);
        else if (key === 'risk') risk = reader.quantity(fact, 'value', 'ratio', key, probability);
        else if (key === 'risk of contact')
          contactRisk = reader.quantity(fact, 'value', 'ratio', key, probability);
        else if (key === 'gas test interval')
          gasTestInterval = reader.quantity(fact, 'value', 'duration', key);
        break;
      }
      case 'TemperatureRange': {
        const key = wordsOf(fact, 'key') ?? '';
        if (!block.first(key, fact)) break;
        if (key === 'fitting temperature') fittingTemperature = reader.range(fact, 'temperature', key);
        else serviceTemperature = reader.range(fact, 'temperature', key);
        break;
      }
      case 'Outage':
        if (once('outage', fact)) keep(outages, lowerOutage(reader, fact), fact);
        break;
      case 'Crew':
        if (once('crew', fact)) keep(crews, lowerCrew(reader, fact), fact);
        break;
      case 'AccessUnit':
        if (once('access unit', fact)) keep(accessUnits, lowerAccessUnit(reader, fact), fact);
        break;
      case 'Crane':
        if (once('crane', fact)) keep(cranes, lowerCrane(reader, fact), fact);
        break;
      case 'Shift':
        shifts.push(lowerShift(reader, fact));
        break;
      case 'LeadTime': {
        const item = wordsOf(fact, 'item');
        if (item === undefined || !block.first(`lead time ${item}`, fact)) break;
        const time = reader.quantity(fact, 'value', 'duration', `lead time ${item}`);
        if (time) leadTimes.push({ item: item as LeadItem, time, origin }); // the grammar takes these words only
        break;
      }
      case 'ExpeditedLeadTime':
        expedited.push(lowerExpedited(reader, block, fact));
        break;
      case 'ShelfStock':
        shelf.push(lowerShelf(reader, block, fact));
        break;
      case 'Cost': {
        const item = wordsOf(fact, 'item') as CostItem | undefined; // the grammar takes these words only
        if (item === undefined || !block.first(`cost ${item}`, fact)) break;
        const amount = reader.quantityOf(fact, 'value', costDimensions[item], `cost ${item}`);
        if (amount) costs.push({ item, amount: amount as Cost['amount'], origin }); // its dimension is one of the three of Cost
        break;
      }
      case 'UnitTime': {
        const item = wordsOf(fact, 'item') as WorkItem | undefined; // the grammar takes these words only
        if (item === undefined || !block.first(`unit time ${item}`, fact)) break;
        const time = reader.quantityOf(fact, 'value', ['duration', 'labour a length'], `unit time ${item}`);
        if (time) unitTimes.push({ item, time: time as UnitTime['time'], origin }); // its dimension is one of the two of UnitTime
        break;
      }
    }
  }
  return {
    name: block.name,
    origin: block.nameOrigin,
    ...(block.garbled ? {} : { unread }),
    value: {
      name: block.name,
      origin: reader.origin(node),
      nameOrigin: block.nameOrigin,
      ...stated({ title: node.title, doc, duty, gasTestInterval, fittingTemperature, serviceTemperature }),
      risk: risk ?? assumed.risk(block.nameOrigin),
      contactRisk: contactRisk ?? assumed.contactRisk(block.nameOrigin),
      outages: present(outages),
      crews: present(crews),
      accessUnits: present(accessUnits),
      cranes: present(cranes),
      shifts: present(shifts),
      leadTimes,
      expedited: present(expedited),
      shelf: present(shelf),
      costs,
      unitTimes,
    },
  };
}

type MoneyDimension = Extract<Dimension, `money${string}`>;
const costDimensions: Readonly<Record<CostItem, readonly [MoneyDimension, ...MoneyDimension[]]>> = {
  downtime: ['money a duration'],
  'trough repair': ['money', 'money a length'],
  liner: ['money a length', 'money'],
  screw: ['money', 'money a length'],
  reline: ['money', 'money a length'],
  'unplanned reline': ['money', 'money a length'],
  inspection: ['money'],
};

/** True where the name is new among its kind in this block. */
export function onceByName(
  reader: Reader,
): (
  what: string,
  node:
    | ast.Outage
    | ast.Crew
    | ast.AccessUnit
    | ast.Crane
    | ast.Break
    | ast.Point
    | ast.Layer
    | ast.Step
    | ast.Section
    | ast.Isolation
    | ast.Access
    | ast.LiftingPoint,
) => boolean {
  const seen = new Map<string, ReturnType<Reader['part']>>();
  return (what, node) => {
    const name = textOf(node, 'name');
    if (name === undefined) return true;
    const first = seen.get(`${what} ${name}`);
    if (!first) {
      seen.set(`${what} ${name}`, reader.part(node, 'name'));
      return true;
    }
    reader.problems.push({ kind: 'repeated name', origin: reader.part(node, 'name'), what, name, first });
    return false;
  };
}

function lowerOutage(reader: Reader, node: ast.Outage): Outage | undefined {
  const name = reader.name(node, 'name');
  const days = reader.days(node);
  if (!name || !days) return undefined;
  return {
    name: name.name,
    nameOrigin: name.origin,
    ...days,
    origin: reader.origin(node),
    ...stated({ title: node.title }),
  };
}

function lowerCrew(reader: Reader, node: ast.Crew): Crew | undefined {
  const name = reader.name(node, 'name');
  const size = reader.count(node, 'size', 'size of the crew');
  const rate = reader.quantity(node, 'rate', 'money a duration', `cost of crew ${name?.name ?? ''}`);
  if (!name || !size) return undefined;
  return {
    name: name.name,
    nameOrigin: name.origin,
    size,
    skills: [...(node.skills ?? [])],
    origin: reader.origin(node),
    ...stated({ rate }),
  };
}

function lowerAccessUnit(reader: Reader, node: ast.AccessUnit): AccessUnit | undefined {
  const name = reader.name(node, 'name');
  const reach = reader.quantity(node, 'reach', 'length', 'reach');
  const limit = reader.quantity(node, 'limit', 'mass', 'platform load', someMass);
  const people =
    node.people === undefined ? undefined : reader.count(node, 'people', 'people on the platform');
  return (
    name && {
      name: name.name,
      nameOrigin: name.origin,
      origin: reader.origin(node),
      ...stated({ title: node.title, reach, limit, people }),
    }
  );
}

function lowerCrane(reader: Reader, node: ast.Crane): Crane | undefined {
  const name = reader.name(node, 'name');
  const chart = node.chart.map((point) => {
    const load = reader.quantity(point, 'load', 'mass', 'load of the chart', someMass);
    const radius = reader.quantity(point, 'radius', 'length', 'radius of the chart', someLength);
    return load && radius && { load, radius };
  });
  // A chart that has lost a point would promise what the crane does not lift.
  if (!name || chart.length === 0 || chart.includes(undefined)) return undefined;
  return {
    name: name.name,
    nameOrigin: name.origin,
    chart: present(chart),
    origin: reader.origin(node),
    ...stated({ title: node.title }),
  };
}

function lowerExpedited(
  reader: Reader,
  block: FactAccount,
  node: ast.ExpeditedLeadTime,
): Expedited | undefined {
  const item = wordsOf(node, 'item') as LeadItem | undefined; // the grammar takes these words only
  if (item === undefined || !block.first(`expedited lead time ${item}`, node)) return undefined;
  const time = reader.quantity(node, 'value', 'duration', `expedited lead time ${item}`);
  const price = reader.quantity(node, 'price', 'money', `price of the expedited ${item}`);
  return time && price && { item, time, price, origin: reader.origin(node) };
}

/** A count of the same item on another day is another fact: the shelf has a history. */
function lowerShelf(reader: Reader, block: FactAccount, node: ast.ShelfStock): ShelfCount | undefined {
  const item = wordsOf(node, 'item') as ShelfItem | undefined; // the grammar takes these words only
  const liner = reader.use(node, 'liner');
  const count = reader.count(node, 'count', `${item ?? 'items'} on the shelf`, 0);
  const length = reader.quantity(node, 'length', 'length', `length of the ${item ?? 'items'}`, panelLength);
  const counted = reader.day(node, 'date');
  if (!item || !liner || !count || !counted) return undefined;
  const what = `on the shelf ${liner.name} ${item} ${length?.text ?? ''} counted ${counted.day}`;
  if (!block.first(what, node)) return undefined;
  return { item, liner, count, counted, origin: reader.origin(node), ...stated({ length }) };
}

const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

function lowerShift(reader: Reader, node: ast.Shift): Shift | undefined {
  const from = reader.timeOfDay(node, 'from');
  const to = reader.timeOfDay(node, 'to');
  const days: number[] = [];
  for (const [index, word] of (node.days ?? []).entries()) {
    const day =
      word.length < 2 ? -1 : weekdays.findIndex((weekday) => weekday.startsWith(word.toLowerCase()));
    if (day >= 0) days.push(day + 1);
    else
      reader.problems.push({
        kind: 'unknown name',
        origin: reader.part(node, 'days', index),
        what: 'day of the week',
        name: word,
        known: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'],
      });
  }
  return (
    from && to && { from, to, days: [...new Set(days)].sort((a, b) => a - b), origin: reader.origin(node) }
  );
}
