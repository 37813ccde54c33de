// A number as people type it, as the digits the language takes: `8,4`, `1.234,5`, `1 234`, `.85`. The decimal mark is stated, so
// that no comma is ever guessed at; a number that does not fit it is refused with the reason.

export type Decimal = '.' | ',';

export type Digits =
  { readonly ok: true; readonly digits: string } | { readonly ok: false; readonly why: string };

const groups = "[ \\u00a0\\u2009\\u202f']";

export function readDigits(text: string, decimal: Decimal): Digits {
  const tidy = text.trim().replace(/^\+/, '').replace(/−/g, '-');
  if (tidy.startsWith('-') && /\d/.test(tidy)) return { ok: false, why: `${text} is below zero` };
  const mark = decimal === '.' ? '\\.' : ',';
  const other = decimal === '.' ? ',' : '\\.';
  const plain = new RegExp(`^(?:\\d+(?:${mark}\\d*)?|${mark}\\d+)$`);
  const grouped = new RegExp(`^\\d{1,3}(?:(?:${groups}\\d{3})+|(?:${other}\\d{3})+)(?:${mark}\\d+)?$`);
  if (!plain.test(tidy) && !grouped.test(tidy)) {
    const swapped = new RegExp(`^\\d*${other}\\d+$`).test(tidy);
    return {
      ok: false,
      why: swapped ? `${text} does not fit the decimal mark "${decimal}"` : `${text} is not a number`,
    };
  }
  const digits = tidy
    .replace(new RegExp(groups, 'g'), '')
    .replace(new RegExp(other, 'g'), '')
    .replace(',', '.');
  return { ok: true, digits: plainDigits(digits) };
}

/** A cell's own number to the 15 digits that a spreadsheet shows, without an exponent. */
export function digitsOf(value: number): string {
  const text = String(Number(value.toPrecision(15)));
  return /e/i.test(text) ? value.toFixed(12).replace(/\.?0+$/, '') : text;
}

function plainDigits(digits: string): string {
  const [whole = '', part = ''] = digits.split('.');
  const front = whole.replace(/^0+(?=\d)/, '') || '0';
  return part === '' ? front : `${front}.${part}`;
}
