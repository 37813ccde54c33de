// How a panel is fixed: bolt, hole, countersink, torque, sealant, as declared and as this liner's layers allow. What is not
// declared is said to be missing; what is derived shows how.

import {
  boltSize,
  countersinkWidth,
  flushDepth,
  leastBoltLength,
  usualTorque,
} from '../../../domain/geometry/fixing.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { lengthWords } from '../../../domain/units/length-words.js';
import type { Fact, FixingFacts } from '../pack.js';

/** Undefined for a liner of which nothing is said. `plate`: of the trough, mm. */
export function fixingOf(
  liner: LinerSpecification,
  plate: number,
  unit: LengthUnit,
): FixingFacts | undefined {
  const held = liner.heldBy ? [{ name: 'Held by', value: liner.heldBy.words }] : [];
  if (!liner.bolt)
    return liner.heldBy
      ? {
          liner: liner.name,
          facts: [...held, { name: 'Bolts', value: 'none declared for this liner' }],
          inShort: `${liner.heldBy.words}; no bolts.`,
        }
      : undefined;
  const facts = [bolt(liner, plate, unit), hole(liner, plate, unit), countersink(liner, unit), torque(liner)];
  return {
    liner: liner.name,
    facts: [...held, ...facts, { name: 'Sealant', value: liner.sealant?.words ?? notWritten }],
    inShort: inShort(liner, unit),
  };
}

const notWritten = 'not written: ask the maker of the liner';

function bolt(liner: LinerSpecification, plate: number, unit: LengthUnit): Fact {
  const size = boltSize(liner.bolt?.size ?? '');
  const least =
    size &&
    leastBoltLength(size, {
      liner: liner.thickness.value,
      plate,
      countersink: liner.bolt?.countersink?.value ?? 0,
      hole: holeOf(liner) ?? size.hole,
    });
  const needed =
    size && least !== undefined
      ? `; at least ${lengthWords(Math.ceil(least), unit)}: ` +
        `liner ${lengthWords(liner.thickness.value, unit)} + plate ${lengthWords(plate, unit)} + washer ` +
        `${lengthWords(size.washer, unit)} + nut ${lengthWords(size.nut, unit)}, less what the head is sunk`
      : '';
  const length =
    liner.boltLength === undefined
      ? 'length not written'
      : `${lengthWords(liner.boltLength.value, unit)} long`;
  const rows = liner.bolt?.rows ? `, ${liner.bolt.rows.count} rows` : '';
  const pitch = liner.bolt?.pitch ? `, pitch ${lengthWords(liner.bolt.pitch.value, unit)}` : '';
  return { name: 'Bolt', value: `${liner.bolt?.size ?? ''} countersunk, ${length}${rows}${pitch}${needed}` };
}

function hole(liner: LinerSpecification, plate: number, unit: LengthUnit): Fact {
  const through = `liner and plate together ${lengthWords(liner.thickness.value + plate, unit)}`;
  const usual = boltSize(liner.bolt?.size ?? '')?.hole;
  if (!liner.drill)
    return {
      name: 'Hole',
      value:
        usual === undefined
          ? `drill not written; ${through}`
          : `drill not written; usual ${lengthWords(usual, unit)} (ISO 273, medium); ${through}`,
    };
  const { size, depth } = liner.drill;
  return {
    name: 'Hole',
    value: `drill ${lengthWords(size.value, unit)}${depth ? `, ${lengthWords(depth.value, unit)} deep from the screw side` : ''}; ${through}`,
  };
}

/** At least so deep that the head lies flush, and less than the first layer. */
function countersink(liner: LinerSpecification, unit: LengthUnit): Fact {
  const [first] = liner.layers;
  const stated = liner.bolt?.countersink?.value;
  const size = boltSize(liner.bolt?.size ?? '');
  const drilled = size && (holeOf(liner) ?? size.hole);
  const flush = size && flushDepth(size, drilled);
  const least = flush === undefined ? '' : `at least ${tenths(flush, unit)} for the head to lie flush`;
  const most =
    first && liner.layers.length > 1
      ? `less than ${lengthWords(first.thickness.value, unit)}, so that it stays in ${first.name}`
      : '';
  const wide =
    stated !== undefined && drilled !== undefined
      ? `, ${lengthWords(countersinkWidth(stated, drilled), unit)} wide (hole + 2 × depth)`
      : '';
  return {
    name: 'Countersink',
    value: [
      stated === undefined ? 'depth not written' : `90°, ${lengthWords(stated, unit)} deep${wide}`,
      [least, most].filter(Boolean).join(', '),
    ]
      .filter(Boolean)
      .join(': '),
  };
}

function torque(liner: LinerSpecification): Fact {
  const size = boltSize(liner.bolt?.size ?? '');
  const bears =
    size === undefined
      ? ''
      : ' The bolt itself, class 8.8 and dry, ' +
        `bears about ${formatNumber(Math.round(usualTorque(size)))} N·m (0.2 · d · 75 % of the proof ` +
        'load); the plastic under the head bears less.';
  return {
    name: 'Tighten to',
    value: `${liner.tighteningTorque === undefined ? notWritten : liner.tighteningTorque.text}.${bears}`,
  };
}

/** One line for those who hold the drill; only what is declared. */
function inShort(liner: LinerSpecification, unit: LengthUnit): string {
  const { boltLength, drill, tighteningTorque, sealant, layers } = liner;
  const countersunk = liner.bolt?.countersink;
  const parts = [
    `${liner.bolt?.size ?? ''}${boltLength ? ` × ${lengthWords(boltLength.value, unit)}` : ''}`,
    drill
      ? `drill ${lengthWords(drill.size.value, unit)}${drill.depth ? `, ${lengthWords(drill.depth.value, unit)} deep` : ''}`
      : '',
    countersunk
      ? `countersink ${lengthWords(countersunk.value, unit)} deep, only in ${layers[0]?.name ?? 'the first colour'}`
      : '',
    tighteningTorque ? `tighten to ${tighteningTorque.text}` : '',
    sealant?.words ?? '',
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

function holeOf({ drill }: LinerSpecification): number | undefined {
  return drill?.size.value;
}

function tenths(mm: number, unit: LengthUnit): string {
  return lengthWords(Math.round(mm * 10) / 10, unit);
}
