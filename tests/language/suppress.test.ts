// Comments that silence a finding: how they are written, and the line each holds for.

import { describe, expect, it } from 'vitest';
import { scanComments } from '../../src/language/comments.js';
import { suppressionsOf } from '../../src/language/suppress.js';

const read = (text: string) => {
  const { suppressions, problems } = suppressionsOf(text, scanComments(text), 0);
  return {
    problems,
    found: suppressions.map(({ code, reason, until, from, to }) => ({
      code,
      reason,
      until,
      line: text.slice(from, to).trim(),
    })),
  };
};

describe('a comment with a reason', () => {
  it('on the line of code holds for that line', () => {
    expect(read('plant A {\n  duty 5 h/d // allow TL201 because "tried"\n}').found).toMatchObject([
      { code: 'TL201', reason: 'tried', line: 'duty 5 h/d // allow TL201 because "tried"' },
    ]);
  });
  it('on a line of its own holds for the next line of code', () => {
    expect(read('// allow TL201 because "tried"\n\n// and a remark\n  plant A {\n').found[0]?.line).toBe(
      'plant A {',
    );
  });
  it('of which several stand one above the other all hold for the code below', () => {
    expect(
      read('// allow TL201 because "a"\n// allow TL202 because "b"\nplant A { }').found.map(
        (one) => one.line,
      ),
    ).toEqual(['plant A { }', 'plant A { }']);
  });
  it.each(['TL201, TL202', 'TL201 TL202', 'TL201 and tl202', 'TL201,TL202, TL201'])(
    'may name several codes: %s',
    (codes) => {
      const { found, problems } = read(`// allow ${codes} until 2027-03-01 because "tried"\nplant A { }`);
      expect(problems).toEqual([]);
      expect(found.map(({ code, reason, line }) => [code, reason, line])).toEqual([
        ['TL201', 'tried', 'plant A { }'],
        ['TL202', 'tried', 'plant A { }'],
      ]);
    },
  );
  it('may say until when', () => {
    expect(
      read('// allow TL201 until 2027-03-01 because "gate is replaced then"\nplant A { }').found[0],
    ).toMatchObject({ until: 20_878, reason: 'gate is replaced then' });
  });
  it('may be a block comment, and leave the quotes out', () => {
    expect(read('/* allow tl201 because gate is replaced */ plant A { }').found[0]).toMatchObject({
      code: 'TL201',
      reason: 'gate is replaced',
    });
  });
  it('holds over Windows line ends', () =>
    expect(read('// allow TL201 because "a"\r\nplant A { }\r\nplant B { }').found[0]?.line).toBe(
      'plant A { }',
    ));
});

describe('what is not one', () => {
  it('a remark that begins with the word allow', () =>
    expect(read('// allow ten minutes for gas testing\nplant A { }')).toEqual({ found: [], problems: [] }));
  it('a quoted text', () =>
    expect(read('by "// allow TL201 because x"')).toEqual({ found: [], problems: [] }));
});

describe('one that is not right', () => {
  it('has no reason', () => {
    expect(read('// allow TL201\n').problems).toMatchObject([
      { kind: 'suppression without reason', code: 'TL201' },
    ]);
    expect(read('// allow TL201 because ""\n').problems).toMatchObject([
      { kind: 'suppression without reason' },
    ]);
  });
  it('has no code, or words that cannot be read', () => {
    expect(read('// allow because "so"\n').problems).toMatchObject([{ kind: 'syntax' }]);
    expect(read('// allow TL201 becuase "so"\n').problems).toMatchObject([{ kind: 'syntax' }]);
    expect(read('// allow TL201 because "so" and more\n').problems).toMatchObject([{ kind: 'syntax' }]);
  });
  it('has a date of another form, or one that does not exist', () => {
    const text = '// allow TL201 until 14/03/2027 because "so"\n';
    const [problem] = read(text).problems;
    expect(problem).toMatchObject({ kind: 'date form', corrected: '2027-03-14' });
    expect(text.slice(problem?.origin.start, problem?.origin.end)).toBe('14/03/2027');
    expect(read('// allow TL201 until 2027-02-30 because "so"\n').problems).toMatchObject([
      { kind: 'no such date' },
    ]);
  });
});

describe('comments', () => {
  it('are found outside quoted texts only, and an inch mark opens none', () => {
    expect(
      scanComments('pitch 14" // see "note"\nby "a // b" /* c */').map((comment) => comment.text),
    ).toEqual(['see "note"', 'c']);
  });
  it('without an end are none', () => expect(scanComments('plant A { } /* so on')).toEqual([]));
});
