// A manual as the source of a page for man(1), by the macros of man(7). It carries no date, so that the same program gives the
// same bytes.

import type { Manual, ManualPart } from './manual.js';

export function manualRoff({ name, version, summary, synopsis, sections }: Manual): string {
  const title = name.replaceAll(' ', '-');
  return [
    `.TH "${safe(title.toUpperCase())}" 1 "" "${safe(`troughline ${version}`)}" "Troughline"`,
    '.SH NAME',
    `${safe(title)} \\- ${safe(summary)}`,
    '.SH SYNOPSIS',
    `.B ${safe(synopsis)}`,
    ...sections.flatMap(({ title: heading, parts }) => [
      `.SH "${safe(heading)}"`,
      ...parts.flatMap(partRoff),
    ]),
    '',
  ].join('\n');
}

function partRoff(part: ManualPart): readonly string[] {
  switch (part.kind) {
    case 'words':
      return ['.PP', line(part.text)];
    case 'lines':
      return ['.PP', '.nf', ...part.lines.map(line), '.fi'];
    case 'term':
      return ['.TP', `.B ${safe(part.term)}`, line(part.text)];
  }
}

/** A line that begins with a dot or an apostrophe would be taken for a request. */
function line(text: string): string {
  return safe(text).replace(/^(?=[.'])/, '\\&');
}

/** A hyphen is one, so that an option can be copied from the page; what else man would read stands for itself. */
function safe(text: string): string {
  return text.replaceAll('\\', '\\e').replaceAll('-', '\\-').replaceAll('"', '\\(dq');
}
