/** Fired clay and soot: a page that is read by the woodpile as well as in print. */
export const STYLE = `
:root { color-scheme: light dark; --paper: #fbf8f3; --card: #fff; --ink: #231f1b; --soft: #5d554c; --line: #d5cabb; --clay: #8f3d12; --danger: #9d1414; --danger-back: #fdeeee;
  --c0: #a8480f; --c1: #1f6f78; --c2: #6b4fa0; --c3: #4a7a1e; --c4: #a12b5e; --c5: #7a6215; }
@media (prefers-color-scheme: dark) { :root { --paper: #191614; --card: #231f1c; --ink: #f0e9df; --soft: #b9aea1; --line: #4a423b; --clay: #f2a66e; --danger: #ff9d94; --danger-back: #3a1a18;
  --c0: #f0995a; --c1: #63c1cb; --c2: #b8a2ea; --c3: #a3cf72; --c4: #ee8fb6; --c5: #d8bf62; } }
* { box-sizing: border-box; }
html { scroll-padding-top: 1rem; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, "Segoe UI", Roboto, "Noto Sans", sans-serif; overflow-wrap: break-word; }
header, main, footer { max-width: 58rem; margin: 0 auto; padding: 0 1rem; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 1.4rem 0 .3rem; }
h2 { font-size: 1.3rem; margin: 2.2rem 0 .6rem; padding-bottom: .2rem; border-bottom: 3px solid var(--clay); }
h3 { font-size: 1.05rem; margin: 0; display: inline; }
h4 { font-size: 1rem; margin: 1.1rem 0 .2rem; }
h5 { font-size: .9rem; margin: .6rem 0 .1rem; color: var(--soft); }
p, ul, ol { margin: .35rem 0; }
ul, ol { padding-inline-start: 1.3rem; }
a { color: var(--clay); }
a:focus-visible, summary:focus-visible, input:focus-visible, .scroll:focus-visible { outline: 3px solid var(--clay); outline-offset: 2px; border-radius: 3px; }
.skip { position: absolute; inset-inline-start: -100vw; }
.skip:focus { inset-inline-start: 1rem; top: .5rem; background: var(--card); padding: .5rem; z-index: 2; }
.soft { color: var(--soft); }
.small { font-size: .85rem; color: var(--soft); }
.danger-box { border: 3px solid var(--danger); background: var(--danger-back); border-radius: 6px; padding: .5rem .8rem; margin: .7rem 0; font-weight: 600; }
.danger-box ul, .danger-box p { margin: 0; }
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .3rem .9rem; margin: .6rem 0; }
nav a { display: inline-block; padding: .25rem 0; }
.search { display: none; margin: 1rem 0; }
.js .search { display: block; }
.search label { font-weight: 600; display: block; }
.search input { width: 100%; font: inherit; padding: .6rem .7rem; border: 2px solid var(--soft); border-radius: 6px; background: var(--card); color: var(--ink); }
#found { list-style: none; padding: 0; margin: .4rem 0 0; }
#found li { border-bottom: 1px solid var(--line); padding: .4rem 0; }
#found a { font-weight: 600; }
details.entry { background: var(--card); border: 1px solid var(--line); border-radius: 6px; margin: .5rem 0; }
details.entry > summary { padding: .6rem .8rem; cursor: pointer; }
details.entry > summary .soft { display: block; font-size: .93rem; }
details.entry > .body { padding: 0 .8rem .8rem; scroll-margin-top: 5.5rem; }
.scroll { overflow-x: auto; max-width: 100%; border: 1px solid var(--line); border-radius: 6px; padding: .5rem; background: var(--paper); }
.share { font-weight: 400; color: var(--soft); }
table { border-collapse: collapse; min-width: 34rem; width: 100%; }
th, td { border: 1px solid var(--line); padding: .25rem .5rem; text-align: start; vertical-align: top; }
svg.tree { display: block; max-width: none; }
svg.tree text { fill: var(--ink); font: 14px system-ui, "Segoe UI", Roboto, "Noto Sans", sans-serif; }
svg.tree text.ask { font-weight: 600; }
svg.tree text.then { font-size: 12px; fill: var(--soft); }
svg.tree text.danger { fill: var(--danger); font-weight: 600; }
svg.tree .box { fill: var(--card); stroke: var(--soft); stroke-width: 1; }
svg.tree .gate { stroke: var(--danger); stroke-width: 2.5; }
svg.tree .dot { fill: none; stroke: var(--soft); stroke-width: 1.5; }
svg.tree .lines path { opacity: .75; }
${[0, 1, 2, 3, 4, 5].map((i) => `svg.tree path.c${i} { stroke: var(--c${i}); } svg.tree rect.c${i} { fill: var(--c${i}); }`).join("\n")}
footer { margin-top: 3rem; padding-bottom: 2rem; }
@media print {
  :root { --paper: #fff; --card: #fff; --ink: #000; --soft: #333; --line: #999; --clay: #000; --danger: #000; --danger-back: #fff; }
  @page { margin: 14mm; }
  body { font-size: 10pt; }
  .search, nav, .skip { display: none !important; }
  details.entry { border: 0; border-top: 1px solid #999; border-radius: 0; break-inside: auto; }
  details::details-content { content-visibility: visible; block-size: auto; }
  h2, h3, h4 { break-after: avoid; }
  li, tr, .danger-box { break-inside: avoid; }
  .scroll { overflow: visible; border: 0; padding: 0; }
  svg.tree { width: 100%; height: auto; break-inside: avoid; }
}
`;
