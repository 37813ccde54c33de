// How the offline forms look: black on white for sunlight, nothing smaller than a gloved finger, no colour that carries meaning.
// Sizes of letters follow what the phone's owner has set (rem), up to twice as large; what must stay in sight (the side of looking,
// the number typed) sticks to the top, and keeps to one line where the screen is low.

export const formStyles = `
* { box-sizing: border-box; }
html { font: 112.5%/1.35 system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; color: #000; background: #fff; -webkit-text-size-adjust: 100%; scroll-padding: 5rem 0 9rem; }
body { margin: 0; overflow-wrap: anywhere; }
#app { max-width: 560px; margin: 0 auto; padding: 0 12px 10rem; }
header { background: #000; color: #fff; margin: 0 -12px; padding: 6px 12px 2px; }
#bar { position: sticky; top: 0; z-index: 2; display: flex; flex-wrap: wrap; align-items: center; justify-content: space-between; gap: 2px 8px; background: #000; color: #fff; margin: 0 -12px 8px; padding: 4px 12px 6px; }
#app.narrow header { display: none; }
header .look, #bar .look { font-size: 1rem; line-height: 1.1; font-weight: 800; letter-spacing: .02em; }
.who { font-size: .85rem; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
.way { font-size: .85rem; }
.not-kept:not(:empty) { flex-basis: 100%; font-size: .95rem; font-weight: 800; color: #000; background: #fff; padding: 2px 6px; }
.unseen { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
#view:focus { outline: none; }
h1, h2, h3 { margin: .8rem 0 .3rem; }
h2 { font-size: 1.1rem; }
h3 { font-size: 1rem; }
p { margin: 6px 0; }
ul { margin: 0; padding-left: 22px; }
button { display: block; width: 100%; min-height: 56px; margin: 8px 0; padding: 6px 10px; font: inherit; font-size: 1.05rem; font-weight: 600; color: #000; background: #fff; border: 3px solid #000; border-radius: 10px; touch-action: manipulation; }
button:active { background: #000; color: #fff; }
button:disabled { border-style: dotted; font-weight: 400; }
button.main, button.chosen { background: #000; color: #fff; }
button:focus-visible, input:focus-visible, select:focus-visible, textarea:focus-visible { outline: 4px solid #000; outline-offset: 3px; }
.grid { display: grid; gap: 8px; margin: 8px 0; }
.grid.one { grid-template-columns: 1fr; }
.grid.two { grid-template-columns: repeat(auto-fit, minmax(min(9rem, 100%), 1fr)); }
.grid.three { grid-template-columns: repeat(auto-fit, minmax(min(5.5rem, 100%), 1fr)); }
.grid.pair { grid-template-columns: repeat(auto-fit, minmax(min(8.5rem, 100%), 1fr)); align-items: start; margin: 0; }
.grid.pair .field { margin: 2px 0 8px; }
.grid.pair .field span { font-size: .9rem; font-weight: 400; }
.grid button { margin: 0; }
.grave { border-style: double; border-width: 6px; }
.label { font-weight: 600; margin: 12px 0 0; }
.field { display: block; margin: 10px 0; }
.field span { display: block; font-weight: 600; }
.field .why:not(:empty) { font-size: .9rem; border-left: 8px solid #000; padding-left: 8px; margin-top: 4px; }
input, select, textarea { width: 100%; min-height: 56px; font: inherit; font-size: 1.1rem; padding: 8px 10px; border: 3px solid #000; border-radius: 10px; background: #fff; color: #000; }
textarea { font: .85rem/1.4 ui-monospace, Menlo, Consolas, monospace; white-space: pre; }
.caution { border: 3px solid #000; border-left-width: 12px; padding: 6px 10px; border-radius: 6px; margin-top: 8px; }
.caution h2 { margin-top: 2px; }
.hint, .count { font-weight: 600; }
.warn { font-weight: 700; }
.warn:empty { display: none; }
.warn:not(:empty) { border: 4px solid #000; padding: 6px 10px; border-radius: 6px; background: repeating-linear-gradient(45deg, #000 0 4px, #fff 4px 16px) left / 12px 100% no-repeat #fff; padding-left: 22px; }
.warn p { margin: 2px 0; }
.row { display: grid; grid-template-columns: minmax(55%, 1fr) auto; gap: 0 8px; text-align: left; min-height: 64px; }
.row .clock { font-size: 1.2rem; text-align: right; }
.row .where { font-weight: 400; font-size: .9rem; }
.row .value { font-size: .95rem; text-align: right; }
.row.done { border-width: 6px; }
.place { display: flex; justify-content: space-between; gap: 8px; }
.place .point { margin: 0; font-size: 1.6rem; line-height: 1.1; font-weight: 800; }
.place .point small { font-size: .85rem; font-weight: 600; }
.place .at { font-size: 1.25rem; line-height: 1.2; font-weight: 700; }
.facts { font-size: .85rem; line-height: 1.25; }
.face { width: 100px; height: 97px; flex: none; }
.before { border-top: 2px solid #000; border-bottom: 2px solid #000; padding: 3px 0; margin: 4px 0 6px; font-size: .95rem; line-height: 1.25; }
.basis { font-size: .8rem; }
#bar .display { font-size: 1.35rem; line-height: 1.15; font-weight: 800; text-align: center; color: #000; background: #fff; border-radius: 6px; padding: 2px 10px; flex: 1 1 100%; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
.pad { display: grid; grid-template-columns: repeat(3, 1fr); gap: 6px; margin: 6px 0; }
.pad button { margin: 0; font-size: 1.4rem; line-height: 1.1; min-height: 56px; padding: 2px; }
nav { position: fixed; left: 0; right: 0; bottom: 0; z-index: 2; display: grid; grid-template-columns: minmax(56px, auto) auto 1fr; gap: 8px; padding: 6px 12px; background: #fff; border-top: 3px solid #000; max-width: 560px; max-height: 70vh; overflow-y: auto; margin: 0 auto; }
nav button { margin: 0; white-space: nowrap; padding: 6px; font-size: min(1.05rem, 7vw); }
nav .ask button { white-space: normal; }
nav .ask { grid-column: 1 / -1; }
nav .ask button { margin-top: 12px; }
section.warn { margin: 10px 0; }
nav .warn { grid-column: 1 / -1; max-height: 24vh; overflow-y: auto; font-size: .9rem; line-height: 1.25; }
.finding { border: 2px solid #000; border-radius: 10px; padding: 8px; margin: 8px 0; }
footer { margin-top: 14px; font-weight: 600; font-size: .9rem; }
@media (min-width: 560px) and (max-height: 480px) {
  #app, nav { max-width: 820px; }
  #view[data-view=point] { display: grid; grid-template-columns: 1fr 1fr; gap: 0 12px; align-items: start; grid-auto-flow: dense; }
  #view[data-view=point] > * { grid-column: 2; }
  #view[data-view=point] > .place, #view[data-view=point] > .before { grid-column: 1; }
  #view[data-view=point] > .pad { grid-row: 1 / span 6; }
  nav { grid-template-columns: 1fr 64px auto auto; align-items: end; }
  #bar .display { flex: 0 1 auto; min-width: 8rem; }
  nav .warn { grid-column: 1; grid-row: 1; max-height: 64px; }
  nav button { grid-row: 1; }
}
@media (prefers-reduced-motion: no-preference) { button { transition: background-color .08s; } }
`;
