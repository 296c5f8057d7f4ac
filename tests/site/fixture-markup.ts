/** Pieces of a sheet's body in the markup that the render room writes. */

const alert =
  '<svg class="alert" viewBox="0 0 24 22" width="24" height="22" aria-hidden="true"><path d="M12 1 23 21H1Z" class="alert-ground"></path><path d="M11 8h2l-.4 7h-1.2ZM11 16.5h2v2h-2Z" class="alert-mark"></path></svg>';

export function hazard(signal: string, what: string, harm: string, avoid: string): string {
  const triangle = signal === 'notice' ? '' : alert;
  return `<aside class="hazard ${signal}" role="note"><p class="signal">${triangle}${signal.toUpperCase()}</p><div class="message"><p class="what">${what}.</p><p class="harm">${harm}.</p><div class="avoid"><p>${avoid}</p></div></div></aside>`;
}

export function step(number: string, body: string, ...boxes: readonly string[]): string {
  return `<li class="step" id="step-${number}"><label class="tick"><input type="checkbox" aria-label="Step ${number} done"><span class="number">${number}</span></label><div class="body">${body}</div><div class="margin">${boxes.join('')}</div></li>`;
}

export const steps = (...items: readonly string[]): string =>
  `<ol class="steps">${items.join('')}</ol>`;

export const phase = (id: string, heading: string, content: string): string =>
  `<section class="phase" id="phase-${id}"><h2>${heading}</h2>${content}</section>`;

export const act = (words: string): string => `<span class="action">${words}</span>`;

export const box = (kind: string, title: string, ...content: readonly string[]): string =>
  `<div class="box ${kind}"><p class="box-title">${title}</p>${content.join('')}</div>`;

export const value = (first: string, second: string): string =>
  `<p class="value">${pair(first, second)}</p>`;

export const detail = (words: string): string => `<p class="detail">${words}</p>`;

export const list = (...items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${item}</li>`).join('')}</ul>`;

export const record = (label: string, held = ''): string =>
  `<input class="record" type="text" autocomplete="off" aria-label="${label}"${held}>`;

export const mark = (kind: string, word: string, item: string): string =>
  `<p class="box mark ${kind}"><strong>${word}</strong> ${item}</p>`;

export const crew = (words: string): string => `<p class="box crew">${words}</p>`;

export function stages(...rows: readonly (readonly [first: string, second: string])[]): string {
  const cells = rows.map(
    ([first, second], i) =>
      `<tr><th scope="row">${i + 1}</th><td class="value">${pair(first, second)}</td><td>${record(`stage ${i + 1}: torque reached`)}</td></tr>`,
  );
  return `<table class="stages"><thead><tr><th scope="col">Stage</th><th scope="col">Torque</th><th scope="col">Record</th></tr></thead><tbody>${cells.join('')}</tbody></table>`;
}

const pair = (first: string, second: string): string =>
  `<span class="first">${first}</span> <span class="second">(${second})</span>`;
