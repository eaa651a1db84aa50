import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parseDocument } from 'yaml';
import { placed } from '../server/src/cli/placed.ts';
import { readSite } from '../server/src/cli/sites.ts';
import { OUTPUTS } from '../server/src/make/outputs.ts';
import { reportOf } from '../server/src/report/report.ts';
import { check, fixAll } from '../server/src/check.ts';
import type { Diagnostic } from '../server/src/lint/rule.ts';
import { editedTexts } from '../server/src/site/edit.ts';
import { SiteFolder } from '../server/src/site/folder.ts';
import type { DeviceKind, Site } from '../server/src/site/model.ts';
import { mistakes } from './first-draft.ts';
import reportSchema from '../schemas/report.schema.json' with { type: 'json' };

const HARROW_LANE = 'samples/harrow-lane';
const COTTAGES = 'samples/cottages';
const FIRST_DRAFT = 'samples/first-draft';

/** `file:line severity rule [marked words]`, one for each finding. */
function findings(folder: SiteFolder): string[] {
  return placed(check(folder)).map(({ file, line, column, endLine, endColumn, severity, rule, source, message }) => {
    const words = source.slice(column - 1, endLine === line ? endColumn - 1 : undefined);
    return `${file}:${line} ${severity} ${rule} [${words}] ${message}`;
  });
}

function kinds(site: Site, kind: DeviceKind): string[] {
  return site.devices.filter((device) => device.kind === kind).map(({ name }) => name);
}

