import assert from 'node:assert/strict';
import { removeItem } from '../../server/src/site/edit.ts';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import { diagnosticsOf, edited, folderOf } from '../site.ts';

const FILE = 'harrow-lane.site.yaml';
const VLANS = 'vlans: {house: {id: 10}, video: {id: 20, subnet: 192.168.20.0/24}, guest: {id: 30}}';

function of(rule: string, text: string): Diagnostic[] {
  return diagnosticsOf({ [FILE]: text }).filter((diagnostic) => diagnostic.rule.id === rule);
}

/** What is found of a rule, and what is left of it after each of the fixes. */
function findings(rule: string, text: string): string[] {
  const found = of(rule, text);
  for (const { message, fixes } of found) {
    for (const { title, edits } of fixes?.() ?? []) {
      const after = edited({ [FILE]: text }, edits)[FILE] ?? '';
      assert.ok(!of(rule, after).some((other) => other.message === message), `${title} does not help:\n${after}`);
    }
  }
  return found.map(({ message }) => message);
}

describe('VLANs at the ends of a cable', () => {
  const between = (core: string, other: string): string[] =>
    findings(
      'vlan-mismatch',
      `${VLANS}
devices:
  core: {kind: switch, ports: {16: {${core}}, 17: {vlan: guest}}}
  ${other}
cables:
  - {from: core/16, to: other}
`,
    );
  const barn = (set: string): string => `other: {kind: switch, ports: {1: {${set}}}}`;

  it('may be equal in any order, and with the native VLAN listed or not', () => {
    assert.deepEqual(between('trunk: [house, video]', barn('trunk: [video, house]')), []);
    assert.deepEqual(between('trunk: [house, video], native: house', barn('trunk: [video], native: house')), []);
  });

  it('are found where each has what the other has not', () => {
    const [message = ''] = between('trunk: [house, video]', barn('trunk: [guest, video]'));
    assert.match(message, /house and guest do not pass/);
  });

  it('are found where the native VLANs differ, or one end tags what the other does not', () => {
    assert.match(
      between('trunk: [video], native: house', barn('trunk: [video], native: guest'))[0] ?? '',
      /house and guest are mixed up\./,
    );
    assert.match(
      between('trunk: [house, video], native: house', barn('trunk: [house, video]'))[0] ?? '',
      /house does not pass/,
    );
  });

  it('are found where a trunk meets an access port', () => {
    assert.match(between('trunk: [house, video], native: house', barn('vlan: house'))[0] ?? '', /video does not pass/);
  });

  it("are the host's own affair where it wants no more than it gets", () => {
    assert.deepEqual(between('vlan: video', 'other: {kind: camera}'), []);
    assert.deepEqual(between('trunk: [house, video], native: house', 'other: {kind: computer}'), []);
    assert.deepEqual(
      between('trunk: [house, video, guest]', 'other: {kind: router, ports: {lan: {trunk: [house, video]}}}'),
      [],
    );
  });

  it('are found where a host wants a VLAN that does not come', () => {
    assert.match(
      between('trunk: [house]', 'other: {kind: router, ports: {lan: {trunk: [house, video]}}}')[0] ?? '',
      /video does not get to it/,
    );
    assert.match(
      between('vlan: house', 'other: {kind: display, ports: {eth: {vlan: video}}}')[0] ?? '',
      /video does not get to it/,
    );
  });

  it('are left alone while a name is not declared, which another rule reports', () => {
    assert.deepEqual(between('trunk: [house, vid]', barn('trunk: [house]')), []);
    assert.deepEqual(between('trunk: []', barn('trunk: [house]')), []);
  });

  it('are compared through media converters', () => {
    const [message = ''] = findings(
      'vlan-mismatch',
      `${VLANS}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1: {trunk: [video]}}}
  core-converter: {kind: media-converter, ports: {copper: {}, fibre: {}}}
  barn-converter: {kind: media-converter, ports: {copper: {}, fibre: {}}}
cables:
  - {from: core/16, to: core-converter/copper}
  - {from: core-converter/fibre, to: barn-converter/fibre}
  - {from: barn-converter/copper, to: barn/1}
`,
    );
    assert.match(message, /house does not pass/);
  });

  it('are not changed where a range of ports would change with them', () => {
    const text = `${VLANS}
devices:
  core: {kind: switch, ports: {1-16: {trunk: [house, video]}}}
  barn: {kind: switch, ports: {1-8: {trunk: [video]}}}
cables:
  - {from: core/16, to: barn/1}
`;
    assert.deepEqual(
      of('vlan-mismatch', text).flatMap(({ fixes }) => fixes?.() ?? []),
      [],
    );
  });
});

