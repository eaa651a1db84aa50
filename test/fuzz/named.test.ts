// Named cases that would break a reader of YAML, or of this language: each is reported, and nothing else is lost.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, it } from 'mocha';
import { reportOf } from '../../server/src/report/report.ts';
import { check } from '../../server/src/check.ts';
import { planOf } from '../../server/src/plan.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { Patience, rankingSteps } from '../../server/src/failure/ranking.ts';
import { type Texts, folderOf } from '../site.ts';
import { AT_A_PLACE, OF_A_FILE } from './features.ts';

/** A mistake that must always be reported: it stands behind the tried text, in the same file or in another. */
const REST = 'devices:\n  paddock-cam: {kind: camera, adress: 192.168.20.31}\n';

/** `rule: message` of each finding; also checks that the rest is reported, and that a report can be made. */
function told(texts: Texts): string[] {
  const checked = check(folderOf(texts));
  const { diagnostics } = checked;
  const found = diagnostics.map(({ rule, message }) => `${rule.id}: ${message}`);
  assert.ok(
    found.some((line) => line.startsWith('unknown-key: There is no key adress')),
    'the rest is lost',
  );
  assert.ok(!found.some((line) => line.includes('a fault of Plumbline')), found.join('\n'));
  reportOf(checked.plan);
  return found;
}

function has(found: readonly string[], pattern: RegExp): void {
  assert.ok(
    found.some((line) => pattern.test(line)),
    `nothing like ${pattern} in\n${found.slice(0, 20).join('\n')}`,
  );
}

const times = (count: number, make: (index: number) => string, between = ''): string =>
  Array.from({ length: count }, (_, i) => make(i)).join(between);

/** Only the first have equal addresses; shapes.test.ts shows the cost of thousands of these. */
const camera = (index: number): string =>
  index < 9 ? `{kind: camera, address: 10.0.0.${index % 3}}` : '{kind: camera}';

/** How much more work a site of eight times the size may be: sorting it is 11 times as much, its square 64 times. */
const MOST_GROWTH = 12;

/** The same of four times the size, with what it takes anyway. */
const MOST_OF_FOUR = 7;

