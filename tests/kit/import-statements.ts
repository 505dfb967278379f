/** tests/kit/import-statements.ts - what a source file imports, read from its text.
 *  No compiler: comments are blanked, then the four forms of import are looked for at the start of a line or in a call. */

/** One import. `specifier` is what stands in the quotes; `typeOnly` is true where it is gone at run time. */
export type ImportStatement = { specifier: string; typeOnly: boolean };

const FROM = /^[ \t]*(import|export)\s+(type\s+)?(?:[\w$*{}\s,]+?)\s*from\s*["']([^"'\n]+)["']/gm;
const BARE = /^[ \t]*import\s*["']([^"'\n]+)["']/gm;
const CALL = /\bimport\(\s*["']([^"'\n]+)["']\s*\)/g;

/** All imports of `text`, re-exports and late imports too; the order is by form, not by place. */
export function importStatements(text: string): ImportStatement[] {
  const code = withoutComments(text);
  return [
    ...[...code.matchAll(FROM)].map((match) => ({ specifier: match[3] ?? "", typeOnly: match[2] !== undefined })),
    ...[...code.matchAll(BARE)].map((match) => ({ specifier: match[1] ?? "", typeOnly: false })),
    ...[...code.matchAll(CALL)].map((match) => ({ specifier: match[1] ?? "", typeOnly: false })),
  ];
}

/** `text` with comments blanked; lines stay where they are. Only whole-line `//` comments and block comments that begin
 *  a line are blanked, so that `//` inside a string (an address) stays. */
export function withoutComments(text: string): string {
  const blank = (comment: string): string => comment.replace(/[^\n]/g, " ");
  return text.replace(/^[ \t]*\/\*[\s\S]*?\*\//gm, blank).replace(/^[ \t]*\/\/.*$/gm, blank);
}
