const count = (length: number): number[] => Array.from({ length }, (_, i) => i + 1);

/** Runs where text is taken for markup; as text it stands on the page as it is. */
export const attack = `"'><script>alert(1)</script><img src=x onerror=alert(2)>`;
export const longWord =
  'Hydraulikölrücklaufleitungsverschraubungsdichtringsatzausführungsverzeichnis';
/** A part number as stores have them: no space, no hyphen. */
export const longNumber = '00491882736450918273645091827364509182736450918273645091827364509182';
export const longTitle =
  `Replace ${'the upper and the lower feed roller bearing with its housing, '.repeat(4)}then set both gaps`.padEnd(
    300,
    '.',
  );
export const hebrew = 'נתק את הכבל השלילי של המצבר (לפני הכול!) וכסה את הקצה ב-2 שכבות.';
export const arabic = 'افصل الكابل السالب للبطارية (قبل كل شيء) ثم غطِّ الطرف بطبقتين.';
export const chinese =
  '断开蓄电池负极电缆，用绝缘胶带包好端头，并挂上“禁止合闸”的警示牌，然后等待十分钟再继续下一步工作，不得提前。';
export const japanese =
  'バッテリーのマイナス端子を外し、端子を絶縁テープで覆ってから、十分間お待ちください。';
export const emoji = '⚠️👷🏽‍♀️🔧 careful 👨‍👩‍👧‍👦🇨🇭';

const quoted = JSON.stringify(attack);
const signals = ['danger', 'danger', 'warning', 'caution', 'notice'];
const harms = [hebrew, arabic, chinese, emoji, longWord];

/** What people write when nobody looks: every text too long, in another script, or out to do harm. */
export const hostileManual: Readonly<Record<string, string>> = {
  'manual.yaml': `title: ${JSON.stringify(longTitle)}
edition: ${longNumber}
publisher: ${JSON.stringify(longWord)}
address: https://manuals.example/${longWord.normalize('NFD').replace(/[^a-z]/gi, '')}
variants:
  ${'a'.repeat(40)}: { name: ${JSON.stringify(longWord)}, values: [${longWord}, ${'b'.repeat(60)}] }
`,
  'machines/m.yaml': `machine: m
name: ${JSON.stringify(longWord)}
parts:
  cover: { name: ${JSON.stringify(longWord)}, part-number: "${longNumber}", mass: 1234.5 kg, note: ${JSON.stringify(emoji)} }
  rod: { name: ${JSON.stringify(`${longWord} ${arabic}`)}, limits: 49.9..50 mm, note: ${quoted} }
  plate: { name: ${quoted}, part-number: ${quoted} }
fasteners:
${count(40)
  .map(
    (i) =>
      `  bolt-${i}: { name: ${JSON.stringify(`${longWord} ${i}`)}, count: ${i}, thread: M16x1.5, class: 8.8, torque: [${i * 5} N·m, ${i * 9} N·m, 90°], note: ${JSON.stringify(chinese)} }`,
  )
  .join('\n')}
circuits:
  oil: { name: ${JSON.stringify(chinese)}, fluid: ${JSON.stringify(longWord)}, capacity: 38 L, dispose: ${JSON.stringify(arabic)} }
tools:
  wrench: { name: ${JSON.stringify(longWord)}, size: ${longNumber}, part-number: "${longNumber}" }
  puller: { name: ${JSON.stringify(hebrew)} }
consumables:
  grease: { name: ${JSON.stringify(japanese)}, specification: ${JSON.stringify(longWord)} }
hazards:
${signals.map((signal, i) => `  hazard-${i}: { signal: ${signal}, hazard: ${JSON.stringify(`${longWord} ${i}`)}, harm: ${JSON.stringify(harms[i])}, avoid: ${quoted} }`).join('\n')}
`,
  'procedures/words.md': `---
procedure: words
title: ${JSON.stringify(longTitle)}
machine: m
document: ${longNumber}
revision: ${'9'.repeat(30)}
system: ${longWord}
interval: ${JSON.stringify(japanese)}
summary: ${JSON.stringify(`${attack} ${arabic}`)}
---

${hebrew}

## ${longWord}${longWord}

1. ${signals.map((_, i) => `::hazard{of=hazard-${i}}`).join('\n\n   ')}

   :drain[${chinese}]{item=oil}.
   ::step{people=2 time="90 min" tools="wrench puller" consumables=grease}
2. ${hebrew}
3. ${arabic}
4. ${japanese} ${emoji}
5. :remove[${longWord}${longWord}]{item=cover}.
6. :measure[${longWord}]{item=rod}.
7. See \`${longNumber}${longNumber}\` and \`${attack}\`, then https://example.org/${longNumber}.
8. :fill[${longWord}]{item=oil}.
   1. ${longWord}
      1. ${chinese}
9. :install{item=cover}.

:::if[${longWord}${longWord} ${chinese}]
1. ${longWord}
:::

| ${longWord} | ${chinese} | N·m |
|---|---|---|
${count(40)
  .map((i) => `| ${longWord} ${i} | ${hebrew} | ${i * 5} |`)
  .join('\n')}
`,
  'procedures/bolts.md': `---
procedure: bolts
title: ${JSON.stringify(`${attack} ${chinese}`)}
machine: m
when: ${'a'.repeat(40)} = ${longWord}
---

## Off

1. ${count(40)
    .slice(0, 3)
    .map((i) => `:remove{item=bolt-${i}}.`)
    .join(' ')}
2. :remove{item=plate}.

## On

1. :install{item=plate}.
2. ${count(40)
    .slice(0, 3)
    .map((i) => `:torque{item=bolt-${i}}.`)
    .join(' ')}
   ::step{record}
`,
  'procedures/long.md': `---
procedure: long
title: Sixty steps
machine: m
---

${count(60)
  .map(
    (i) =>
      `${i}. ${i % 6 === 0 ? `::hazard{of=hazard-${i % 5}}\n\n   ` : ''}Look at point ${i} of 60${i % 7 === 0 ? `: ${longWord}` : ''}.`,
  )
  .join('\n')}
`,
};
