// Whole pieces to start from, offered only where they can stand: an estate or a conveyor between blocks, readings inside an
// inspection. What the estate has is named; what it lacks is written along, so that nothing a starter says hangs in the air.

import { CompletionItemKind, InsertTextFormat, type CompletionItem } from 'vscode-languageserver';
import type { CompletionContext } from './completion-context.js';

export function starterItems(place: CompletionContext): CompletionItem[] {
  const { around, line, typed, snippets } = place;
  if (!snippets || line.trim() !== typed) return [];
  const block = around.blocks.at(-1)?.keyword;
  if (block === undefined)
    return [
      starter(place, 'estate', 'A plant, a liner, a screw and a conveyor to start from', estate(place, [])),
    ];
  if (block === 'inspection')
    return [starter(place, 'readings', 'Thickness, colour, trough showing, not seen', readings)];
  return [];
}

/** The snippet of the keyword `conveyor`. */
export function conveyorStarter(place: CompletionContext): string {
  return estate(place, ['plant', 'liner', 'screw']);
}

function starter(
  { range }: CompletionContext,
  label: string,
  detail: string,
  newText: string,
): CompletionItem {
  return {
    label,
    kind: CompletionItemKind.Snippet,
    detail,
    insertTextFormat: InsertTextFormat.Snippet,
    textEdit: { range, newText },
  };
}

type Kind = 'plant' | 'liner' | 'screw';

/** `taken`: kinds for which a name of the estate is taken where there is one. */
function estate({ session }: CompletionContext, taken: readonly Kind[]): string {
  const names = (kind: Kind): readonly string[] =>
    taken.includes(kind)
      ? [
          ...new Set(
            session
              .symbols()
              .declared(kind)
              .map(({ name }) => name),
          ),
        ].slice(0, 20)
      : [];
  const blocks = (['plant', 'liner', 'screw'] as const).filter((kind) => names(kind).length === 0);
  const use = (kind: Kind): string => {
    const known = names(kind);
    const [only] = known;
    if (only === undefined) return own[kind];
    return known.length === 1 ? only : `\${${numbers[kind]}|${known.join(',')}|}`;
  };
  return [
    ...blocks.map((kind) => wholeBlocks[kind]),
    'conveyor ${8:DG1} "${9:what it carries, from where to where}" {',
    `\tplant ${use('plant')}`,
    '\tlength ${10:22.4} m',
    '\tincline ${11:24} deg',
    '\ttrough inside radius ${12:226} mm side height ${13:260} mm plate ${14:4} mm',
    `\tscrew ${use('screw')}`,
    `\tliner ${use('liner')}`,
    '\tdrive at ${15|head,tail|} power ${16:5.5} kW speed ${17:18} rpm',
    '\tcommissioned ${18:2024-01-15} meter 0 h',
    '\tpoint P1 at ${19:6.2} m clock ${20:6:00}$0',
    '}',
  ].join('\n');
}

const numbers: Readonly<Record<Kind, number>> = { plant: 1, liner: 3, screw: 6 };
const own: Readonly<Record<Kind, string>> = {
  plant: '${1:Tarnholt}',
  liner: '${3:TwoLayer12}',
  screw: '${6:Spiral400}',
};

const wholeBlocks: Readonly<Record<Kind, string>> = {
  plant: `plant ${own.plant} {\n\tduty \${2:110} h/week\n}\n`,
  liner:
    `liner ${own.liner} {\n\tlayer \${4:ivory} 6 mm // on the screw side, wears first\n` +
    `\tlayer \${5:teal} 6 mm\n\tpanel length 1200 mm ± 1 mm\n\tcondemn at 3 mm\n}\n`,
  screw: `screw ${own.screw} {\n\tshaftless\n\toutside diameter 400 mm\n\tpitch 400 mm\n\thand \${7|right,left|}\n}\n`,
};

const readings = [
  '${1:P1} thickness ${2:8.4} mm',
  '${3:P2} colour ${4:teal}',
  '${5:P3} trough showing',
  '${6:P4} not seen "${7:build-up}"$0',
].join('\n');