describe('A loop', () => {
  const ring = (set: string): string => `${VLANS}
devices:
  core: {kind: switch${set}, ports: {1-2: {trunk: [house, video]}}}
  barn: {kind: switch${set}, ports: {1-2: {trunk: [house, video]}}}
  stable: {kind: switch, ports: {1-2: {trunk: [house, video]}}}
cables:
  - {from: core/1, to: barn/2}
  - {from: barn/1, to: stable/2}
  - {from: stable/1, to: core/2}
`;

  it('is found once, however many VLANs go round it, with all switches and cables of it', () => {
    const found = of('loop', ring(''));
    assert.equal(found.length, 1);
    const [, without = ''] = /\. (.*) do not run spanning tree/.exec(found[0]?.message ?? '') ?? [];
    assert.deepEqual(without.split(/, | and /).sort(), ['barn', 'core', 'stable']);
    assert.equal(found[0]?.related?.length, 2);
    assert.equal(findings('loop', ring('')).length, 1);
  });

  it('is none where all run spanning tree, and none where no VLAN goes all round', () => {
    assert.deepEqual(
      findings(
        'loop',
        ring(', spanning-tree: true').replace('stable: {kind: switch', 'stable: {kind: switch, spanning-tree: true'),
      ),
      [],
    );
    assert.deepEqual(
      findings(
        'loop',
        ring('').replace(
          'stable: {kind: switch, ports: {1-2: {trunk: [house, video]}}}',
          'stable: {kind: switch, ports: {1: {vlan: guest}, 2: {trunk: [house, video]}}}',
        ),
      ),
      [],
    );
  });
});

describe('The load of a link', () => {
  // 10 Mb/s: RTP packets of 1400 bytes are 1478 on the wire (RFC 5180 App. A.1), so media of 1400/1478 of the limit.
  const at = (bitrate: string, policy = ''): string[] =>
    findings(
      'link-load',
      `
devices:
  core: {kind: switch, ports: {1: {speed: 10 Mb/s}, 2: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 10 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, ${bitrate}}, receivers: [recorder]}
${policy}`,
    );

  it('is found over 70 % and over 90 %, and by the peak where one is declared', () => {
    assert.deepEqual(at('bitrate: 6.6 Mb/s'), []);
    assert.match(at('bitrate: 6.7 Mb/s')[0] ?? '', /more than the 70 % that policy warns at/);
    assert.match(at('bitrate: 8.6 Mb/s')[0] ?? '', /more than the limit of 90 %/);
    assert.match(
      at('bitrate: 4 Mb/s, peak-bitrate: 8.6 Mb/s')[0] ?? '',
      /at peak, 91 % of 10 Mb\/s \(4.23 Mb\/s nominal\)/,
    );
  });

  it('may be just at the limit', () => {
    // 7 Mb/s of media in packets of 1400 bytes, and half a packet more for each of 25 pictures: 637.5 packets/s with
    // 78 bytes each make 7.3978 Mb/s on the wire.
    assert.deepEqual(at('bitrate: 7 Mb/s', 'policies: {link-load: {warn: 73.98 %, limit: 73.98 %}}'), []);
    assert.match(
      at('bitrate: 7 Mb/s', 'policies: {link-load: {warn: 73.8 %, limit: 73.97 %}}')[0] ?? '',
      /more than the limit of 73.97 %/,
    );
  });
});

