/** Runs where a text is taken for markup, ends a script or a comment, or is put into an attribute as it is. */
export const attack = `"'></script><script>alert(1)</script><img src=x onerror=alert(2)><!--]]>\${alert(3)}`;

const quoted = JSON.stringify(attack);
const picture = (inner: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 90 90">${inner}</svg>`;

/** Pictures that would run or load something; each name tells what. */
const pictures = {
  'script.svg': picture('<script>alert(4)</script>'),
  'onload.svg': picture('<g onload="alert(5)"/>'),
  'link.svg': picture('<a href="javascript:alert(6)"><rect width="90" height="90"/></a>'),
  'foreign.svg': picture(
    '<foreignObject><img xmlns="http://www.w3.org/1999/xhtml" src="x" onerror="alert(7)"/></foreignObject>',
  ),
  'image.svg': picture('<image xlink:href="https://evil.example/a.png" width="9" height="9"/>'),
  'style.svg': picture('<style>@import "https://evil.example/a.css";</style>'),
  'animate.svg': picture(
    '<a href="#"><animate attributeName="href" to="javascript:alert(8)"/></a>',
  ),
  'entity.svg': `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${picture('<text>&x;</text>')}`,
  'sheet.svg': `<?xml-stylesheet href="https://evil.example/a.css"?>${picture('')}`,
  'script.png': picture('<script>alert(9)</script>'),
};
export const unsafePictures = Object.keys(pictures);

/** Names of files that are something else to a shell, an address or another system; each holds a sound picture. */
export const oddNames = [
  '-rf.svg',
  '%2e%2e%2fa.svg',
  'a b.svg',
  'a\\b.svg',
  'a#b?c=d.svg',
  'a&b;c.svg',
  "a'b.svg",
  'Twin.svg',
  'twin.svg',
  'CON.svg',
  'ä.svg',
  `${'x'.repeat(200)}.svg`,
];
const usable = oddNames.filter((name) => !/[\\"]/.test(name));

/** The files of a manual in which every text is out to do harm. */
export const hostileFolder: Readonly<Record<string, string>> = {
  'manual.yaml': `title: ${quoted}
publisher: ${quoted}
edition: ${quoted}
address: https://manuals.example/door
safety: ${quoted}
variants: { feed: { name: ${quoted}, values: [belt, hydraulic] } }
rules: { count-in-words: note }
`,
  'machines/m.yaml': `machine: m
name: ${quoted}
fasteners:
  bolt: { name: ${quoted}, plural: ${quoted}, count: 4, thread: M10, class: 8.8, torque: 45 N·m, note: ${quoted}, pattern: circle, part-number: "=cmd|' /C calc'!A0" }
parts:
  cover: { name: ${quoted}, part-number: ${quoted}, single-use: true, behind: bolt }
circuits:
  oil: { name: ${quoted}, fluid: ${quoted}, capacity: 2 L, mix: { ${quoted}: 50 % }, dispose: ${quoted} }
tools: { wrench: { name: ${quoted}, size: ${quoted} } }
consumables: { grease: { name: ${quoted}, specification: ${quoted} } }
hazards: { heat: { signal: danger, hazard: ${quoted}, harm: ${quoted}, avoid: ${quoted} } }
`,
  'procedures/a.md': `---
procedure: a
title: ${quoted}
machine: m
summary: ${quoted}
revision: ${quoted}
---

# ${attack}

[run](javascript:alert(10)) [data](data:text/html,<script>alert(11)</script>) [vb](vbscript:x) <javascript:alert(12)>
![p](javascript:alert(13)) [ref][r] [file](file:///etc/passwd) [entity](&#106;avascript:alert(14)) [tab](java&#9;script:alert(15))

[r]: javascript:alert(16) "${attack.replaceAll('"', '&quot;')}"

## ${attack}

::hazard{of=heat}

1. :remove[${attack.replaceAll(']', '')}]{item=bolt when="feed = belt"} \`${attack.replaceAll('`', '')}\`
   ::step{people=2 time="10 min" tools=wrench consumables=grease}
2. :remove{item=cover}. :drain{item=oil}
   ::waive{rule=left-out} ${attack}

:::if[${attack.replaceAll(']', '')}]
1. :fill{item=oil}
:::

${usable.map((name) => `:::figure{src="../figures/${encodeURIComponent(name)}" alt="${attack.replaceAll('"', '&quot;')}"}\n:::`).join('\n\n')}

${unsafePictures.map((name) => `:::figure{src="../figures/${name}" alt="${name}"}\n:::`).join('\n\n')}
`,
  ...Object.fromEntries(
    oddNames.map((name) => [`figures/${name}`, picture('<rect width="90" height="90"/>')]),
  ),
  ...Object.fromEntries(Object.entries(pictures).map(([name, text]) => [`figures/${name}`, text])),
};
