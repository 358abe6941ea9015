/** The page's own style: readable in sunlight, on paper and without colour. */
export const STYLE = `
:root { color: #1b2a33; background: #fff; font: 15px/1.45 Arial, Helvetica, sans-serif; }
body { margin: 0 auto; max-width: 1120px; padding: 20px 24px 60px; }
h1 { font-size: 24px; margin: 0 0 2px; } h2 { font-size: 18px; margin: 34px 0 8px; } h3 { font-size: 15px; margin: 22px 0 4px; }
p { margin: 4px 0; } .quiet { color: #4b5a63; }
.caution { background: #fff3c9; border-left: 6px solid #7a4e00; padding: 8px 12px; margin: 14px 0; }
.counts { display: flex; flex-wrap: wrap; gap: 8px; margin: 12px 0; padding: 0; list-style: none; }
.counts li { padding: 6px 14px; font-weight: bold; border: 1px solid #1b2a33; }
table { border-collapse: collapse; width: 100%; } th, td { border: 1px solid #9aa7ae; padding: 5px 8px; text-align: left; vertical-align: top; }
caption { text-align: left; padding: 10px 0 4px; color: #4b5a63; }
thead th { background: #24404d; color: #fff; } tbody th { background: #f1f4f5; white-space: nowrap; }
td.word { font-weight: bold; white-space: nowrap; } .scroll { overflow-x: auto; }
figure { margin: 8px 0 18px; overflow-x: auto; } :is(figure, [role=img]) svg { width: 100%; min-width: 860px; height: auto; } td { min-width: 5em; } td.wide { min-width: 22em; } svg a { cursor: pointer; }
a { color: #14506b; } a:focus-visible { outline: 3px solid #14506b; outline-offset: 2px; }
tr:target { outline: 3px solid #14506b; }
@page { margin: 12mm; }
@media print {
  body { padding: 0; max-width: none; font-size: 11px; } h2, h3, caption { break-after: avoid; }
  tr, figure, .plot { break-inside: avoid; } thead { display: table-header-group; }
  a { color: inherit; text-decoration: none; } .quiet, caption { color: #1b2a33; }
  :is(figure, [role=img]) svg { min-width: 0 !important; } .scroll, figure { overflow: visible; }
  .counts li, thead th { background: #fff !important; color: #1b2a33 !important; } thead th { border-bottom: 2px solid #1b2a33; }
  th, td { padding: 4px 6px; } .matrix { font-size: 10px; } .matrix :is(th, td) { padding: 3px 4px; } td { min-width: 0; } td.wide { min-width: 16em; }
}
`;
