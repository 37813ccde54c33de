// A manual as text, 78 columns wide wherever it is read.

import type { Manual, ManualPart } from './manual.js';

const width = 78;
const indent = '    ';

export function manualText({ name, version, summary, synopsis, sections }: Manual): string {
  const parts = [
    `NAME\n${filled(`${name} - ${summary}`, indent)}`,
    `SYNOPSIS\n${filled(synopsis, indent)}`,
    ...sections.map(({ title, parts }) => `${title}\n${parts.map(partText).join('\n')}`),
    `troughline ${version}`,
  ];
  return `${parts.join('\n\n')}\n`;
}

function partText(part: ManualPart): string {
  switch (part.kind) {
    case 'words':
      return filled(part.text, indent);
    case 'lines':
      return part.lines.map((line) => `${indent}${line}`).join('\n');
    case 'term':
      return `${indent}${part.term}\n${filled(part.text, indent.repeat(2))}`;
  }
}

function filled(text: string, before: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line !== '' && before.length + line.length + 1 + word.length > width) {
      lines.push(before + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, before + line].join('\n');
}
