/** Labels as a page of their own that any browser prints: A4 or Letter, three beside each other, dashed lines to cut along. */
import type { Label, QrCode } from '../../app/index.ts';

/** @param title what stands in the title block, a line for each of its fields */
export function labelsPage(
  labels: readonly Label[],
  codes: (text: string) => QrCode,
  title: readonly (readonly [label: string, text: string])[],
): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<title>Labels</title>
<style>${STYLE}</style>
<main>
<h1>Labels</h1>
<dl>${title.map(([label, text]) => `<div><dt>${plain(label)}<dd>${plain(text)}</div>`).join('')}</dl>
<ul>
${labels.map(label => one(label, codes(label.url))).join('\n')}
</ul>
</main>
</html>
`;
}

const one = ({ what, name, under, kart }: Label, { size, path }: QrCode): string =>
  `<li><svg viewBox="0 0 ${size} ${size}" role="img" aria-label="${plain(`Code for ${name}`)}"><path d="${path}"/></svg>` +
  `<div><small>${plain(what === 'box' ? `Spares, kart ${kart}` : `Kart ${kart}`)}</small><b>${plain(name)}</b><small>${plain(under)}</small></div></li>`;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const plain = (text: string): string => text.replace(/[&<>"]/g, sign => ENTITIES[sign] ?? sign);

const STYLE = `
@page { margin: 14mm 12mm 16mm; @bottom-right { content: "page " counter(page) " of " counter(pages); font-size: 9pt } }
* { box-sizing: border-box }
body { margin: 0; color: #000; background: #fff; font: 10pt/1.2 system-ui, Arial, sans-serif }
h1 { margin: 0 0 1mm; font-size: 10pt }
dl { display: grid; grid-auto-flow: column; width: 186mm; margin: 0 0 2mm; border: 1.5pt solid #000 }
dl div { padding: 1.5mm 2.5mm } dl div + div { border-left: .5pt solid #000 }
dt { font-size: 8pt } dd { margin: 0; font-weight: 600 }
ul { display: grid; grid-template-columns: repeat(3, 62mm); width: max-content; margin: 0; padding: 0; list-style: none;
  border-top: 1px dashed #777; border-left: 1px dashed #777 }
li { display: grid; grid-template-columns: 28mm minmax(0, 1fr); align-items: center; height: 32mm; padding: .5mm;
  break-inside: avoid; border-right: 1px dashed #777; border-bottom: 1px dashed #777 }
svg { display: block; width: 100% } b, small { display: block; overflow-wrap: anywhere }
b { font-size: 10.5pt } b::first-letter { text-transform: uppercase } small { font-size: 7.5pt }
`;
