// `troughline serve --stdio`: the language server for any editor. It ends when the editor closes the connection.

export async function serve(): Promise<number> {
  const { serveStdio } = await import('../../lsp/main.js');
  return serveStdio();
}
