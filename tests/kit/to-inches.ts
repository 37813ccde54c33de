// A text in metres and millimetres as its author would have written it in feet and inches: every length outside quotes and
// comments, exact to a millionth. Names and words stay.

const metric = /(\d+(?:\.\d+)?)(\s*)(mm|cm|m)\b(?![/·3³²])/g;
const apart = /("(?:[^"\\\n]|\\.)*"|\/\/[^\n]*|\/\*[\s\S]*?\*\/)/;

export function toInches(text: string): string {
  return text
    .split(apart)
    .map((piece, i) => (i % 2 === 1 ? piece : piece.replace(metric, length)))
    .join('');
}

function length(_: string, digits: string, gap: string, unit: string): string {
  const mm = Number(digits) * { mm: 1, cm: 10, m: 1000 }[unit as 'mm' | 'cm' | 'm'];
  const [size, name] = unit === 'm' ? [mm / 304.8, 'ft'] : [mm / 25.4, 'in'];
  return `${Number(size.toFixed(6))}${gap}${name}`;
}

/** Lengths in metric units that do not stand in brackets behind the other unit. */
export function metricLengths(words: string): readonly string[] {
  return (
    words
      .replace(/\([^()]*\d (?:mm|m)\b[^()]*\)/g, '')
      .match(/[^|\n]{0,40}?\d ?(?:mm|m(?!\/s)|metres?|millimetres?)\b(?![·3³²])/g) ?? []
  );
}
