// How wide a line of lettering prints. The widths are those of an ordinary sans serif, taken a little wide (the widest
// of the common system fonts), so that a label laid out with them never touches its neighbour whichever font prints it.

const narrow = new Set([..."ijl.,:;|!'`/\\()[]{}"]);
const wide = new Set([...'mwMW@%']);

/** Width in mm of `text` at a font size in mm; never negative, an upper estimate for Latin lettering. */
export function textWidth(text: string, fontSize: number): number {
  let em = 0;
  for (const character of text) em += widthOf(character);
  return em * fontSize;
}

/** The text cut with an ellipsis to stay within `width` mm; the empty string where not even one letter fits. */
export function fitText(text: string, width: number, fontSize: number): string {
  if (textWidth(text, fontSize) <= width) return text;
  let kept = '';
  for (const character of text) {
    if (textWidth(`${kept}${character}…`, fontSize) > width) break;
    kept += character;
  }
  return kept === '' ? '' : `${kept.trimEnd()}…`;
}

/** The text in lines no wider than `width` mm, broken at spaces; a single word that is wider stands alone. */
export function wrapText(text: string, width: number, fontSize: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, fontSize) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
}

function widthOf(character: string): number {
  if (character === ' ') return 0.32;
  if (narrow.has(character)) return 0.36;
  if (wide.has(character)) return 0.98;
  if (character >= '0' && character <= '9') return 0.62;
  if (character >= 'A' && character <= 'Z') return 0.72;
  if (character > '\u2e7f') return 1.02;
  return 0.6;
}
