/** The style of the HTML report: it follows the reader's light or dark setting, and prints without waste. */
export const pageStyle = `
:root { color-scheme: light dark; --ink: #1d1d1b; --paper: #fff; --quiet: #55534e; --line: #8a877f; --soft: #f4f3ef; --link: #1b4f8a; }
@media (prefers-color-scheme: dark) { :root { --ink: #ecebe6; --paper: #1a1a18; --quiet: #b9b6ad; --line: #77746c; --soft: #262521; --link: #9cc4f2; } }
* { box-sizing: border-box; }
body { margin: 0; color: var(--ink); background: var(--paper); font: 1.0625rem/1.55 system-ui, -apple-system, "Segoe UI", Roboto, sans-serif; }
main { max-width: 46rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; overflow-wrap: anywhere; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 1rem; }
h2 { font-size: 1.3rem; line-height: 1.25; margin: 2.5rem 0 .6rem; padding-top: .8rem; border-top: 2px solid var(--ink); }
h3 { font-size: 1.08rem; line-height: 1.35; margin: 1.4rem 0 .4rem; }
p, ul, ol, dl { margin: .5rem 0; }
ul, ol { padding-left: 1.6rem; }
li { margin: .25rem 0; }
a { color: var(--link); }
.first { border: 2px solid var(--ink); padding: .7rem .9rem; font-weight: 600; }
.quiet { color: var(--quiet); }
article { margin: 1.2rem 0; padding: .2rem 1rem .8rem; border: 1px solid var(--line); border-radius: .4rem; }
article h3 { margin-top: .8rem; }
dl > div { display: grid; grid-template-columns: 9.5rem 1fr; gap: 0 1rem; padding: .22rem 0; border-top: 1px solid var(--soft); }
dt { color: var(--quiet); }
dd { margin: 0; }
.caution { border-left: 4px solid var(--line); padding-left: .8rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font-size: .92rem; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .35rem .6rem .35rem 0; border-bottom: 1px solid var(--line); overflow-wrap: break-word; min-width: 5.5rem; }
@media (max-width: 34rem) { dl > div { grid-template-columns: 1fr; } dt { font-size: .92rem; } article { padding: .2rem .8rem .6rem; } }
@media print { body { font-size: 10.5pt; color: #000; background: #fff; } main { max-width: none; padding: 0; } article, .caution, li, dl > div, tr { break-inside: avoid; } h2, h3 { break-after: avoid; } .wide { overflow: visible; } a { color: #000; } }
`;

/** SHA-256 of the style, so that the page's policy lets no other style in. */
export const styleHash = 'sha256-/tr2ugETPGsLOdNdOGW1YT0edaM1wtWlfLLtyaddLj8=';
