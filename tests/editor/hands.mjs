// What a person does in the workbench, in a few words each.

import { until } from './workbench.mjs';

export function handsOf(page) {
  const quickInput = page.locator('.quick-input-widget:visible');

  /** Opens the quick input by a key, types, and takes the row; again where a late change of focus has closed it. */
  const choose = async (key, text, row) =>
    until(
      async () => {
        await page.keyboard.press('Escape');
        await page.keyboard.press(key);
        await quickInput.locator('input').fill(text, { timeout: 3000 });
        await quickInput
          .locator('.quick-input-list .monaco-list-row')
          .filter(row)
          .first()
          .click({ timeout: 3000 });
        return true;
      },
      30_000,
      () => `nothing to choose for ${text}`,
    );

  const command = async (title) => choose('F1', `>${title}`, { hasText: title });

  const openFile = async (name) => {
    const short = name.split('/').at(-1);
    await choose('Control+P', name, {
      has: page.locator('.label-name', { hasText: new RegExp(`^${short.replaceAll('.', '[.]')}$`) }),
    });
    await page.locator('.tab.active', { hasText: short }).waitFor();
    await page.locator('.editor-group-container.active .monaco-editor .view-line').first().waitFor();
  };

  /** A piece of text in the active editor. */
  const words = (text) =>
    page.locator('.editor-group-container.active .monaco-editor .view-line span > span', { hasText: text });

  const hover = async (text) => {
    const shown = page.locator('.monaco-hover:visible').filter({ hasText: /\S/ }).first();
    // Tokens are drawn anew when meaning arrives, and lines move when lenses do: look again until a hover stands.
    return until(
      async () => {
        await page.mouse.move(2, 2);
        const box = await words(text).first().boundingBox({ timeout: 2000 });
        await page.mouse.move(box.x + Math.min(box.width / 2, 30), box.y + box.height / 2, { steps: 4 });
        await shown.waitFor({ timeout: 3000 });
        await page.waitForTimeout(300);
        return shown;
      },
      20_000,
      () => `no hover on ${text}`,
    );
  };

  /** The quick fix menu on some words; asked for again where the light bulb was not ready. */
  const quickFixes = async (text, which = 'first') => {
    const menu = page.locator('.action-widget:visible');
    await until(
      async () => {
        await page.keyboard.press('Escape');
        await words(text)[which]().click({ timeout: 3000 });
        await page.keyboard.press('Control+.');
        await menu.locator('.monaco-list-row.action').first().waitFor({ timeout: 3000 });
        return true;
      },
      30_000,
      () => `no quick fix on ${text}`,
    );
    return menu;
  };

  /** Answers one question of several; the title tells which one is asked. */
  const answer = async (title, text) => {
    await quickInput.locator('.quick-input-title', { hasText: title }).waitFor();
    await quickInput.locator('input').fill(text);
    await page.keyboard.press('Enter');
  };

  /** What is typed is not taken, and the reason stands below it. */
  const refused = async (title, text, reason) => {
    await quickInput.locator('.quick-input-title', { hasText: title }).waitFor();
    await quickInput.locator('input').fill(text);
    await quickInput.locator('.quick-input-message', { hasText: reason }).waitFor();
  };

  /** Takes a row of a list that a command has opened. */
  const choosePicked = async (name) =>
    quickInput.locator('.monaco-list-row', { hasText: name }).first().click();

  const cursorAt = async (place) =>
    until(
      async () =>
        (
          await page
            .locator('.statusbar-item', { hasText: /Ln \d+, Col/ })
            .first()
            .innerText()
        ).includes(place),
      30_000,
      () => `the cursor is not at ${place}`,
    );

  /** The text of the active editor as it is on the screen, blanks made plain. */
  const onScreen = async () =>
    (await page.locator('.editor-group-container.active .monaco-editor .view-line').allInnerTexts())
      .map((line) => line.replaceAll('\u00a0', ' '))
      .join('\n');

  const problems = async () => {
    await command('Problems: Focus on Problems View');
    await page.locator('.markers-panel .monaco-list-row').first().waitFor();
  };

  const save = async () => {
    await page.keyboard.press('Control+S');
    await page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
  };

  const webview = () => page.frameLocator('iframe.webview.ready').last().frameLocator('iframe#active-frame');

  return {
    answer,
    refused,
    choosePicked,
    cursorAt,
    command,
    openFile,
    words,
    hover,
    onScreen,
    quickFixes,
    problems,
    save,
    webview,
    quickInput,
  };
}
