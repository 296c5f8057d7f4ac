import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';

/**
 * Removes the declarations below a folder that none of `entries` leads to. A name is taken from the file that declares it and
 * not from the index that passes it on, so that programs see what the public functions speak of, and nothing else of ours.
 */
export function keepPublicDeclarations(folder: string, entries: readonly string[]): void {
  const texts = new Map<string, string>();
  for (const open = [...entries]; open.length > 0; ) {
    const file = open.pop();
    if (file === undefined || texts.has(file)) continue;
    const text = pastIndexes(file);
    texts.set(file, text.replace(relativeTs, '$1$2.js$3'));
    for (const { fileName } of ts.preProcessFile(text).importedFiles) {
      if (fileName.startsWith('.')) open.push(declarationOf(file, fileName));
    }
  }
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const file = join(folder, name);
    const text = texts.get(file);
    if (text !== undefined) writeFileSync(file, text);
    else if (name.endsWith('.d.ts')) rmSync(file);
  }
}

/** Declarations name JavaScript, as older compilers and other tools expect it. */
const relativeTs = /(["'])(\.{1,2}\/[^"']+)\.ts(["'])/g;

const declarationOf = (from: string, wanted: string): string =>
  join(dirname(from), wanted.replace(/\.ts$/, '.d.ts'));

/** A declaration file whose imports and exports lead past every index. */
function pastIndexes(file: string): string {
  const tree = parsed(file);
  let text = tree.text;
  for (const statement of tree.statements.toReversed()) {
    const passed = passedOn(statement);
    if (passed === undefined || !/\/index\.ts$/.test(passed.from)) continue;
    const index = declarationOf(file, passed.from);
    const byFile = Map.groupBy(
      passed.elements,
      ({ name, propertyName }) => declaringFile(index, (propertyName ?? name).text) ?? index,
    );
    const lines = [...byFile].map(([target, elements]) => {
      const names = elements.map((one) => one.getText(tree)).join(', ');
      return `${passed.keyword} { ${names} } from '${specifier(file, target)}';`;
    });
    text = text.slice(0, statement.getStart(tree)) + lines.join('\n') + text.slice(statement.end);
  }
  return text;
}

interface Passed {
  /** `import`, `export`, each perhaps with `type`. */
  readonly keyword: string;
  readonly from: string;
  readonly elements: readonly (ts.ImportSpecifier | ts.ExportSpecifier)[];
}

/** Names that a statement takes from another file of ours. */
function passedOn(statement: ts.Statement): Passed | undefined {
  if (!ts.isImportDeclaration(statement) && !ts.isExportDeclaration(statement)) return undefined;
  const isExport = ts.isExportDeclaration(statement);
  const bound = isExport ? statement.exportClause : statement.importClause?.namedBindings;
  const from = statement.moduleSpecifier;
  if (bound === undefined || from === undefined || !ts.isStringLiteral(from)) return undefined;
  if (!ts.isNamedExports(bound) && !ts.isNamedImports(bound)) return undefined;
  const isType = isExport
    ? statement.isTypeOnly
    : statement.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
  const keyword = `${isExport ? 'export' : 'import'}${isType ? ' type' : ''}`;
  return { keyword, from: from.text, elements: [...bound.elements] };
}

/** The file that declares a name which a file exports. */
function declaringFile(file: string, name: string): string | undefined {
  for (const statement of parsed(file).statements) {
    if (!ts.isExportDeclaration(statement)) continue;
    const from = statement.moduleSpecifier;
    if (from === undefined || !ts.isStringLiteral(from)) continue;
    const target = declarationOf(file, from.text);
    const named = passedOn(statement)?.elements.find((one) => one.name.text === name);
    if (named !== undefined) return declaringFile(target, (named.propertyName ?? named.name).text);
    const isAll = statement.exportClause === undefined;
    const found = isAll ? declaringFile(target, name) : undefined;
    if (found !== undefined) return found;
  }
  return declares(file, name) ? file : undefined;
}

const declares = (file: string, name: string): boolean =>
  new RegExp(`^export (?:declare )?(?:abstract )?\\w+ ${name}\\b`, 'm').test(parsed(file).text);

function parsed(file: string): ts.SourceFile {
  return ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, false);
}

function specifier(from: string, to: string): string {
  const path = relative(dirname(from), to)
    .replaceAll('\\', '/')
    .replace(/\.d\.ts$/, '.ts');
  return path.startsWith('.') ? path : `./${path}`;
}
