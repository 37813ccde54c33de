// What a number typed by hand says: read where only one reading is possible, else marked unreadable with the reason in words.
// Decimal comma or point, blanks between thousands where a counter is asked for, and the unit of the field itself are certain; a
// unit of another field, a sign, a word or a number that may be meant in two ways is not. Nothing typed is ever guessed at.

export type TypedNumber =
  | { readonly kind: 'blank' }
  /** As the language reads it, without a unit. */
  | { readonly kind: 'read'; readonly text: string; readonly value: number }
  | { readonly kind: 'unreadable'; readonly why: string };

export interface NumberField {
  /** The unit of the field and its other spellings, the first for messages. */
  readonly units: readonly string[];
  /** The largest value that the records take, in that unit. */
  readonly most: number;
  /** A counter: blanks may stand between its thousands, and three figures after a comma may be thousands too. */
  readonly counter?: boolean;
}

export function typedNumber(typed: string, field: NumberField): TypedNumber {
  const tidy = typed.replace(/\s+/g, ' ').replace(/−/g, '-').trim();
  if (tidy === '') return { kind: 'blank' };
  const unit = field.units[0] ?? '';
  const bare = withoutUnit(tidy, field.units);
  if (/^-/.test(bare)) return unreadable('it is below zero');
  const digits = field.counter ? joined(bare) : bare;
  const other = /^[\d.,]+ ?([a-z%"°]+)$/i.exec(digits);
  if (other) return unreadable(`this field is in ${unit}, not in ${other[1] ?? ''}`);
  if (/^\d[\d ]*$/.test(digits)) {
    if (digits.includes(' ')) return unreadable('the blank in it leaves open which number is meant');
  }
  if (!/^(\d+[.,]?\d*|[.,]\d+)$/.test(digits)) return unreadable(`it is no number of ${unit}`);
  if (field.counter && /^\d{1,3}[.,]\d{3}$/.test(digits)) return unreadable(twoWays(digits));
  const text = asWritten(digits);
  const value = Number(text);
  if (value > field.most) return unreadable(`it is more than ${field.most} ${unit}`);
  return { kind: 'read', text, value };
}

function unreadable(why: string): TypedNumber {
  return { kind: 'unreadable', why };
}

/** The longest spelling first, so that `h` does not leave `24 000 our` of hours. */
function withoutUnit(tidy: string, units: readonly string[]): string {
  const lower = tidy.toLowerCase();
  const found = [...units]
    .sort((a, b) => b.length - a.length)
    .find((unit) => lower.endsWith(unit.toLowerCase()) && /[\d.,] ?$/.test(tidy.slice(0, -unit.length)));
  return found === undefined ? tidy : tidy.slice(0, -found.length).trim();
}

/** 24 000 as 24000, only where every group but the first has three figures. */
function joined(text: string): string {
  return /^\d{1,3}( \d{3})+([.,]\d*)?$/.test(text) ? text.replace(/ /g, '') : text;
}

function twoWays(digits: string): string {
  const [whole = '', rest = ''] = digits.split(/[.,]/);
  return `it may be ${whole} and a part, or ${whole}${rest}: type it without comma or point`;
}

function asWritten(digits: string): string {
  const pointed = digits.replace(',', '.');
  return (pointed.startsWith('.') ? `0${pointed}` : pointed).replace(/^0+(?=\d)/, '').replace(/\.$/, '');
}
