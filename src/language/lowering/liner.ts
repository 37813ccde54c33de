// A liner block → LinerSpecification; without layers, panel length or condemn limit there is no specification.

import { unitOf } from '../../domain/units/length-words.js';
import type * as ast from '../generated/ast.js';
import type { Bolt, Drill, Joint, Layer, LinerSpecification } from '../../domain/model/specifications.js';
import { formatLength, formatValue } from '../../domain/units/format.js';
import type { Named } from '../sheet.js';
import { assumed, buttedByDefault } from './assumed.js';
import { present, stated, type FactAccount } from './block.js';
import { panelLength, someLength, spread } from './limits.js';
import { onceByName } from './plant.js';
import { wordsOf, type Reader } from './reader.js';

type Facts = { -readonly [K in keyof LinerSpecification]?: LinerSpecification[K] };

export function lowerLiner(
  reader: Reader,
  block: FactAccount,
  node: ast.Liner,
  doc: string | undefined,
): Named<LinerSpecification> {
  const facts: Facts = {};
  const layers: (Layer | undefined)[] = [];
  let lengths: LinerSpecification['panelLengths'] | undefined;
  const once = onceByName(reader);

  for (const fact of node.facts) {
    switch (fact.$type) {
      case 'LinerMeasure':
        lowerMeasure(reader, block, fact, facts);
        break;
      case 'Material':
        if (block.first('material', fact) && fact.material !== undefined) facts.material = fact.material;
        break;
      case 'Layer':
        if (once('layer', fact)) layers.push(lowerLayer(reader, block, fact));
        break;
      case 'PanelLength': {
        if (!block.first('panel length', fact)) break;
        const read = reader.quantities(fact, 'lengths', 'length', 'panel length', panelLength);
        const few = block.isFew('panel lengths', read.length, reader.origin(fact));
        if (few && read.length > 0 && !read.includes(undefined)) lengths = present(read);
        const tolerance = reader.quantity(fact, 'tolerance', 'length', 'panel length tolerance');
        if (tolerance) facts.panelTolerance = tolerance;
        break;
      }
      case 'StockLength':
        if (block.first('stock length', fact))
          facts.stockLengths = present(
            reader.quantities(fact, 'lengths', 'length', 'stock length', panelLength),
          );
        break;
      case 'Turning':
        if (block.first('may be turned end for end', fact)) facts.turning = { origin: reader.origin(fact) };
        break;
      case 'Bolt':
        if (block.first('bolt', fact)) facts.bolt = lowerBolt(reader, fact);
        break;
      case 'Drill': {
        const drill = block.first('drill', fact) ? lowerDrill(reader, fact) : undefined;
        if (drill) facts.drill = drill;
        break;
      }
      case 'HeldBy':
      case 'Sealant':
        lowerWords(reader, block, fact, facts);
        break;
      case 'Joint': {
        const joint = block.first('joint', fact) ? lowerJoint(reader, fact) : undefined;
        if (joint) facts.joint = joint;
        break;
      }
    }
  }
  const { condemn } = facts;
  block.require('layer', layers.length > 0 ? layers : undefined, 'layer ivory 6 mm');
  block.require('panel length', lengths, 'panel length 1200 mm');
  block.require('condemn at', condemn, 'condemn at 3 mm', 'condemn limit');

  const named = { name: block.name, origin: block.nameOrigin };
  const read = present(layers);
  if (!block.stands || read.length === 0 || read.length < layers.length || !lengths || !condemn) return named;
  const at = block.nameOrigin;
  const sum = read.reduce((total, layer) => total + layer.thickness.value, 0);
  return {
    ...named,
    value: {
      ...stated({ title: node.title, doc }),
      material: 'PE1000',
      thickness: {
        dimension: 'length',
        value: sum,
        text:
          unitOf(read.map(({ thickness }) => thickness.text)) === 'in'
            ? formatValue(sum, 'length', { unit: 'in' })
            : formatLength(sum),
        origin: at,
        assumed: 'The sum of the layers.',
      },
      layerTolerance: assumed.layerTolerance(at),
      panelTolerance: assumed.panelTolerance(at),
      stockLengths: [],
      joint: { policy: 'butted', origin: at, assumed: buttedByDefault },
      density: assumed.linerDensity(at),
      expansion: assumed.expansion(at),
      modulus: assumed.modulus(at),
      maximumTemperature: assumed.maximumTemperature(at),
      ...facts,
      name: block.name,
      origin: reader.origin(node),
      nameOrigin: at,
      layers: read,
      panelLengths: lengths,
      condemn,
    },
  };
}

