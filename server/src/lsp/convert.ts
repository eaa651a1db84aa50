/** From places and findings to what the protocol carries. */

import {
  type CodeAction, CodeActionKind, type Diagnostic as ProtocolDiagnostic, DiagnosticSeverity, type Range, type TextEdit, type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { type Edit, byFile } from '../site/edit.ts';
import type { SiteText } from '../site/folder.ts';
import { type Place, fileOf } from '../site/item.ts';
import { Lines } from '../text/lines.ts';
import type { Diagnostic, Fix } from '../rules/rule.ts';

const linesByText = new WeakMap<SiteText, Lines>();

export function linesOf(file: SiteText): Lines {
  let lines = linesByText.get(file);
  if (lines === undefined) linesByText.set(file, (lines = new Lines(file.text)));
  return lines;
}

const SEVERITY = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
} as const;

export class Converter {
  private readonly files: ReadonlyMap<string, SiteText>;

  constructor(files: readonly SiteText[]) {
    this.files = new Map(files.map((file) => [file.uri, file]));
  }

  range(place: Place): Range {
    const file = this.files.get(fileOf(place).uri);
    const start = place.piece.start + place.start;
    if (file === undefined) return { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const lines = linesOf(file);
    return { start: lines.position(start), end: lines.position(place.piece.start + place.end) };
  }

  diagnostic(diagnostic: Diagnostic): ProtocolDiagnostic {
    const related = diagnostic.related ?? [];
    return {
      range: this.range(diagnostic.at),
      severity: SEVERITY[diagnostic.severity],
      code: diagnostic.rule.id,
      source: 'plumbline',
      message: diagnostic.message,
      ...(related.length > 0 && {
        relatedInformation: related.map(({ at, message }) => ({ location: { uri: fileOf(at).uri, range: this.range(at) }, message })),
      }),
    };
  }

  edit(edit: Edit): TextEdit {
    return { range: this.range(edit.at), newText: edit.text };
  }

  workspaceEdit(edits: readonly Edit[]): WorkspaceEdit {
    const changes: Record<string, TextEdit[]> = {};
    for (const [uri, own] of byFile(edits)) changes[uri] = own.map((edit) => this.edit(edit));
    return { changes };
  }

  codeAction(fix: Fix, diagnostic: ProtocolDiagnostic, preferred: boolean): CodeAction {
    return {
      title: fix.title,
      kind: CodeActionKind.QuickFix,
      diagnostics: [diagnostic],
      isPreferred: preferred,
      edit: this.workspaceEdit(fix.edits),
    };
  }
}
