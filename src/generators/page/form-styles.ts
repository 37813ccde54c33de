// How the offline forms look: black on white for sunlight, nothing smaller than a gloved finger, no colour that carries meaning.

export const formStyles = `
* { box-sizing: border-box; }
html { font: 18px/1.35 system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; color: #000; background: #fff; -webkit-text-size-adjust: 100%; }
body { margin: 0; }
#app { max-width: 560px; margin: 0 auto; padding: 0 12px 180px; }
header { position: sticky; top: 0; z-index: 2; background: #000; color: #fff; margin: 0 -12px 10px; padding: 6px 12px 8px; }
.who { font-size: 15px; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
.look { font-size: 26px; line-height: 1.1; font-weight: 800; letter-spacing: .03em; }
.way { font-size: 15px; }
.not-kept:not(:empty) { font-size: 17px; font-weight: 800; color: #000; background: #fff; margin: 3px 0; padding: 2px 6px; }
h2 { font-size: 20px; margin: 14px 0 6px; }
p { margin: 6px 0; }
ul { margin: 0; padding-left: 22px; }
button { display: block; width: 100%; min-height: 56px; margin: 8px 0; padding: 8px 12px; font: inherit; font-size: 19px; font-weight: 600; color: #000; background: #fff; border: 3px solid #000; border-radius: 10px; touch-action: manipulation; }
button:active { background: #000; color: #fff; }
button:disabled { border-style: dotted; font-weight: 400; }
button.main, button.chosen { background: #000; color: #fff; }
button:focus-visible, input:focus-visible, select:focus-visible, textarea:focus-visible { outline: 4px solid #000; outline-offset: 3px; }
.grid { display: grid; gap: 8px; margin: 8px 0; }
.grid.two { grid-template-columns: 1fr 1fr; }
.grid button { margin: 0; }
.grave { border-style: double; border-width: 6px; }
.label { font-weight: 600; margin: 12px 0 0; }
.field { display: block; margin: 10px 0; }
.field span { display: block; font-weight: 600; }
.field .why:not(:empty) { font-size: 16px; border-left: 8px solid #000; padding-left: 8px; margin-top: 4px; }
input, select, textarea { width: 100%; min-height: 56px; font: inherit; font-size: 20px; padding: 8px 10px; border: 3px solid #000; border-radius: 10px; background: #fff; color: #000; }
textarea { font: 15px/1.4 ui-monospace, Menlo, Consolas, monospace; white-space: pre; }
.caution { border: 3px solid #000; border-left-width: 12px; padding: 6px 10px; border-radius: 6px; }
.caution h2 { margin-top: 2px; }
.hint, .count { font-weight: 600; }
.warn { font-weight: 700; }
.warn:empty { display: none; }
.warn:not(:empty) { border: 4px solid #000; padding: 6px 10px; border-radius: 6px; background: repeating-linear-gradient(45deg, #000 0 4px, #fff 4px 16px) left / 12px 100% no-repeat #fff; padding-left: 22px; }
.warn p { margin: 2px 0; }
.row { display: grid; grid-template-columns: 1fr auto; gap: 0 8px; text-align: left; min-height: 64px; }
.row .clock { font-size: 22px; }
.row .where { font-weight: 400; font-size: 16px; }
.row .value { font-size: 17px; }
.row.done { border-width: 6px; }
.place { display: flex; justify-content: space-between; gap: 8px; }
.place .point { font-size: 30px; line-height: 1.1; font-weight: 800; }
.place .at { font-size: 24px; font-weight: 700; }
.facts { font-size: 16px; }
.face { width: 118px; height: 114px; flex: none; }
.before { border-top: 2px solid #000; border-bottom: 2px solid #000; padding: 4px 0; margin: 4px 0 8px; }
.display { font-size: 30px; font-weight: 800; text-align: center; border: 3px dashed #000; border-radius: 10px; padding: 4px; min-height: 52px; }
.pad { display: grid; grid-template-columns: repeat(3, 1fr); gap: 8px; margin: 8px 0; }
.pad button { margin: 0; font-size: 26px; min-height: 60px; }
nav { position: fixed; left: 0; right: 0; bottom: 0; z-index: 2; display: grid; grid-template-columns: 72px 1fr 1.4fr; gap: 8px; padding: 8px 12px; background: #fff; border-top: 3px solid #000; max-width: 560px; margin: 0 auto; }
nav button { margin: 0; }
nav .ask { grid-column: 1 / -1; }
nav .ask button { margin-top: 12px; }
section.warn { margin: 10px 0; }
nav .warn { grid-column: 1 / -1; font-size: 16px; line-height: 1.25; }
.finding { border: 2px solid #000; border-radius: 10px; padding: 8px; margin: 8px 0; }
footer { margin-top: 14px; font-weight: 600; font-size: 16px; }
@media (prefers-reduced-motion: no-preference) { button { transition: background-color .08s; } }
`;
