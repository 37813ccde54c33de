// What keeps people safe before the first bolt is undone: isolation, permits, tests, cautions, access, and what is counted off
// and back.

import { knownOfSafeguard, safeguardsAsk } from '../../../domain/conditions/safeguards-declared.js';
import { formatMass } from '../../../domain/units/format.js';
import { chainageWords, lengthWords } from '../../../domain/units/length-words.js';
import type { WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';

export function safetyBlocks(pack: WorkPack): PrintBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'Safety: isolation, permits, cautions' },
    {
      kind: 'table',
      caption: 'Isolation points declared',
      form: true,
      columns: [
        { head: 'Point' },
        { head: 'What' },
        { head: 'Kind' },
        { head: 'Chainage', number: true },
        { head: 'Lock no.', write: 16 },
        { head: 'Isolated by, time', write: 26 },
        { head: 'Proved by, time', write: 26 },
        { head: 'Removed by, time', write: 26 },
      ],
      origins: pack.isolations.map(({ origin }) => origin),
      rows: [
        ...pack.isolations.map((item) => [
          item.name,
          item.title,
          item.kind,
          item.at === undefined ? '' : chainageWords(item.at, pack.unit),
          '',
          '',
          '',
          '',
        ]),
        ['', 'others found on site', '', '', '', '', '', ''],
      ],
    },
    ...safeguardBlock(pack),
    {
      kind: 'table',
      caption: 'Permits and tests',
      columns: [
        { head: 'Permit or test', width: 38 },
        { head: 'Why' },
        { head: 'Ask for' },
        { head: 'No., issued by', write: 26 },
      ],
      rows: pack.permits.map((permit) => [`${permit.name}\n${permit.need}`, permit.why, permit.ask, '']),
    },
    {
      kind: 'table',
      caption: 'Gas tests (write every one down)',
      form: true,
      columns: [
        'Time',
        'Place, height',
        'O₂ %',
        '% LFL',
        'H₂S ppm',
        'CO₂ %',
        'NH₃ ppm',
        'Tester',
        'Go on?',
      ].map((head) => ({ head, write: 16 })),
      rows: Array.from(
        { length: Math.min(14, Math.max(5, (pack.schedule.repeatGasTests?.times ?? 0) + 1)) },
        () => Array.from({ length: 9 }, () => ''),
      ),
    },
    { kind: 'cautions', cautions: pack.cautions },
  ];
}

/** As the isolation points, and signed at the end of the job. */
function safeguardBlock({ safeguards }: WorkPack): PrintBlock[] {
  if (safeguards.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Safeguards declared, before the machine is handed back',
      form: true,
      columns: [
        { head: 'Safeguard' },
        { head: 'Known of it' },
        { head: 'There and whole', write: 22 },
        { head: 'Tried by, time', write: 26 },
        { head: 'Signed', write: 22 },
      ],
      origins: safeguards.map(({ origin }) => origin),
      rows: safeguards.map((each) => [each.what, knownOfSafeguard(each), '', '', '']),
    },
    { kind: 'text', text: safeguardsAsk },
  ];
}

export function accessBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.access.length === 0)
    return [
      { kind: 'heading', level: 2, text: 'Access' },
      {
        kind: 'text',
        text: 'No access is declared for this conveyor. Settle how each stretch is reached before the job.',
        strong: true,
      },
    ];
  return [
    { kind: 'heading', level: 2, text: 'Access' },
    {
      kind: 'table',
      columns: [
        { head: 'Zone' },
        { head: 'By' },
        { head: 'From', number: true },
        { head: 'To', number: true },
        { head: 'Height', number: true },
        { head: 'Somebody goes in or reaches in for' },
      ],
      origins: pack.access.map(({ origin }) => origin),
      rows: pack.access.map((zone) => [
        zone.name,
        zone.kind,
        chainageWords(zone.from, pack.unit),
        chainageWords(zone.to, pack.unit),
        zone.height === undefined ? '' : lengthWords(zone.height, pack.unit),
        zoneWords(zone),
      ]),
    },
  ];
}

/** `covers off, strip, fit`; a zone that is only named for what is done from outside says so. */
function zoneWords({ used, inside, outside }: WorkPack['access'][number]): string {
  if (inside.length > 0) return inside.join(', ');
  if (outside.length > 0) return `nothing; only ${outside.join(', ')}, from outside`;
  return used ? 'nothing; on the way' : 'nothing';
}

export function takingBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.takings.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'What comes off and goes back' },
    {
      kind: 'table',
      form: true,
      columns: [
        { head: 'Part' },
        { head: 'Which' },
        { head: 'Off', number: true },
        { head: 'Back', number: true },
        { head: 'Each', number: true },
        { head: 'Counted off', write: 22 },
        { head: 'Counted back', write: 22 },
        { head: 'Signed', write: 24 },
      ],
      rows: pack.takings.map((taking) => [
        `${taking.part}${taking.note ? `\n${taking.note}` : ''}`,
        taking.which,
        `${taking.off}`,
        `${taking.back}`,
        taking.mass === undefined ? '' : formatMass(taking.mass),
        '',
        '',
        '',
      ]),
    },
  ];
}