/** What is said in quotes. */
function lowerWords(reader: Reader, block: FactAccount, fact: ast.HeldBy | ast.Sealant, facts: Facts): void {
  const [key, keyword] =
    fact.$type === 'HeldBy' ? (['heldBy', 'fixed by'] as const) : (['sealant', 'sealant'] as const);
  if (block.first(keyword, fact) && fact.what !== undefined)
    facts[key] = { words: fact.what, origin: reader.origin(fact) };
}

function lowerMeasure(reader: Reader, block: FactAccount, fact: ast.LinerMeasure, facts: Facts): void {
  const key = wordsOf(fact, 'key') as ast.LinerMeasure['key'] | undefined; // the grammar takes these words only
  if (key === undefined || !block.first(key, fact)) return;
  const keep = <K extends keyof Facts>(name: K, value: Facts[K]): void => {
    if (value !== undefined) facts[name] = value;
  };
  switch (key) {
    case 'condemn at':
      return keep('condemn', reader.quantity(fact, 'value', 'length', key));
    case 'thickness': {
      keep('thickness', reader.quantity(fact, 'value', 'length', key, someLength));
      return keep('thicknessTolerance', reader.quantity(fact, 'tolerance', 'length', 'thickness tolerance'));
    }
    case 'thickness tolerance':
      return keep('thicknessTolerance', reader.quantity(fact, 'value', 'length', key));
    case 'layer tolerance':
      return keep('layerTolerance', reader.quantity(fact, 'value', 'ratio', key, spread));
    case 'expected life':
      return keep('expectedLife', reader.toleranced(fact, 'duration', key));
    case 'density':
      return keep('density', reader.quantity(fact, 'value', 'density', key));
    case 'expansion':
      return keep('expansion', reader.quantity(fact, 'value', 'expansion', key));
    case 'modulus':
      return keep('modulus', reader.quantity(fact, 'value', 'stress', key));
    case 'maximum temperature':
      return keep('maximumTemperature', reader.quantity(fact, 'value', 'temperature', key));
    case 'sound velocity':
      return keep('soundVelocity', reader.toleranced(fact, 'velocity', key));
    case 'bolt length':
      return keep('boltLength', reader.quantity(fact, 'value', 'length', key, someLength));
    case 'tightening torque':
      return keep('tighteningTorque', reader.quantity(fact, 'value', 'torque', key));
    case 'price':
      return keep('price', reader.quantity(fact, 'value', 'money a length', key));
  }
}

function lowerLayer(reader: Reader, block: FactAccount, node: ast.Layer): Layer | undefined {
  const name = reader.name(node, 'name');
  const thickness = reader.quantity(
    node,
    'thickness',
    'length',
    `thickness of layer ${name?.name ?? ''} of liner ${block.name}`,
    someLength,
  );
  return name && thickness && { name: name.name, thickness, origin: reader.origin(node) };
}

function lowerBolt(reader: Reader, node: ast.Bolt): Bolt {
  const rows = node.rows === undefined ? undefined : reader.count(node, 'rows', 'rows of bolts');
  const pitch = reader.quantity(node, 'pitch', 'length', 'bolt pitch', someLength);
  const countersink = reader.quantity(node, 'countersink', 'length', 'countersink');
  return { size: node.size ?? '', origin: reader.origin(node), ...stated({ rows, pitch, countersink }) };
}

function lowerDrill(reader: Reader, node: ast.Drill): Drill | undefined {
  const size = reader.quantity(node, 'size', 'length', 'drill', someLength);
  const depth = reader.quantity(node, 'depth', 'length', 'depth of the drill', someLength);
  return size && { size, origin: reader.origin(node), ...stated({ depth }) };
}

function lowerJoint(reader: Reader, node: ast.Joint): Joint | undefined {
  const origin = reader.origin(node);
  if (node.policy === 'butted') return { policy: 'butted', origin };
  const gap = reader.quantity(node, 'gap', 'length', 'joint gap');
  return gap && { policy: 'gap', gap, origin };
}
