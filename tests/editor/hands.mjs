// What a person does in the workbench, in a few words each.

import { until } from './workbench.mjs';

export function handsOf(page) {
  const quickInput = page.locator('.quick-input-widget:visible');

  const command = async (title) => {
    await page.keyboard.press('Escape');
    await page.keyboard.press('F1');
    await quickInput.locator('input').fill(`>${title}`);
    await quickInput.locator('.quick-input-list .monaco-list-row.focused', { hasText: title }).first().waitFor();
    await page.keyboard.press('Enter');
  };

  const openFile = async (name) => {
    const short = name.split('/').at(-1);
    await page.keyboard.press('Control+P');
    await quickInput.locator('input').fill(name);
    await quickInput.locator('.quick-input-list .monaco-list-row').filter({ has: page.locator('.label-name', { hasText: new RegExp(`^${short.replaceAll('.', '[.]')}$`) }) }).first().click();
    await page.locator('.tab.active', { hasText: short }).waitFor();
    await page.locator('.editor-group-container.active .monaco-editor .view-line').first().waitFor();
  };

  /** A piece of text in the active editor. */
  const words = (text) => page.locator('.editor-group-container.active .monaco-editor .view-line span > span', { hasText: text });

  const hover = async (text) => {
    const shown = page.locator('.monaco-hover:visible').filter({ hasText: /\S/ }).first();
    // Tokens are drawn anew when meaning arrives, and lines move when lenses do: look again until a hover stands.
    return until(async () => {
      await page.mouse.move(2, 2);
      const box = await words(text).first().boundingBox({ timeout: 2000 });
      await page.mouse.move(box.x + Math.min(box.width / 2, 30), box.y + box.height / 2, { steps: 4 });
      await shown.waitFor({ timeout: 3000 });
      await page.waitForTimeout(300);
      return shown;
    }, 20_000, () => `no hover on ${text}`);
  };

  /** The text of the active editor as it is on the screen, blanks made plain. */
  const onScreen = async () =>
    (await page.locator('.editor-group-container.active .monaco-editor .view-line').allInnerTexts()).map((line) => line.replaceAll('\u00a0', ' ')).join('\n');

  const problems = async () => {
    await command('Problems: Focus on Problems View');
    await page.locator('.markers-panel .monaco-list-row').first().waitFor();
  };

  const save = async () => {
    await page.keyboard.press('Control+S');
    await page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
  };

  const webview = () => page.frameLocator('iframe.webview.ready').last().frameLocator('iframe#active-frame');

  return { command, openFile, words, hover, onScreen, problems, save, webview, quickInput };
}
