/** Honest mistakes, each typed as an item of its own into the site that a newcomer starts from. */

export interface Mistake {
  readonly what: string;
  readonly section: string;
  /** As it is typed, from the start of its line. */
  readonly item: string;
  /** An item of the section that this one takes the place of. */
  readonly insteadOf?: string;
  readonly rule: string;
}

export const mistakes: readonly Mistake[] = [
  {
    what: 'an address that another device has',
    section: 'devices',
    item: '  lane-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}\n',
    rule: 'duplicate-address',
  },
  {
    what: 'the same over several lines',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    address: 192.168.20.31\n',
    rule: 'duplicate-address',
  },
  {
    what: 'an address outside its subnet',
    section: 'devices',
    insteadOf: 'hall-screen',
    item: '  hall-screen: {kind: display, address: 192.168.30.61, speed: 1 Gb/s}\n',
    rule: 'address-outside-subnet',
  },
  {
    what: 'a number over 255 in an address',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    address: 192.168.20.311\n',
    rule: 'malformed-value',
  },
  {
    what: 'an address that is left half-way',
    section: 'devices',
    item: '  lane-cam:\n    address: 192.168.\n    kind: camera\n',
    rule: 'malformed-value',
  },
  {
    what: 'a unit of something else',
    section: 'volumes',
    item: '  attic: {host: recorder, capacity: 4 Mb/s}\n',
    rule: 'quantity',
  },
  {
    what: 'no space before a unit',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    speed: 100Mb/s\n',
    rule: 'quantity',
  },
  {
    what: 'no unit',
    section: 'cables',
    item: '  - {from: core/3, to: core/4, length: 38, type: cat6}\n',
    rule: 'quantity',
  },
  {
    what: 'a key that there is not',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    adress: 192.168.20.33\n',
    rule: 'unknown-key',
  },
  {
    what: 'a key that is left half-way, with its colon',
    section: 'devices',
    item: '  lane-cam: {kind: camera, addr: 192.168.20.33}\n',
    rule: 'unknown-key',
  },
  { what: 'an unknown kind', section: 'devices', item: '  lane-cam:\n    kind: camra\n', rule: 'value-not-allowed' },
  {
    what: 'a VLAN id out of range',
    section: 'vlans',
    item: '  guests: {id: 4096, subnet: 192.168.30.0/24}\n',
    rule: 'out-of-range',
  },
  { what: 'a VLAN id twice', section: 'vlans', item: '  guests: {id: 20, subnet: 192.168.30.0/24}\n', rule: 'vlan-id' },
  {
    what: 'a subnet with the address of a host',
    section: 'vlans',
    item: '  guests: {id: 30, subnet: 192.168.30.1/24}\n',
    rule: 'subnet-host-bits',
  },
  {
    what: 'a mapping with nothing in it',
    section: 'devices',
    item: '  barn: {kind: switch, ports: {}}\n',
    rule: 'malformed-value',
  },
  { what: 'a tab', section: 'devices', item: '  lane-cam:\n\tkind: camera\n', rule: 'yaml-syntax' },
  {
    what: 'a key twice',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    speed: 1 Gb/s\n    speed: 100 Mb/s\n',
    rule: 'duplicate-key',
  },
  { what: 'a name twice', section: 'devices', item: '  gate-cam: {kind: camera}\n', rule: 'duplicate-name' },
  {
    what: 'a word where true or false belongs',
    section: 'devices',
    item: '  barn:\n    kind: switch\n    igmp-snooping: yes\n',
    rule: 'wrong-type',
  },
  {
    what: 'one value where a list belongs',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    receivers: recorder\n    transport: rtp\n',
    rule: 'wrong-type',
  },
  {
    what: 'no space behind a colon',
    section: 'devices',
    item: '  lane-cam:\n    kind:camera\n    address: 192.168.20.33\n',
    rule: 'yaml-syntax',
  },
  {
    what: 'a name without its colon',
    section: 'devices',
    item: '  lane-cam\n    kind: camera\n',
    rule: 'yaml-syntax',
  },
  {
    what: 'a device that is misspelt',
    section: 'cables',
    item: '  - {from: core/3, to: gaet-cam, type: cat6, length: 20 m}\n',
    rule: 'unknown-name',
  },
  {
    what: 'a device that there is not',
    section: 'cables',
    item: '  - {from: core/3, to: orchard, type: cat6, length: 20 m}\n',
    rule: 'unknown-name',
  },
  {
    what: 'a port that there is not',
    section: 'cables',
    item: '  - {from: core/9, to: gate-cam}\n',
    rule: 'no-such-port',
  },
  {
    what: 'a port that is taken',
    section: 'cables',
    item: '  - {from: core/1, to: core/3, type: cat6, length: 20 m}\n',
    rule: 'port-cabled-twice',
  },
  {
    what: 'a cable that is too long',
    section: 'cables',
    insteadOf: '- {from: core/2',
    item: '  - {from: core/2, to: yard-cam, type: cat6, length: 140 m}\n',
    rule: 'cable-length',
  },
  { what: 'a cable with one end', section: 'cables', item: '  - {from: core/3, length: 20 m}\n', rule: 'missing-key' },
  {
    what: 'a group that is no group',
    section: 'streams',
    item: '  yard-shown: {source: recorder, carries: yard, transport: rtp, group: 192.168.20.99, port: 5006}\n',
    rule: 'group-not-multicast',
  },
  {
    what: 'an odd port for RTP',
    section: 'streams',
    item: '  yard-shown: {source: recorder, carries: yard, transport: rtp, group: 239.192.20.32, port: 5007}\n',
    rule: 'rtp-port',
  },
  {
    what: 'a peak below the bit rate',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 4 Mb/s}\n',
    rule: 'peak-below-bitrate',
  },
  {
    what: 'a conversion that there is not',
    section: 'recordings',
    item: '  spare: {stream: yard, volume: archive, keep: 3 d, file: "spare/%Q.mp4"}\n',
    rule: 'unknown-conversion',
  },
  {
    what: 'the address of the subnet itself',
    section: 'devices',
    item: '  lane-cam: {kind: camera, address: 192.168.20.0, speed: 100 Mb/s}\n',
    rule: 'address-reserved',
  },
  {
    what: 'the address that all have',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    address: 192.168.20.255\n    speed: 100 Mb/s\n',
    rule: 'address-reserved',
  },
  {
    what: 'a MAC address with a letter that is no digit',
    section: 'devices',
    item: '  lane-cam: {kind: camera, mac: "02:00:00:10:00:0g"}\n',
    rule: 'malformed-value',
  },
  {
    what: 'bytes where bits are counted',
    section: 'devices',
    item: '  lane-cam: {kind: camera, speed: 1 GB/s}\n',
    rule: 'quantity',
  },
  {
    what: 'a unit in small letters',
    section: 'volumes',
    item: '  attic: {host: recorder, capacity: 4 tb}\n',
    rule: 'quantity',
  },
  {
    what: 'a key of another kind of device',
    section: 'devices',
    item: '  lane-cam:\n    kind: camera\n    poe-budget: 60 W\n',
    rule: 'key-not-of-kind',
  },
  {
    what: 'a brace that is not closed',
    section: 'devices',
    item: '  lane-cam: {kind: camera, speed: 100 Mb/s\n',
    rule: 'yaml-syntax',
  },
  {
    what: 'a quote that is not closed',
    section: 'recordings',
    item: '  spare: {stream: yard, volume: archive, keep: 3 d, file: "spare/%H.mp4}\n',
    rule: 'yaml-syntax',
  },
  {
    what: 'a port beyond all ports',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    port: 70000\n    transport: rtsp\n',
    rule: 'out-of-range',
  },
  {
    what: 'a VLAN id of nothing',
    section: 'vlans',
    item: '  guests: {id: 0}\n',
    rule: 'out-of-range',
  },
  {
    what: 'a subnet inside another',
    section: 'vlans',
    item: '  guests: {id: 30, subnet: 192.168.20.128/25}\n',
    rule: 'overlapping-subnets',
  },
  {
    what: 'a cable from a port to itself',
    section: 'cables',
    item: '  - {from: core/3, to: core/3, type: cat6}\n',
    rule: 'cable-to-itself',
  },
  {
    what: 'a host that is misspelt',
    section: 'volumes',
    item: '  attic: {host: recoder, capacity: 4 TB}\n',
    rule: 'unknown-name',
  },
  {
    what: 'a stream that is misspelt',
    section: 'recordings',
    item: '  spare: {stream: yrad, volume: archive, keep: 3 d}\n',
    rule: 'unknown-name',
  },
  {
    what: 'a key that is misspelt, with its colon',
    section: 'recordings',
    item: '  spare: {strem: yard, volume: archive}\n',
    rule: 'unknown-key',
  },
  {
    what: 'a codec that there is not',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    video: {codec: h256, bitrate: 6 Mb/s}\n',
    rule: 'value-not-allowed',
  },
  {
    what: 'a word where a number belongs',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    video: {codec: h264, frame-rate: fast}\n',
    rule: 'wrong-type',
  },
  {
    what: 'the same receiver twice',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    receivers: [recorder, recorder]\n',
    rule: 'repeated-value',
  },
  {
    what: 'files longer than they are kept',
    section: 'recordings',
    item: '  spare: {stream: yard, volume: archive, segment: 60 s, keep: 30 s}\n',
    rule: 'keep-below-segment',
  },
  {
    what: 'a class of PoE that there is not',
    section: 'devices',
    item: '  lane-cam: {kind: camera, poe: {class: 9}}\n',
    rule: 'out-of-range',
  },
  {
    what: 'a group and port that another stream has',
    section: 'streams',
    item: '  yard-shown: {source: recorder, carries: yard, transport: rtp, group: 239.192.20.31, port: 5004}\n',
    rule: 'group-clash',
  },
  {
    what: 'a transport that there is not',
    section: 'streams',
    item: '  yard-two:\n    source: yard-cam\n    transport: rtps\n    port: 554\n',
    rule: 'value-not-allowed',
  },
  {
    what: 'a VLAN that is misspelt',
    section: 'devices',
    item: '  barn:\n    kind: switch\n    ports:\n      1-4: {vlan: vidoe}\n      5: {}\n',
    rule: 'unknown-name',
  },
];
