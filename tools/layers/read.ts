import ts from 'typescript';

/** A name that a source file uses, and the line it is on, from 1. */
export type Mention = { readonly name: string; readonly line: number };

/** An import, and whether it brings in types alone, which leave no trace in what runs. */
export type Import = Mention & { readonly typesOnly: boolean };

/** What a source file leans on. */
export type Reading = {
  /** Module specifiers of every import, type import, dynamic import and re-export. */
  readonly imports: readonly Import[];
  /** Names used that the file does not declare itself, `Math.random` among them. */
  readonly globals: readonly Mention[];
  /** Every name after a dot. */
  readonly members: readonly Mention[];
};

/** Blanks out everything outside the pieces that match, so that line numbers stay true. */
function keepOnly(text: string, piece: RegExp): string {
  const blank = (part: string) => part.replace(/[^\n]/g, '');
  let kept = '';
  let from = 0;
  for (const found of text.matchAll(piece)) {
    const code = found[1] ?? '';
    const start = found.index + found[0].indexOf(code);
    kept += `${blank(text.slice(from, start))}${code}`;
    from = start + code.length;
  }
  return kept;
}

/** The script in a source file, by the file's ending: a component's markup is left out. */
function scriptOf(path: string, text: string): string {
  if (path.endsWith('.svelte')) return keepOnly(text, /<script[^>]*>([\s\S]*?)<\/script>/g);
  if (path.endsWith('.astro'))
    return keepOnly(text, /(?:^---\n|<script[^>]*>)([\s\S]*?)(?:\n---|<\/script>)/g);
  if (path.endsWith('.mdx')) return keepOnly(text, /^((?:import|export) .*)$/gm);
  return text;
}

/** True where an identifier only labels something, as in `{ Date: 1 }` or `x.Date`. */
function isLabel(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    (ts.isQualifiedName(parent) && parent.right === node) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isBindingElement(parent) && parent.propertyName === node) ||
    ts.isPropertySignature(parent) ||
    ts.isMethodSignature(parent) ||
    ts.isMethodDeclaration(parent) ||
    ts.isImportSpecifier(parent) ||
    ts.isExportSpecifier(parent)
  );
}

/** True where an identifier is the name of something that the file itself declares. */
function isDeclared(node: ts.Identifier): boolean {
  const { parent } = node;
  return 'name' in parent && parent.name === node && !ts.isPropertyAccessExpression(parent) && !isLabel(node);
}

function specifierOf(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) return node.argument.literal;
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
    return node.arguments[0];
  return undefined;
}

function isTypesOnly(node: ts.Node): boolean {
  if (ts.isImportDeclaration(node)) return node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
  return ts.isImportTypeNode(node) || (ts.isExportDeclaration(node) && node.isTypeOnly);
}

/**
 * Reads what a source file imports and which names it uses.
 * @param path the file's name, for its ending
 * @param text the file's text
 */
export function read(path: string, text: string): Reading {
  const source = ts.createSourceFile(`${path}.ts`, scriptOf(path, text), ts.ScriptTarget.Latest, true);
  const imports: Import[] = [];
  const used: Mention[] = [];
  const members: Mention[] = [];
  const declared = new Set<string>();
  const lineOf = (node: ts.Node) => source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;

  const visit = (node: ts.Node): void => {
    const specifier = specifierOf(node);
    if (specifier && ts.isStringLiteralLike(specifier)) {
      imports.push({ name: specifier.text, line: lineOf(specifier), typesOnly: isTypesOnly(node) });
    }
    if (ts.isIdentifier(node)) {
      if (isDeclared(node)) declared.add(node.text);
      else if (!isLabel(node)) used.push({ name: node.text, line: lineOf(node) });
    }
    if (ts.isPropertyAccessExpression(node)) {
      members.push({ name: node.name.text, line: lineOf(node.name) });
      if (node.getText(source) === 'Math.random') used.push({ name: 'Math.random', line: lineOf(node) });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { imports, members, globals: used.filter(({ name }) => !declared.has(name)) };
}
