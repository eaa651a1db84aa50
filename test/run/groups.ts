/** The groups that the tests run in, each in a process of its own. */

export interface Group {
  readonly name: string;
  /** Which files below `test/`: a file belongs to the first group that it fits. */
  readonly files: RegExp;
  /** Files that run at the same time. */
  readonly jobs: number;
  /** Whether it needs nothing but Node and git. In others a file that fails runs once more, by itself. */
  readonly bare?: true;
}

/** Files that try many things, or large ones. */
const MANY: readonly RegExp[] = [
  /^(fuzz|properties|typing)\//,
  /^audit\/recordings\/(many-files|schedules)\./,
  /^features\/(anywhere|refactorings\/samples)\./,
  /^lsp\/memory\./,
  /^make\/(growth|same-bytes)\./,
];

/** Files with a test that needs a program which most machines have. */
const PROGRAMS: readonly RegExp[] = [
  /^audit\/announcements\/audit\./,
  /^audit\/recordings\/tree\./,
  /^draw\/hostile\./,
  /^cli\/(audit-announcements|closed-pipe|colour|endless-input|pre-commit|writes)\./,
  /^lsp\/(audit|hostile)\./,
  /^machine\/compile-cache\./,
  /^properties\/points-of-failure\./,
  /^recordings\/file-names\./,
  /^standards\/(ethernet|strftime|television\/scan-tables|time-zone)\./,
];

const oneOf = (files: readonly RegExp[]): RegExp => new RegExp(files.map(({ source }) => source).join('|'));

export const GROUPS: readonly Group[] = [
  // Both count what switches carry in real time, so they run one after the other.
  { name: 'lab', files: /^lab\/(counters|host-routes|lab|linux-bridges|made-network|recording|rtsp)\./, jobs: 1 },
  { name: 'rehearsal', files: /^rehearsal\//, jobs: 1 },
  { name: 'streams', files: /^lab\//, jobs: 1 },
  { name: 'editors', files: /^(vscode|web|neovim)\/|^(make\/tables\/paper|report\/page-in-browser)\./, jobs: 1 },
  {
    name: 'media',
    files: /^footage\/(join|no-recording|trouble)\.|^tour\.|^audit\/(probe|recordings)\/media\./,
    jobs: 1,
  },
  {
    name: 'tools',
    files:
      /^make\/(?!(growth|same-bytes)\.)|^machine\/media-length\.|^standards\/(aac|audio-rates|capture|levels|transport-stream)\.|^television\/multiplexed\./,
    jobs: 1,
  },
  { name: 'programs', files: oneOf(PROGRAMS), jobs: 2 },
  { name: 'long', files: oneOf(MANY), jobs: 2, bare: true },
  { name: 'core', files: /^/, jobs: 2, bare: true },
];

/** @param path below `test/` */
export function groupOf(path: string): Group {
  const group = GROUPS.find(({ files }) => files.test(path));
  if (group === undefined) throw new Error(`no group has ${path}`);
  return group;
}

/** Groups of one row run one after the other, the rows side by side. */
export const ROWS: readonly (readonly string[])[] = [
  ['lab', 'rehearsal'],
  ['streams'],
  ['editors'],
  ['programs', 'tools', 'media'],
  ['core'],
  ['long'],
];
