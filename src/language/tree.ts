// The tree that a text is read into, as Langium makes its types from the grammar: the door through which the language
// server sees a text as it is typed, before and beside the model.

export * from './generated/ast.js';