describe('Power over a cable', () => {
  it('that a device is known to do with is a warning, not an error', () => {
    const at = (poe: string): Diagnostic[] =>
      of(
        'poe-class',
        `
devices:
  core: {kind: switch, ports: {1-4: {poe: af}}}
  yard-cam: {kind: camera, poe: ${poe}}
cables:
  - {from: core/1, to: yard-cam}
`,
      );
    assert.deepEqual(
      at('{class: 4}').map(({ severity }) => severity),
      ['error'],
    );
    assert.deepEqual(
      at('{class: 4, power: 12.5 W}').map(({ severity }) => severity),
      ['warning'],
    );
    assert.deepEqual(at('{class: 3}'), []);
  });
});

describe('A cable that is taken out', () => {
  const without = (text: string, index: number): string => {
    const folder = folderOf({ [FILE]: text });
    const cable = folder.site().cables[index];
    assert.ok(cable !== undefined);
    const edit = removeItem(cable.item);
    return edited({ [FILE]: text }, edit === undefined ? [] : [edit])[FILE] ?? '';
  };

  it('goes with its anchor, unless another item may refer to that', () => {
    assert.equal(
      without('cables:\n  - &c {from: a, to: b}\n  - {from: c, to: d}\n', 0),
      'cables:\n  - {from: c, to: d}\n',
    );
    const shared = 'cables:\n  - &c {from: a, to: b}\n  - {<<: *c, to: d}\n';
    assert.equal(without(shared, 0), shared);
  });

  it('goes with its line', () => {
    assert.equal(
      without('cables:\n  - {from: a, to: b}  # gone\n  # stays\n  - {from: c, to: d}\n', 0),
      'cables:\n  # stays\n  - {from: c, to: d}\n',
    );
    assert.equal(
      without('cables:\n  - {from: a, to: b}\n  - from: c\n    to: d\n', 1),
      'cables:\n  - {from: a, to: b}\n',
    );
  });

  it('goes with its comma', () => {
    assert.equal(without('cables: [{from: a, to: b}, {from: c, to: d}]\n', 0), 'cables: [{from: c, to: d}]\n');
    assert.equal(without('cables: [{from: a, to: b}, {from: c, to: d}]\n', 1), 'cables: [{from: a, to: b}]\n');
  });
});

describe('A host with an address in each of several VLANs', () => {
  it('is given a trunk where its switch has one', () => {
    const text = `
vlans: {house: {id: 10, subnet: 192.168.10.0/24}, video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {16: {trunk: [house, video]}}}
  router: {kind: router, ports: {lan: {addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
cables: [{from: core/16, to: router}]
`;
    const [found] = of('vlan-mismatch', text);
    const [fix, ...others] = found?.fixes?.() ?? [];
    assert.deepEqual([fix?.title, others.length], ['Give router/lan a trunk of house and video', 0]);
    assert.match(
      edited({ [FILE]: text }, fix?.edits ?? [])[FILE] ?? '',
      /video: 192\.168\.20\.1\}, trunk: \[house, video\]\}/,
    );
    findings('vlan-mismatch', text);
  });

  it('is not found for addresses that nothing is known of', () => {
    assert.deepEqual(
      findings(
        'address-not-carried',
        `${VLANS}
devices:
  router: {kind: router, ports: {lan: {addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
`,
      ),
      [],
    );
  });
});

describe('Ports of a switch', () => {
  it('are named in the order of their numbers, however they are declared', () => {
    const [message] = findings(
      'no-such-port',
      `
devices:
  core: {kind: switch, ports: {1-3: {}, 4: {}, 5-6: {}}}
  paddock-cam: {kind: camera}
cables: [{from: core/9, to: paddock-cam}]
`,
    );
    assert.match(message ?? '', /it has 1-6\./);
  });

  it('that one cable joins make a loop only where no spanning tree keeps it idle', () => {
    const joined = (more: string): string[] =>
      findings(
        'cable-to-itself',
        `
devices:
  core: {kind: switch, ${more}ports: {1-2: {}}}
cables: [{from: core/1, to: core/2}]
`,
      );
    assert.match(joined('')[0] ?? '', /which makes a loop/);
    assert.match(joined('spanning-tree: true, ')[0] ?? '', /which spanning tree blocks/);
  });
});
