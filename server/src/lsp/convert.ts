/** Converts places and findings to the types of the protocol. */

import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic as ProtocolDiagnostic,
  DiagnosticSeverity,
  type Location,
  type Range,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import type { Addresses } from './addresses.ts';
import { type Edit, type Fix, byFile } from '../site/edit.ts';
import { type SiteText, spanOf } from '../site/folder.ts';
import { type Place, fileOf } from '../site/item.ts';
import { auditRules } from '../audit/rules.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { RulePages } from './rule-pages.ts';

const SEVERITY = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
} as const;

export class Converter {
  private readonly files: ReadonlyMap<string, SiteText>;
  private readonly addresses: Addresses;
  private readonly pages: RulePages;

  constructor(files: readonly SiteText[], addresses: Addresses, pages: RulePages) {
    this.files = new Map(files.map((file) => [file.uri, file]));
    this.addresses = addresses;
    this.pages = pages;
  }

  location(place: Place): Location {
    return { uri: this.addresses.shown(fileOf(place).uri), range: this.range(place) };
  }

  range(place: Place): Range {
    const file = this.files.get(fileOf(place).uri);
    if (file === undefined) return { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const { start, end } = spanOf(file, place);
    return file.lines().range(start, end);
  }

  diagnostic({ at, rule, severity, message, related }: Diagnostic): ProtocolDiagnostic {
    const converted: ProtocolDiagnostic = {
      range: this.range(at),
      severity: SEVERITY[severity],
      code: rule.id,
      source: auditRules.includes(rule) ? 'plumbline audit' : 'plumbline',
      message,
    };
    // Assigned one by one, which is faster: there are thousands of them at each edit.
    const page = this.pages.of(rule.id);
    if (page !== undefined) converted.codeDescription = { href: page };
    if (related !== undefined && related.length > 0)
      converted.relatedInformation = related.map((one) => ({ location: this.location(one.at), message: one.message }));
    return converted;
  }

  edit(edit: Edit): TextEdit {
    return { range: this.range(edit.at), newText: edit.text };
  }

  workspaceEdit(edits: readonly Edit[]): WorkspaceEdit {
    const changes: Record<string, TextEdit[]> = {};
    for (const [uri, own] of byFile(edits)) changes[this.addresses.shown(uri)] = own.map((edit) => this.edit(edit));
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
