// Keywords that fit, with their meaning and a snippet. A fact that a block has already is not offered a second time.

import { CompletionItemKind, InsertTextFormat, type CompletionItem } from 'vscode-languageserver';
import type { Expected } from '../expected.js';
import { signs, keywordDocOf } from '../../language/keyword-docs.js';
import { conveyorStarter } from './starters.js';
import type { CompletionContext } from './completion-context.js';

/** Facts that can stand in a block more than once; all others are offered only until they are there. */
const repeatable = new Set([
  'Outage',
  'Crew',
  'AccessUnit',
  'Crane',
  'Shift',
  'LeadTime',
  'ExpeditedLeadTime',
  'ShelfStock',
  'ShelfPart',
  'OrderedStock',
  'OrderedPart',
  'Tool',
  'Cost',
  'UnitTime',
  'Layer',
  'ScrewPitch',
  'Section',
  'Break',
  'HoldDown',
  'Brace',
  'Cover',
  'Access',
  'Isolation',
  'Hatch',
  'LiftingPoint',
  'Rest',
  'Hopper',
  'Drain',
  'Safeguard',
  'Point',
  'HoldDownGap',
  'FlightReading',
  'Condition',
  'ConditionKind',
  'PlateReading',
  'ConveyorLiner',
  'WornWidth',
  'MotorCurrent',
  'MeasuredSpeed',
  'Finding',
  'WorkRow',
  'Photo',
  'Reading',
  'Scope',
  'PanelsFitted',
  'PanelThickness',
  'OldPanel',
  'NotLooked',
  'PanelMove',
  'Offcut',
  'JobScope',
  'JobCrane',
  'JobStock',
  'JobOffcut',
  'Step',
  'StepAction',
  'GateAction',
]);

export function keywordItem(keyword: string, expected: Expected, place: CompletionContext): CompletionItem[] {
  if (signs.has(keyword) || keyword === ':' || keyword === '+/-' || keyword === 'color') return [];
  if (
    expected.begins &&
    place.around.blocks.length > 0 &&
    !repeatable.has(expected.rule) &&
    isStated(keyword, place)
  )
    return [];
  const word = keywordDocOf(expected.rule, keyword);
  const isBlock = keyword === 'conveyor' && place.around.blocks.length === 0;
  const snippet = !place.snippets ? undefined : isBlock ? conveyorStarter(place) : word?.snippet;
  return [
    {
      label: keyword,
      kind: snippet ? CompletionItemKind.Snippet : CompletionItemKind.Keyword,
      ...(keyword === '±' ? { filterText: '±+-' } : {}),
      ...(word ? { documentation: { kind: 'markdown', value: word.meaning } } : {}),
      ...(snippet
        ? {
            detail: preview(isBlock ? (word?.snippet ?? '') : snippet),
            insertTextFormat: InsertTextFormat.Snippet,
          }
        : {}),
      textEdit: { range: place.range, newText: snippet ?? keyword },
    },
  ];
}

/** True where the block has the fact already, on another line than this one. */
function isStated(keyword: string, { document, around, line }: CompletionContext): boolean {
  const block = around.blocks.at(-1);
  if (!block) return false;
  const open = document.text.indexOf('{', block.start);
  const close = document.text.indexOf('\n}', open);
  const here = around.lineStart + line.length;
  const restOfLine = document.text.indexOf('\n', here);
  const others = `${document.text.slice(open + 1, around.lineStart)}\n${restOfLine < 0 ? '' : document.text.slice(restOfLine, close < 0 ? undefined : close)}`;
  return new RegExp(String.raw`^[ \t]*${keyword.split(' ').join('[ \\t]+')}(?![\w-])`, 'm').test(others);
}

function preview(snippet: string): string {
  const plain = snippet
    .replace(/\$\{\d+\|([^,|}]+)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:?([^}]*)\}/g, '$1')
    .replace(/\$\d/g, '');
  return plain.split('\n')[0] ?? plain;
}
