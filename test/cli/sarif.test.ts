// SARIF against the schema that was published for it: Version 2.1.0-rtm.5,
// as the package @microsoft/jest-sarif carries it.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv-draft-04';
import { plumblineHere } from './run.ts';

const file = createRequire(import.meta.url).resolve('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json');
// Of its formats, addresses are held below; the log has no dates.
const ajv = new Ajv({
  allErrors: true,
  strict: false,
  unicodeRegExp: false,
  formats: { 'uri': isAddress, 'uri-reference': isReference, 'date-time': true },
});
const isSarif = ajv.compile(JSON.parse(readFileSync(file, 'utf8')) as object);

interface Log {
  readonly runs: readonly [{ readonly results: readonly SarifResult[] }];
}

interface SarifResult {
  readonly ruleId: string;
  readonly locations: readonly [{ readonly physicalLocation: { readonly artifactLocation: { readonly uri: string } } }];
  readonly partialFingerprints: Readonly<Record<string, string>>;
}

/** As a reader resolves it, from the folder that the command was run in. */
const addressOf = ({ locations: [{ physicalLocation }] }: SarifResult, folder: string): string =>
  fileURLToPath(new URL(physicalLocation.artifactLocation.uri, `file://${folder}/`));

const fingerprints = (log: Log): string[] =>
  log.runs[0].results.map(({ partialFingerprints }) => partialFingerprints['plumbline/v1'] ?? '');

describe('plumbline check --format sarif', () => {
  let folder: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline sarif-')); // with a space, which an address may not have
    cpSync('samples/first-draft', join(folder, 'first-draft'), { recursive: true });
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const checked = async (site: string, cwd = folder): Promise<Log> => {
    const { out } = await plumblineHere(['check', '--format', 'sarif', site], { cwd });
    const log: unknown = JSON.parse(out);
    assert.ok(isSarif(log), ajv.errorsText(isSarif.errors));
    return log as Log;
  };

  it('is valid, with findings and without', async () => {
    assert.ok((await checked('first-draft')).runs[0].results.length > 12);
    assert.deepEqual((await checked(join(process.cwd(), 'samples', 'harrow-lane'))).runs[0].results, []);
  });

  it('is held by the schema: a log without a tool is refused', () => {
    assert.ok(!isSarif({ version: '2.1.0', runs: [{ results: [] }] }));
  });

  it('has addresses relative to the working folder, that lead to the files', async () => {
    for (const result of (await checked('first-draft')).runs[0].results) {
      assert.match(result.locations[0].physicalLocation.artifactLocation.uri, /^first-draft\/[a-z]+\.site\.yaml$/);
      assert.ok(readFileSync(addressOf(result, folder), 'utf8').length > 0);
    }
    const beside = join(folder, 'first-draft');
    for (const result of (await checked(folder.replace(/$/, '/first-draft'), beside)).runs[0].results) {
      assert.ok(readFileSync(addressOf(result, beside), 'utf8').length > 0);
    }
  });

  it("has a fingerprint for each finding that is no other's, and that stays when lines move", async () => {
    const before = fingerprints(await checked('first-draft'));
    assert.equal(new Set(before).size, before.length);
    for (const name of ['cables', 'devices', 'streams']) {
      const path = join(folder, 'first-draft', `${name}.site.yaml`);
      writeFileSync(path, `# One more line.\n\n${readFileSync(path, 'utf8')}`);
    }
    assert.deepEqual(fingerprints(await checked('first-draft')), before);
  });
});

function isAddress(text: string): boolean {
  return URL.canParse(text);
}

/** RFC 3986, section 4.1, in the characters of section 2. */
function isReference(text: string): boolean {
  return /^[\w\-.~:/?#[\]@!$&'()*+,;=%]*$/.test(text) && URL.canParse(text, 'file:///');
}
