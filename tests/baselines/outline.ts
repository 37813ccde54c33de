// A page as the text that a person reads, a block a line: for baselines, where a change of words or numbers is to show in review
// and a change of styling or of a drawing is not. Drawings keep their title and description; an offline page keeps its data.

const blocks =
  /^(h[1-6]|p|li|td|th|tr|caption|figcaption|summary|dt|dd|option|legend|label|button|title|desc|div|section|svg|table|form)$/;

/** Heads with their level, items with a dash, table rows with bars; other blocks as they stand. Entities are read. */
export function outlineOf(html: string): string {
  const lines: string[] = [];
  const cells: string[] = [];
  let line = '';
  let inRow = false;
  const end = (prefix = ''): void => {
    const text = readEntities(line.replace(/\s+/g, ' ').trim());
    line = '';
    if (text !== '') lines.push(`${prefix}${text}`);
  };
  const data = /<script type="application\/json"[^>]*>([\s\S]*?)<\/script>/.exec(html)?.[1];
  const bare = html.replace(
    /<!DOCTYPE[^>]*>|<style[\s\S]*?<\/style>|<script[\s\S]*?<\/script>|<text[\s\S]*?<\/text>|<!--[\s\S]*?-->/gi,
    '',
  );
  for (const [, slash, name, text] of bare.matchAll(/<(\/?)([a-zA-Z][\w-]*)(?:[^>"]|"[^"]*")*>|([^<]+)/g)) {
    if (text !== undefined) {
      line += text;
      continue;
    }
    const tag = (name ?? '').toLowerCase();
    if (tag === 'br') line += ' / ';
    if (tag === 'span') line += ' ';
    if (inRow && (tag === 'td' || tag === 'th')) {
      if (slash) {
        cells.push(readEntities(line.replace(/\s+/g, ' ').trim()));
        line = '';
      }
      continue;
    }
    if (tag === 'tr') {
      if (slash) lines.push(`| ${cells.splice(0).join(' | ')} |`);
      inRow = !slash;
      line = '';
      continue;
    }
    if (inRow) {
      if (blocks.test(tag)) line += ' ';
    } else if (blocks.test(tag)) end(slash ? prefixOf(tag) : '');
  }
  end();
  if (data !== undefined) lines.push('', '## Data', dataLines(JSON.parse(data)));
  return `${lines.join('\n')}\n`;
}

/** Data with what fits a line on one line; numbers to six digits, which is more than anybody measures. */
export function dataLines(value: unknown, indent = ''): string {
  const short = JSON.stringify(value, sixDigits);
  if (typeof value !== 'object' || value === null || indent.length + short.length <= 110) return short;
  const deeper = `${indent} `;
  const inside = Array.isArray(value)
    ? value.map((each) => deeper + dataLines(each, deeper))
    : Object.entries(value).map(
        ([key, each]) => `${deeper}${JSON.stringify(key)}: ${dataLines(each, deeper)}`,
      );
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${inside.join(',\n')}\n${indent}${close}`;
}

function sixDigits(_: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(6)) : value;
}

function prefixOf(tag: string): string {
  const level = /^h([1-6])$/.exec(tag)?.[1];
  if (level !== undefined) return `\n${'#'.repeat(Number(level))} `;
  return tag === 'li' ? '- ' : '';
}

function readEntities(text: string): string {
  return text
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&nbsp;/g, ' ')
    .replace(/&amp;/g, '&');
}
