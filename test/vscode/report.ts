// A link in the output of `plumbline report --format json`.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { repository } from '../../client/open/install.ts';

/** Peak line rates in bit/s, from → to and back. */
export interface LinkPeaks {
  readonly forward: number;
  readonly backward: number;
}

/** @throws Error where the report has no such link, in this order of its ends */
export function reportedPeaks(folder: string, from: string, to: string): LinkPeaks {
  const program = join(repository, 'dist', 'plumbline.cjs');
  const text = execFileSync(process.execPath, [program, 'report', folder, '--format', 'json'], { encoding: 'utf8' });
  const { links } = JSON.parse(text) as Report;
  const link = links.find((candidate) => candidate.from === from && candidate.to === to);
  if (!link) throw new Error(`the report has no link from ${from} to ${to}`);
  return { forward: link.forward.line.peak, backward: link.backward.line.peak };
}

/** The part of the report that is read here; see schemas/report.schema.json. */
interface Report {
  readonly links: readonly {
    readonly from: string;
    readonly to: string;
    readonly forward: Load;
    readonly backward: Load;
  }[];
}

interface Load {
  readonly line: { readonly nominal: number; readonly peak: number };
}
