// Where comments stand and what they say, and which of them describes a block.

import { describe, expect, it, test } from 'vitest';
import { docBefore, scanComments, withoutComments, withoutTexts } from '../../src/language/comments.js';

const found = (text: string): readonly (readonly [string, string, string])[] =>
  scanComments(text).map(({ kind, text: said, start, end }) => [kind, said, text.slice(start, end)]);

describe('found', () => {
  test.each<[string, string, readonly (readonly [string, string, string])[]]>([
    [
      'two strokes up to the end of the line',
      'a //  so it is  \nb',
      [['line', 'so it is', '//  so it is  ']],
    ],
    ['two strokes up to an end as other systems write it', 'a // so\r\nb', [['line', 'so', '// so']]],
    ['two strokes alone', '//\nb', [['line', '', '//']]],
    ['three strokes', '/// so', [['line', '/ so', '/// so']]],
    ['a block', 'a /* so\n it is */ b', [['block', 'so\n it is', '/* so\n it is */']]],
    ['a block with a star in it', '/* 2 * 3 **/', [['block', '2 * 3 *', '/* 2 * 3 **/']]],
    [
      'two blocks of one line',
      '/* a *//* b */',
      [
        ['block', 'a', '/* a */'],
        ['block', 'b', '/* b */'],
      ],
    ],
    ['an empty block', '/**/ a', [['block', '', '/**/']]],
    ['one that describes', '/** so */ a', [['doc', 'so', '/** so */']]],
    ['an empty one that describes', '/***/ a', [['doc', '', '/***/']]],
    ['a line inside a block is no comment of its own', '/* // a */ b', [['block', '// a', '/* // a */']]],
    ['a block inside a line is none', '// /* a\nb */', [['line', '/* a', '// /* a']]],
    ['none in a text', 'by "a // b /* c */"', []],
    ['one behind a text', 'by "a // b" // c', [['line', 'c', '// c']]],
    ['an empty text opens none', 'by "" // a "b"', [['line', 'a "b"', '// a "b"']]],
    ['a text that is not closed ends with its line', 'by "a\n// b', [['line', 'b', '// b']]],
    ['an inch mark opens no text', 'pitch 14" // a "b" c', [['line', 'a "b" c', '// a "b" c']]],
    ['nor at the end of a line', 'pitch 14"\n// a', [['line', 'a', '// a']]],
    ['nor behind a fraction and a blank', 'pitch 1 3/8 " // "', [['line', '"', '// "']]],
    [
      'nor behind a decimal, point or comma',
      'pitch 1.5" // a\nx 1,5" // b',
      [
        ['line', 'a', '// a'],
        ['line', 'b', '// b'],
      ],
    ],
    ['at the very end of the text', 'pitch 14"', []],
    ['a quote behind a number that opens a text does', 'P1 thickness 8"x // y"', []],
    ['a digit in a name makes no inch mark', 'photo P1" // a"', []],
    ['a digit behind a point makes none either', 'photo .5" // a"', []],
    ['a block without an end is none', 'a /* so', []],
    ['a single stroke is none', '3/8 in / *', []],
  ])('%s', (_, text, expected) => {
    expect(found(text)).toEqual(expected);
  });

  test.each([
    ['stars and one blank before each line', '/**\n * One.\n *   Two.\n */', 'One.\n  Two.'],
    ['without stars', '/**\n   One.\n\tTwo.\n*/', 'One.\nTwo.'],
    ['blanks before a line that has no star', '/** One.\n     Two. */', 'One.\nTwo.'],
    ['blanks at the ends', '/** One.   \n * Two.\t\n */', 'One.\nTwo.'],
    ['an empty line between', '/** One.\n *\n * Two. */', 'One.\n\nTwo.'],
    ['lines as other systems end them', '/** One.\r\n * Two.\r * Three. */', 'One.\nTwo.\nThree.'],
    ['a star that belongs to it', '/** One * two */', 'One * two'],
    ['a star at the head of its own line', '/** * One */', 'One'],
  ])('what describes, without its marks: %s', (_, text, said) => {
    expect(scanComments(text)).toMatchObject([{ kind: 'doc', text: said }]);
  });
});

describe('a line', () => {
  test.each([
    ['by "x" // as told', 'by "x" ', 'by  // as told'],
    ['a /* b */ c "d // e" f', 'a  c "d // e" f', 'a /* b */ c  f'],
    ['a /* open "b"', 'a /* open "b"', 'a /* open '],
    ['pitch 14" "b" // c', 'pitch 14" "b" ', 'pitch 14"  // c'],
  ])('%s: without its comments, and without its texts', (line, bare, silent) => {
    expect([withoutComments(line), withoutTexts(line)]).toEqual([bare, silent]);
  });
});

describe('which describes a block', () => {
  const doc = (text: string): string | undefined =>
    docBefore(text, scanComments(text), text.indexOf('plant'));
  test.each([
    ['right before it', '/** A */plant', 'A'],
    ['on the line above', '/** A */\n\n  plant', 'A'],
    ['the last of several', '/** A */ /** B */ plant', 'B'],
    ['with one behind the block', '/** A */ plant { } /** B */', 'A'],
    ['with several behind the block', '/** A */ plant { } /** B */ // C\n/* D */ // E', 'A'],
    ['with several before and behind', '// 1\n// 2\n/* 3 */\n/** A */ plant { } // C\n/** B */', 'A'],
  ])('%s', (_, text, said) => expect(doc(text)).toBe(said));
  test.each([
    ['no comment at all', ' plant'],
    ['only one behind it', 'plant { } /** B */'],
    ['a plain block', '/* A */ plant'],
    ['two strokes', '// A\nplant'],
    ['an empty one', '/** */ plant'],
    ['something between', '/** A */ x plant'],
    ['a plain comment between', '/** A */ // b\nplant'],
  ])('none: %s', (_, text) => expect(doc(text)).toBeUndefined());

  it('one that holds the place is not before it', () => {
    const text = '/** a plant */';
    expect(docBefore(text, scanComments(text), text.indexOf('plant'))).toBeUndefined();
  });
});
