// The lines of a mapping as text: a key and its value a line, the reason behind it as a comment, so that a person can judge it and
// git shows what was changed.

export interface MappingLine {
  readonly key?: string;
  /** Undefined: the key opens a block. */
  readonly value?: string;
  /** The value is YAML already. */
  readonly raw?: boolean;
  readonly why?: string;
  readonly indent?: boolean;
  /** A line that is only offered. */
  readonly comment?: string;
}

export function yamlText(file: string, lines: readonly MappingLine[]): string {
  const head = `# How troughline import reads ${file.replace(/[^\x20-\x7e]/g, '_')}. Change what is wrong, answer each ?, and keep it in git.`;
  return [head, ...lines.map(line), ''].join('\n');
}

function line({ key, value, raw, why, indent, comment }: MappingLine): string {
  const text =
    comment !== undefined
      ? `# ${comment}`
      : `${indent ? '  ' : ''}${plainKey(key ?? '')}:${value === undefined ? '' : ` ${raw ? value : plainKey(value)}`}`;
  const reason = why?.replace(/[\x00-\x1f\x7f-\x9f\u2028\u2029]/g, ' ');
  return reason === undefined ? text : `${text.padEnd(38)} # ${reason}`;
}

/** Plain where YAML takes it for what it is, quoted otherwise. */
export function plainKey(text: string): string {
  if (/^\d{1,4}( to \d+| in h)?$/.test(text)) return text;
  return /^[\p{L}][\p{L}\p{N} ._/()±-]*$/u.test(text) && !/\s$/.test(text) ? text : JSON.stringify(text);
}
