// The change summary for a terminal: counts first, then what was edited in the past, then the rest by weight.

import { visibleLine } from '../../domain/units/visible-text.js';
import type { ChangeSummary } from './change-summary.js';
import { headline, sectionsOf, sidesText } from './words.js';

export function changeSummaryText(summary: ChangeSummary): string {
  const sections = sectionsOf(summary).map(({ title, sign, lines }) =>
    [`${title}`, ...lines.map((line) => `  ${sign} ${visibleLine(line)}`)].join('\n'),
  );
  return `${[`${visibleLine(sidesText(summary))}\n${headline(summary)}`, ...sections].join('\n\n')}\n`;
}