describe('a hostile site', () => {
  it('costs no more than it grows', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', 'test/fuzz/hostile-growth.ts']);
    const counts = Object.entries(JSON.parse(stdout) as Readonly<Record<string, readonly [number, number, number]>>);
    assert.ok(counts.length > 5);
    for (const [title, [small, large, fixes]] of counts) {
      assert.ok(large < MOST_GROWTH * small, `${title}: ${large} operations, where an eighth takes ${small}`);
      assert.ok(fixes < large, `${title}: its fixes take ${fixes} operations, where the check takes ${large}`);
    }
  });

  it('costs no more than it grows in what is made of its plan', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', 'test/fuzz/command-growth.ts']);
    const counts = Object.entries(JSON.parse(stdout) as Readonly<Record<string, readonly [number, number]>>);
    assert.ok(counts.length > 5);
    for (const [title, [small, large]] of counts)
      assert.ok(large < MOST_OF_FOUR * small, `${title}: ${large} operations, where a quarter takes ${small}`);
  });

  it('of thousands of switches in a row is drawn', () => {
    const text =
      `devices:\n${times(5000, (i) => `  s${i}: {kind: switch, ports: {1-2: {speed: 1 Gb/s}}}\n`)}` +
      `cables:\n${times(4999, (i) => `  - {from: s${i}/1, to: s${i + 1}/2}\n`)}`;
    const plan = planOf(folderOf({ 'a.site.yaml': text }).site());
    assert.ok(networkPicture.draw(plan, '', { rate: 'peak' }).marks.length > 5000);
  });

  it('of more than can be tried to fail: what others hang on comes first, and the rest is named', () => {
    const text =
      `vlans: {v: {id: 20, subnet: 10.0.0.0/8}}\ndevices:\n  core: {kind: switch, ports: {1-50: {speed: 1 Gb/s, vlan: v}}}\n` +
      times(
        40,
        (i) =>
          `  s${i}: {kind: switch, ports: {1-2: {speed: 1 Gb/s, vlan: v}}}\n  c${i}: {kind: camera, address: 10.0.${i >> 8}.${i & 255}}\n`,
      ) +
      `  rec: {kind: server, address: 10.1.0.1}\ncables:\n  - {from: core/50, to: rec}\n` +
      times(40, (i) => `  - {from: core/${i + 1}, to: s${i}/1}\n  - {from: s${i}/2, to: c${i}}\n`) +
      `streams:\n${times(3, (i) => `  t${i}: {source: c${i}, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 Mb/s}, receivers: [rec]}\n`)}`;
    const plan = planOf(folderOf({ 'a.site.yaml': text }).site());
    const steps = rankingSteps(plan, new Patience(plan, 1000));
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    const { ranked, untried } = step.value;
    assert.equal(ranked[0]?.element.name, 'core');
    assert.ok(untried.length > 40 && untried.every(({ name }) => !/^c\d+$/.test(name)));
  });

  it('of ten thousand brackets in each other', () => {
    has(
      told({ 'a.site.yaml': `vlans:\n  video: ${'{a: '.repeat(10_000)}\n${REST}` }),
      /^yaml-syntax: This is nested too deep/,
    );
  });

  it('of a fault in a section of brackets that never ends: what stands before is read', () => {
    const cameras = times(20_000, (i) => ` c${i}: ${camera(i)},`);
    const found = told({ 'a.site.yaml': `devices: {x: {kind: &a camera},${cameras}\n`, 'b.site.yaml': REST });
    has(found, /^yaml-syntax: Nothing is read from here on: this entry has more than 200,000 words/);
    has(found, /^duplicate-address/);
  });

  it('of more faults than are read: the first of them, and all that has none', () => {
    const faulty = times(10_050, (i) => `  f${i}: {kind: camera, address: "10.0.0.1}\n`);
    const found = told({ 'a.site.yaml': `devices:\n${faulty}  last: {kind: camra}\n`, 'b.site.yaml': REST });
    has(found, /^yaml-syntax: There are 9,950 more of these/);
    has(found, /^value-not-allowed: .*camra/);
  });

  for (const [what, last] of [
    ['in a row', 'socket/in'],
    ['in a ring', 'a0/in'],
  ] as const)
    it(`of four thousand amplifiers ${what}`, () => {
      const amplifiers = times(4000, (i) => `  a${i}: {kind: amplifier, gain: 20 dB, powered-by: out}\n`);
      const coaxes = times(3999, (i) => `  - {from: a${i}/out, to: a${i + 1}/in, type: coax-6, length: 2 m}\n`);
      const found = told({
        'a.site.yaml': `
multiplexes:
  east: {system: dvb-t, channel: 30, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  roof: {kind: aerial, receives: {east: 60 dBµV}}
  socket: {kind: outlet, loss: 1 dB}
${amplifiers}cables:
  - {from: roof, to: a0/in, type: coax-6, length: 2 m}
${coaxes}  - {from: a3999/out, to: ${last}, type: coax-6, length: 2 m}
`,
        'b.site.yaml': REST,
      });
      has(found, /^amplifier-cascade: /);
      has(found, /^amplifier-unpowered: /);
    });

  it('of thousands of keys, each behind the value before, which nest without a bracket', () => {
    const keys = times(20_000, (i) => `\n  a: ${i}`);
    has(told({ 'a.site.yaml': `vlans: {${keys}\n`, 'b.site.yaml': REST }), /^yaml-syntax: This is nested too deep/);
  });

  it('of thousands of brackets in a text in quotes, beside a fault, which nest nothing', () => {
    const found = told({ 'a.site.yaml': `vlans:\n  video: {id: 20, description: "${'['.repeat(1000)}" x}\n${REST}` });
    assert.deepEqual(
      found.filter((line) => line.includes('too deep')),
      [],
    );
  });

  it('of thousands of lines, each deeper than the one before', () => {
    const deep = times(2000, (i) => `${' '.repeat(4 + i)}a:`, '\n');
    has(told({ 'a.site.yaml': `vlans:\n  video:\n${deep}\n${REST}` }), /^yaml-syntax: This is nested too deep/);
  });

  it('of an alias bomb, in one item and across items', () => {
    const bomb = times(
      12,
      (i) => `  s${i}: &s${i} {receivers: [${times(10, () => (i === 0 ? 'x' : `*s${i - 1}`), ', ')}]}\n`,
    );
    has(
      told({ 'a.site.yaml': `streams:\n${bomb}`, 'b.site.yaml': REST }),
      /^yaml-syntax: With the alias \*s\d written out, this grows beyond/,
    );
  });

  it('of fifty megabytes, which is not read', () => {
    const found = told({ 'a.site.yaml': `site:\n  name: ${'x'.repeat(50_000_000)}\n`, 'b.site.yaml': REST });
    has(found, /^unreadable-file: This file cannot be read: it has more than four million characters/);
  });

  it('whose port ranges would declare millions of ports', () => {
    const switches = times(2000, (i) => `  s${i}: {kind: switch, ports: {1-1024: {}}}\n`);
    has(
      told({ 'a.site.yaml': REST + switches }),
      /^malformed-value: With the ports of s\d+ the site has more than can be right/,
    );
  });

  it('with a mapping of two hundred thousand keys on one line', () => {
    told({ 'a.site.yaml': `policies: {${times(200_000, (i) => `k${i}: 1`, ', ')}}\n${REST}` });
  });

  it('of more entries than are read, on lines: those before it, and no name is unknown', () => {
    const cameras = times(60_000, (i) => `  c${i}: ${camera(i)}\n`);
    const found = told({ 'a.site.yaml': `devices:\n${cameras}streams:\n  s: {source: c59999}\n`, 'b.site.yaml': REST });
    has(found, /^yaml-syntax: Nothing is read from here on: the site has more than 25,000 entries/);
    has(found, /^duplicate-address/);
    assert.ok(!found.some((line) => line.startsWith('unknown-name')));
  });

  it('of more entries than are read, in brackets: what stands around them is read', () => {
    const cameras = times(60_000, (i) => `c${i}: ${camera(i)},`);
    const found = told({ 'a.site.yaml': `devices: {${cameras}}\n${REST.replace('devices:', 'streams:')}` });
    has(found, /^yaml-syntax: This and what follows in these brackets is not read: 20,000 entries come before it/);
    has(found, /^duplicate-address/);
  });

  it('in which each stream of a long row carries the next, and the last the first', () => {
    const streams = times(20_000, (i) => `  s${i}: {source: paddock-cam, carries: s${(i + 1) % 20_000}}\n`);
    has(told({ 'a.site.yaml': `streams:\n${streams}${REST}` }), /^carries-itself/);
  });

  it('whose lines end with a carriage return alone, all or some', () => {
    has(
      told({ 'a.site.yaml': `vlans:\n  video: {id: 5000}\n${REST}`.replaceAll('\n', '\r') }),
      /^out-of-range: id is 5000/,
    );
    has(told({ 'a.site.yaml': `vlans:\r  video: {id: 5000}\n${REST}` }), /^out-of-range: id is 5000/);
    has(told({ 'a.site.yaml': `vlans:\r\n  video:\r    id: 5000\r\n${REST}` }), /^out-of-range: id is 5000/);
  });

  it('with a byte order mark before it, and another inside', () => {
    has(told({ 'a.site.yaml': `\ufeffvlans:\n  video: {id: 5000}\n${REST}` }), /^out-of-range: id is 5000/);
    has(
      told({ 'a.site.yaml': `${REST}\ufeffvlans:\n  video: {id: 20}\n` }),
      /^yaml-syntax: The line belongs to no section/,
    );
  });

  it('with merge keys of all sorts', () => {
    const found = told({
      'a.site.yaml': `
devices:
  a: &a {kind: camera, speed: 100 Mb/s}
  b: {<<: *a, speed: 1 Gb/s}
  c: {<<: [*a, {kind: display}], kind: camra}
  d: {<<: 7, kind: camera}
  e: {<<: *none, kind: camera}
  <<: {f: {kind: camera}}
vlans: {<<: {video: {id: 5000}}}
cables:
  - <<: {from: a}
    to: nowhere
`,
      'b.site.yaml': REST,
    });
    has(found, /^value-not-allowed: kind is camra/);
    has(found, /^yaml-syntax: There is no anchor &none/);
    has(found, /^unknown-name: There is no device nowhere/);
    has(found, /^out-of-range: id is 5000/);
  });

  it('with keys that stand twice at every level', () => {
    const found = told({
      'a.site.yaml': `
site: {name: a, name: b}
vlans:
  video: {id: 20, id: 21}
  video: {id: 22}
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, speed: 1 Gb/s}, 1: {}}}
vlans:
  house: {id: 10}
streams:
  s: {source: core, video: {codec: h264, codec: h265}}
lint: {rules: {loop: off, loop: error}}
`,
      'b.site.yaml': REST,
    });
    assert.equal(found.filter((line) => /^duplicate-(key|name): /.test(line)).length, 8, found.join('\n'));
  });

  for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf', 'length', 'prototype']) {
    it(`in which everything is called ${name}`, () => {
      const text = `
site: {name: ${name}, timezone: ${name}}
vlans: {${name}: {id: 20, subnet: 192.168.20.0/24, gateway: ${name}, querier: ${name}}}
devices: {${name}: {kind: switch, ports: {${name}: {speed: 1 Gb/s, trunk: [${name}], addresses: {${name}: 192.168.20.1}}, x: {}}, routes: [{to: default, port: ${name}}], ${name}: 1}}
cables: [{from: ${name}/${name}, to: ${name}/x, type: ${name}, through: [${name}/${name}], ${name}: 1}]
streams: {${name}: {source: ${name}, carries: ${name}, transport: ${name}, egress: ${name}, receivers: [${name}], video: {codec: ${name}, ${name}: 1}, ${name}: 1}}
volumes: {${name}: {host: ${name}, capacity: 8 TB, redundancy: ${name}}}
recordings: {${name}: {stream: ${name}, volume: ${name}, file: ${name}, segment: 60 s}}
policies: {${name}: {}, link-load: {${name}: 1}, retention: [{recordings: [${name}], at-least: 1 d}]}
lint: {rules: {${name}: off}, accept: [{rule: ${name}, at: ${name}, because: ${name}}], ${name}: 1}
${name}: {${name}: 1}
`;
      const found = told({ 'a.site.yaml': text, 'b.site.yaml': REST });
      has(found, new RegExp(`^unknown-key: There is no section ${name}`));
      has(found, new RegExp(`^unknown-rule: There is no rule ${name}`));
      has(found, new RegExp(`^carries-itself: ${name} `));
    });
  }

  it('with such names for units and truth values, of which nothing is made', () => {
    const texts = {
      'a.site.yaml':
        'devices:\n  a: {kind: switch, igmp-snooping: constructor, spanning-tree: __proto__, poe-budget: 2 __proto__, speed: 2toString}\n',
      'b.site.yaml': REST,
    };
    told(texts);
    const fixes = check(folderOf(texts)).diagnostics.flatMap((diagnostic) => diagnostic.fixes?.() ?? []);
    for (const { edits } of fixes) for (const { text } of edits) assert.doesNotMatch(text, /object|function/);
  });

  it('with numbers at the edge of exactness, shown as they are written', () => {
    const found = told({
      'a.site.yaml': `
vlans: {video: {id: 9007199254740993}}
streams:
  s: {source: paddock-cam, ttl: 1e400, port: -0, video: {frame-rate: 1e308, bitrate: 9007199254740993 Gb/s}, audio: {channels: 0.1}}
volumes: {v: {host: paddock-cam, capacity: 9007199254740993 TB, disks: 9007199254740992, reserve: 99.99999999999999999 %}}
recordings: {r: {stream: s, volume: v, keep: 0.00000000001 s, segment: 1e5 s}}
`,
      'b.site.yaml': REST,
    });
    has(found, /^out-of-range: id is 9007199254740993;/);
    has(found, /^quantity: capacity is 9007199254740993 TB: too large to be counted/);
  });

  it('with names of ten thousand characters, which messages do not show in full', () => {
    const long = 'x'.repeat(10_000);
    const found = told({
      'a.site.yaml': `cables:\n  - {from: ${long}/${long}, to: ${long}}\nstreams:\n  ${long}: {source: ${long}, ${long}: 1}\n${long}:\n  a: 1\n${REST}`,
    });
    has(found, /^unknown-name: There is no device x+…/);
    for (const line of found) assert.ok(line.length < 1100, `${line.length} characters`);
  });

  for (const value of ['', '~', 'true', '7', '[]', '{}', '[:]', '[[]]', '{a: b}', '[core, {b: c}]', '{a: [{}]}']) {
    it(`in which every value is ${JSON.stringify(value)}, wherever the cursor is`, () => {
      const text = `
site: {name: ${value}, timezone: ${value}}
vlans: {video: {id: ${value}, subnet: ${value}, gateway: ${value}, dhcp-pool: ${value}}}
devices:
  core: {kind: ${value}, poe: ${value}, igmp-snooping: ${value}, routes: ${value}, ports: {1: {vlan: ${value}, native: ${value}, trunk: ${value}, addresses: ${value}, poe: ${value}}}}
  barn: {ports: ${value}, address: ${value}, routes: [{to: ${value}, port: ${value}}]}
cables: [{from: ${value}, to: ${value}, type: ${value}, length: ${value}, through: ${value}}, ${value}]
streams: {s: {source: ${value}, carries: ${value}, port: ${value}, receivers: ${value}, egress: ${value}, video: ${value}, audio: {codec: ${value}, bitrate: ${value}}}}
volumes: {v: {host: ${value}, capacity: ${value}, disks: ${value}}}
recordings: {r: {stream: ${value}, volume: ${value}, keep: ${value}, file: ${value}}}
policies: {link-load: ${value}, volume-fill: {warn: ${value}}, retention: [{recordings: ${value}, at-least: ${value}}]}
lint: {rules: {loop: ${value}}, accept: [{rule: ${value}, at: ${value}, because: ${value}}]}
`;
      const texts = { 'a.site.yaml': text, 'b.site.yaml': REST };
      told(texts);
      const checked = check(folderOf(texts));
      const file = checked.files[0];
      assert.ok(file?.text === text);
      for (let offset = 0; offset <= text.length; offset += 2) {
        for (const ask of Object.values(AT_A_PLACE)) ask(checked, file, offset);
      }
      for (const ask of Object.values(OF_A_FILE)) ask(checked, file);
    });
  }

  it('of a thousand files', () => {
    const files = times(999, (i) => `${i}`, ' ')
      .split(' ')
      .map(
        (i) =>
          [
            `${i}.site.yaml`,
            `devices:\n  cam-${i}: {kind: camera, address: 10.0.${Number(i) >> 8}.${Number(i) & 255}}\n`,
          ] as const,
      );
    told({ ...Object.fromEntries(files), 'rest.site.yaml': REST });
  });

  it('with control characters, lone surrogates and marks that turn the direction of writing in its names', () => {
    const found = told({
      'a.site.yaml': `streams:\n  "a\\u0000b": {source: "c\\x1b[31md"}\n  "\\ud83d": {source: "\u202egnp.exe"}\n${REST}`,
    });
    for (const line of found)
      assert.doesNotMatch(
        line,
        /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])/,
      );
  });
});
