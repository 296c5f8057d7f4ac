// Runs in a process of its own: checks a folder as the command does, with its threads and what earlier checks have kept.
// What is loaded for it is loaded before the time begins.
const [module = '', folder = '.', keepIn = '.'] = process.argv.slice(2);
const { checkForReport }: typeof import('../../src/command/check-folder.ts') = await import(module);
const begun = performance.now();
const { report, looked } = await checkForReport(folder, { keepIn, afresh: false });
const seconds = (performance.now() - begun) / 1000;
console.log(JSON.stringify({ seconds, looked, report }));
