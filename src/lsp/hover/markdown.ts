// A hover in Markdown: a heading, facts as a small table, and how each derived number comes about.

/** A fact of the card; `how` is its formula with the numbers put in, and the source. */
export interface HoverLine {
  readonly name: string;
  readonly value: string;
  readonly how?: string;
}

export function hoverMarkdown(
  heading: string,
  lines: readonly HoverLine[],
  more: readonly string[] = [],
): string {
  const table =
    lines.length === 0
      ? []
      : [
          [
            '| | |',
            '| :-- | :-- |',
            ...lines.map(({ name, value }) => `| ${cell(name)} | ${cell(value)} |`),
          ].join('\n'),
        ];
  const derived = lines
    .filter(({ how }) => how !== undefined)
    .map(({ name, how }) => `- ${name}: ${how ?? ''}`);
  return [
    heading,
    ...table,
    ...(derived.length > 0 ? [`How it is worked out:\n\n${derived.join('\n')}`] : []),
    ...more,
  ].join('\n\n');
}

/** The author's own words, so that they stay text whatever they contain. */
export function plain(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~]/g, (sign) => `\\${sign}`).replace(/\s*\n\s*/g, ' ');
}

function cell(text: string): string {
  return text.replace(/(?<!\\)\|/g, '\\|').replace(/\n/g, ' ');
}

/** A pure function of geometry refuses numbers that make no sense; a card then goes without that line. */
export function attempt<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (fault) {
    if (fault instanceof RangeError) return undefined;
    throw fault;
  }
}

export function line(name: string, value: string | undefined, how?: string): HoverLine[] {
  return value === undefined ? [] : [{ name, value, ...(how === undefined ? {} : { how }) }];
}