for (const path of [HARROW_LANE, COTTAGES, FIRST_DRAFT]) {
  describe(path, () => {
    for (const name of readdirSync(path).filter((file) => file !== 'drawings')) {
      it(`${name} names its schema and says what it holds`, () => {
        const [modeline = '', comment = ''] = readFileSync(join(path, name), 'utf8').split('\n');
        const schema = /^# yaml-language-server: \$schema=(.+)$/.exec(modeline)?.[1];
        assert.ok(schema !== undefined && existsSync(resolve(path, schema)), modeline);
        assert.match(comment, /^# \S.*\.$/);
      });
    }

    // Source: the schema of the report, checked by ajv.
    it('has a report as its schema describes it', () => {
      const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(reportSchema);
      const { plan } = check(readSite(path).folder);
      assert.ok(validate(JSON.parse(JSON.stringify(reportOf(plan)))), JSON.stringify(validate.errors, undefined, 2));
    });
  });
}

describe('samples/cottages, a switch that routes and links of two cables', () => {
  const { folder } = readSite(COTTAGES);
  const { plan } = check(folder);
  const { site, network } = plan;

  it('has nothing to report, not even a hint', () => assert.deepEqual(findings(folder), []));

  it('is made whole', () => {
    const refused = OUTPUTS.flatMap((output) => output.make(plan, undefined).refused.map(({ message }) => message));
    assert.deepEqual(refused, []);
  });

  it('brings every stream and all other traffic to everyone who wants it', () => {
    assert.deepEqual(
      network.deliveries.flatMap(({ unreached }) => unreached),
      [],
    );
    assert.deepEqual(
      network.traffic.flatMap(({ obstacle }) => obstacle ?? []),
      [],
    );
  });

  it('has the words that the other sample has no place for', () => {
    assert.ok(network.topology.links.filter(({ members }) => members.length === 2).length === 2);
    assert.ok(site.ports.some(({ lacp }) => lacp === 'passive'));
    assert.ok(site.devices.some(({ routes }) => routes.some(({ vlan }) => vlan !== undefined)));
    assert.ok(site.devices.some(({ kind, routing }) => kind === 'switch' && routing));
    assert.ok(site.devices.some(({ unasked }) => unasked === 'flood'));
  });
});

describe('samples/harrow-lane, the clean one', () => {
  const { folder } = readSite(HARROW_LANE);
  const { plan } = check(folder);
  const { site } = plan;

  it('has nothing to report, not even a hint', () => assert.deepEqual(findings(folder), []));

  it('accepts nothing', () => assert.deepEqual(site.lint.acceptances, []));

  it('is a whole smallholding in several files', () => {
    assert.ok(folder.size >= 4);
    assert.ok(kinds(site, 'camera').length >= 11);
    assert.deepEqual(kinds(site, 'switch'), ['core', 'stable', 'glasshouse']);
    assert.equal(kinds(site, 'router').length, 1);
    assert.ok(kinds(site, 'access-point').length >= 1);
    assert.ok(kinds(site, 'display').length >= 2);
    assert.ok(kinds(site, 'tuner').length >= 1);
    assert.deepEqual(
      site.deviceByName.get('recorder')?.ports.map(({ name }) => name),
      ['lan', 'cams'],
    );
    assert.ok(site.cables.some(({ type }) => type === 'os2'));
    assert.ok(site.cables.some(({ through }) => through.length > 0));
    assert.ok(site.policies.retention.length > 0);
  });

  it('brings every stream to everyone who wants it', () => {
    const missed = plan.network.deliveries.flatMap(({ stream, unreached }) =>
      unreached.map(({ receiver }) => `${stream.name}: ${receiver}`),
    );
    assert.deepEqual(missed, []);
  });

  it('records every camera, and keeps what it records', () => {
    const recorded = new Set(site.recordings.map(({ stream }) => stream));
    for (const stream of site.streams.filter(({ source }) => kinds(site, 'camera').includes(source ?? ''))) {
      const resent = site.streams.filter(({ carries }) => carries === stream.name).map(({ name }) => name);
      assert.ok(
        [stream.name, ...resent].some((name) => recorded.has(name)),
        stream.name,
      );
    }
    for (const { bytesKept, usableBytes } of plan.storage.volumes)
      assert.ok(bytesKept > 0 && bytesKept < 0.8 * (usableBytes ?? 0));
  });

  it('closes a ring of switches, and spanning tree leaves one side of it idle', () => {
    const idle = plan.network.topology.links
      .filter(({ blocked }) => blocked !== undefined)
      .map(({ cable }) => cable.name);
    assert.deepEqual(idle, ['stable/10 – glasshouse/8']);
  });

  it('sends multicast by the card towards the cameras, and the copy for the office by the other', () => {
    const left = plan.network.deliveries
      .filter(({ source }) => source?.name === 'recorder')
      .map(({ stream, leaves }) => `${stream.name} ${leaves?.port.name}`);
    assert.deepEqual(
      left.filter((text) => !text.endsWith('-live cams')),
      ['gate-office lan'],
    );
  });
});

describe('samples/first-draft, the one with mistakes', () => {
  it('shows each mistake at its words, and nothing else', () => {
    const found = placed(check(readSite(FIRST_DRAFT).folder)).map(
      ({ file, severity, rule, source, column, endColumn }) => ({
        file: file.slice(FIRST_DRAFT.length + 1),
        severity,
        rule,
        words: source.slice(column - 1, endColumn - 1),
      }),
    );
    assert.deepEqual(found, mistakes);
  });

  it('has at least sixteen mistakes of different rules', () =>
    assert.ok(new Set(mistakes.map(({ rule }) => rule)).size >= 16));

  // Source: YAML 1.2, by the package yaml.
  it('is still YAML after all safe fixes, and has fewer findings', () => {
    const { folder } = readSite(FIRST_DRAFT);
    const { texts, fixes } = fixAll(folder);
    assert.ok(fixes > 0);
    for (const [uri, text] of texts) assert.deepEqual(parseDocument(text).errors, [], `${dirname(uri)}\n${text}`);
    assert.ok(check(folder).diagnostics.length < mistakes.length);
  });

  it('is YAML, and better, after any one of the fixes that are offered', () => {
    const { folder } = readSite(FIRST_DRAFT);
    const { diagnostics } = check(folder);
    const before = counted(diagnostics);
    const original = folder.files;
    const trials = diagnostics.flatMap(({ message, rule, fixes }) =>
      (fixes?.() ?? []).map(({ title, edits }) => {
        const texts = editedTexts(folder.files, edits);
        return { title, texts, message, rule: rule.id };
      }),
    );
    assert.ok(trials.length > mistakes.length / 2);
    for (const { title, texts, message, rule: fixed } of trials) {
      for (const [uri, text] of texts) {
        assert.deepEqual(parseDocument(text).errors, [], title);
        folder.set(uri, text);
      }
      const after = check(folder).diagnostics;
      assert.ok(!after.some((finding) => finding.message === message), title);
      // The device meant by a misspelt name may be out of reach, which shows only then.
      if (fixed !== 'unknown-name')
        for (const [rule, count] of counted(after)) assert.ok(count <= (before.get(rule) ?? 0), `${title}: ${rule}`);
      for (const { uri, text } of original) folder.set(uri, text);
    }
  });
});

/** How many findings each rule has. */
function counted(diagnostics: readonly Diagnostic[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { rule } of diagnostics) counts.set(rule.id, (counts.get(rule.id) ?? 0) + 1);
  return counts;
}
