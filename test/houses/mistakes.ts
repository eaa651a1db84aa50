/** Honest mistakes in the houses of this folder, each one edit or two of a right house, and where each is reported. */

export interface Mistake {
  /** The house, by the name of its file. */
  readonly house: string;
  readonly is: string;
  /** What stood there once, and what stands there by mistake. */
  readonly edits: readonly (readonly [string, string])[];
  /** The rule that reports it, and the words that it marks; where two things clash, both are marked. */
  readonly told: string;
}

type Row = readonly [is: string, told: string, ...edits: (readonly [string, string])[]];

const OF_HOUSE: Readonly<Record<string, readonly Row[]>> = {
  'switch-that-routes-four': [
    [
      'gateway and querier without an address',
      'gateway-without-address core',
      ['mgmt: 10.0.99.1, cams: 10.0.20.1, users', 'mgmt: 10.0.99.1, users'],
    ],
    [
      'a default route by an address that is on no link',
      'route-refused 10.0.254.5',
      ['via: 10.0.254.1}]', 'via: 10.0.254.5}]'],
    ],
  ],
  'two-watchers': [
    [
      'a route for groups with too long a prefix',
      'unreached-receiver watch',
      ['{to: 239.192.0.0/16, port: b}', '{to: 239.192.30.0/31, port: b}'],
    ],
    [
      'the recorder has no route for groups, and says which port is meant',
      'unintended-egress cctv',
      [', {to: 224.0.0.0/4, port: cctv}', ''],
    ],
    ['a card of the recorder is not cabled', 'route-without-carrier cctv', ['  - {from: rec/cctv, to: sw/9}\n', '']],
    [
      'a group with two digits exchanged',
      'group-reserved 229.192.30.2',
      ['group: 239.192.30.2', 'group: 229.192.30.2'],
    ],
  ],
  'stairs-television': [
    [
      'a terminator where a coax is',
      'port-cabled-twice split/out-3',
      ['terminated: [out-4]', 'terminated: [out-3, out-4]'],
    ],
    ['an amplifier of 45 dB', 'amplifier-overdriven amp', ['gain: 15 dB', 'gain: 45 dB']],
    [
      'an amplifier the wrong way round',
      'amplifier-reversed amp/out',
      [
        '{from: mast, to: amp/in, type: coax-6, length: 5 m}\n  - {from: amp/out, to: split/in',
        '{from: mast, to: amp/out, type: coax-6, length: 5 m}\n  - {from: amp/in, to: split/in',
      ],
    ],
    [
      'a tuner of another system',
      'tuner-system a',
      ['tuners: {1-2: {systems: [dvb-t, dvb-t2]', 'tuners: {1-2: {systems: [dvb-s]'],
    ],
  ],
  'quad-dish': [
    [
      'no polarisation',
      'multiplex-parameters dvb-s2',
      ['frequency: 10773 MHz, polarisation: vertical', 'frequency: 10773 MHz'],
    ],
    ['two coaxes in one output', 'port-cabled-twice dish/out-3', ['{from: dish/out-4', '{from: dish/out-3']],
    ['a service in no multiplex', 'malformed-value []', ['news: {multiplex: [h1, v1]', 'news: {multiplex: []']],
    ['an LNB with fewer outputs', 'no-such-port single', ['type: quad', 'type: single']],
    [
      'thin coax that is too long',
      'carrier-to-noise sat-box',
      [
        '{from: dish/out-1, to: sat-box/a, type: coax-6, length: 14 m',
        '{from: dish/out-1, to: sat-box/a, type: coax-59, length: 140 m',
      ],
    ],
  ],
  'two-sticks': [
    [
      'what is recorded keeps the only tuner',
      'tuner-shortage y',
      ['y: {source: stick-b, transport', 'y: {source: stick-a, transport'],
    ],
    [
      'a coax is left out',
      'tuner-not-cabled rf',
      ['  - {from: two-way/out-2, to: stick-b/rf, type: coax-6, length: 8 m}\n', ''],
    ],
    [
      'a stick in another device',
      'tuner-plugged-nowhere usb-1',
      ['stick-a: {kind: tuner, host: pvr', 'stick-a: {kind: tuner, host: telly'],
    ],
    [
      'a file name with the path of its volume',
      'file-pattern "/srv/tv/x/%Y/%m/%d-%H%M%S%z.ts"',
      ['file: "x/%Y', 'file: "/srv/tv/x/%Y'],
    ],
  ],
  'garden-switch': [
    ['a port that feeds too little', 'poe-class 6', ['1-4: {speed: 1 Gb/s, poe: bt}', '1-4: {speed: 1 Gb/s, poe: af}']],
    ['the cable is not in the port that takes power', 'poe-missing poe', ['to: pond/up', 'to: pond/3']],
  ],
  'fibre-triangle': [
    [
      'a VLAN is missing at a range of ports',
      'vlan-mismatch w/9',
      [
        '9-10: {speed: 1 Gb/s, trunk: [cctv, office], module: 1000base-lx10}}}\n  arc',
        '9-10: {speed: 1 Gb/s, trunk: [office], module: 1000base-lx10}}}\n  arc',
      ],
    ],
    ['a camera at a port of another VLAN', 'address-outside-subnet e/8', ['{from: e/2, to: e2', '{from: e/8, to: e2']],
    ['a querier without an address', 'querier-address n', ['addresses: {cctv: 192.168.60.2}, ', '']],
    [
      'a range of ports with other modules',
      'medium-mismatch 1000base-sx',
      ['cctv, office], module: 1000base-lx10}}}\n  w: ', 'cctv, office], module: 1000base-sx}}}\n  w: '],
    ],
  ],
  'ten-gigabit-core': [
    ['too few disks', 'volume-disks 2', ['disks: 4, redundancy', 'disks: 2, redundancy']],
    [
      'a recording of what the server does not receive',
      'recorder-not-receiving n4',
      ['n3b: {stream: n3, volume: vb', 'n3b: {stream: n4, volume: vb'],
    ],
    [
      'a range of ports in the wrong VLAN',
      'address-outside-subnet cam',
      [
        '5-8: {speed: 10 Gb/s, medium: direct-attach, vlan: srv}',
        '5-8: {speed: 10 Gb/s, medium: direct-attach, vlan: cam}',
      ],
    ],
    [
      'no gateway',
      'unreached-receiver rec-a',
      ['subnet: 10.100.0.0/24, gateway: edge, internet', 'subnet: 10.100.0.0/24, internet'],
    ],
  ],
  'guest-rooms': [
    ['a tuner too few', 'tuner-shortage any', ['tuners: {1-2: {systems: [dvb-c]}}', 'tuners: {1: {systems: [dvb-c]}}']],
    ['a prefix that is too long', 'address-outside-subnet 172.20.0.0/24', ['172.20.0.0/22', '172.20.0.0/24']],
    [
      'a copied stream with the service of the other',
      'sent-twice s2',
      ['port: 5004, service: s3', 'port: 5004, service: s2'],
    ],
    ['no coax to the tuner', 'tuner-not-cabled rf', ['  - {from: feed, to: head/rf, type: coax-6, length: 4 m}\n', '']],
  ],
  'copy-to-parents': [
    [
      'audio that the container does not hold',
      'file-format "bell/%Y-%m-%d/%H%M%S%z.mp4"',
      ['"bell/%Y-%m-%d/%H%M%S%z.mkv"', '"bell/%Y-%m-%d/%H%M%S%z.mp4"'],
    ],
    ['minutes for the month', 'file-pattern "yard/%Y-%M-%d/%H%M%S%z.mkv"', ['"yard/%Y-%m-%d/', '"yard/%Y-%M-%d/']],
    [
      'a keyframe interval with two digits too many',
      'keyframe-far 400 s',
      ['peak-bitrate: 4 Mb/s, keyframe-interval: 4 s', 'peak-bitrate: 4 Mb/s, keyframe-interval: 400 s'],
    ],
  ],
  'longhouse': [
    [
      'two coaxes of the dish swapped',
      'planes-swapped sat-switch/hl',
      ['from: dish/vl, to: sat-switch/vl', 'from: dish/vl, to: sat-switch/hl'],
      ['from: dish/hl, to: sat-switch/hl', 'from: dish/hl, to: sat-switch/vl'],
    ],
    [
      'a receiver behind a splitter that passes no current',
      'lnb-control-blocked t-split',
      [
        'dvb-box: {kind: tuner, address: 192.168.7.10, speed: 1 Gb/s, inputs: {rf: {',
        'dvb-box: {kind: tuner, address: 192.168.7.10, speed: 1 Gb/s, inputs: {rf: {systems: [dvb-s2, dvb-t2], ',
      ],
    ],
    [
      'no earth block at the roof',
      'aerial-earth {outside-protected-zone: true, earthed: 16 mm²}',
      [', through: [tv-earth]', ''],
    ],
    [
      'an aerial of another band',
      'frequency-not-passed 470-550 MHz',
      ['frequencies: 470-694 MHz', 'frequencies: 470-550 MHz'],
    ],
    ['an output of the splitter that it has not', 'no-such-port out-3', ['from: t-split/out-2', 'from: t-split/out-3']],
  ],
  'dark-night': [
    [
      'a switch left on the mains',
      'runtime-too-short {at-most: 9 W}',
      ['{at-most: 9 W, from: barn-ups}', '{at-most: 9 W}'],
    ],
    ['a UPS that is too small', 'ups-overload 60 W', ['rated-power: 540 W', 'rated-power: 60 W']],
    ['a battery of a tenth', 'runtime-too-short 21.6 Wh', ['216 Wh', '21.6 Wh']],
    [
      'a camera fed from its switch',
      'power-source sw2',
      ['power: {idle: 5 W, at-most: 8 W}}', 'power: {idle: 5 W, at-most: 8 W, from: sw2}}'],
    ],
    ['a UPS by a name that is not there', 'unknown-name barn-usp', ['from: barn-ups', 'from: barn-usp']],
  ],
  'flat-router': [
    ['a disk of no size', 'quantity 0 TB', ['4 TB', '0 TB']],
    [
      'a port of no speed',
      'quantity 0 Gb/s',
      ['address: 192.168.1.10, speed: 1 Gb/s', 'address: 192.168.1.10, speed: 0 Gb/s'],
    ],
    [
      'a rate with two digits too many',
      'rate-too-high 300 Mb/s',
      [
        'source: door-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 3 Mb/s',
        'source: door-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 300 Mb/s',
      ],
    ],
    [
      'Gb/s for Mb/s',
      'rate-too-high 6 Gb/s',
      [
        'source: drive-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s',
        'source: drive-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Gb/s',
      ],
    ],
    [
      'what a port feeds at a camera',
      'poe-of-switch af',
      ['address: 192.168.1.21, speed: 100 Mb/s, poe: {class: 2}', 'address: 192.168.1.21, speed: 100 Mb/s, poe: af'],
    ],
    [
      'two devices have one address',
      'duplicate-address 192.168.1.22, duplicate-address 192.168.1.22',
      ['address: 192.168.1.23', 'address: 192.168.1.22'],
    ],
    ['an address of another subnet', 'address-outside-subnet 192.168.2.22', ['192.168.1.22', '192.168.2.22']],
    ['a fixed address in the pool', 'address-in-dhcp-pool 192.168.1.110', ['192.168.1.10,', '192.168.1.110,']],
    ['a cable that is too long', 'cable-length 144 m', ['44 m', '144 m']],
    [
      'a camera is not cabled',
      'unreached-receiver garden-cam',
      ['  - {from: sw/3, to: garden-cam, type: cat5e, length: 44 m}\n', ''],
    ],
    [
      'the recorder is not cabled',
      'unreached-receiver nas',
      ['  - {from: sw/6, to: nas, type: cat5e, length: 1 m}\n', ''],
    ],
    ['a name is misspelt in a cable', 'unknown-name garden-can', ['to: garden-cam', 'to: garden-can']],
    ['a port that is not there', 'no-such-port 16', ['from: sw/6', 'from: sw/16']],
    ['one camera is named at two cables', 'port-cabled-twice drive-cam', ['to: garden-cam', 'to: drive-cam']],
    ['two plugs in one port', 'port-cabled-twice sw/2', ['from: sw/3', 'from: sw/2']],
    ['a camera at a port that feeds nothing', 'poe-missing poe', ['from: sw/3', 'from: sw/5']],
    [
      'a camera of a higher class than the port feeds',
      'poe-class 4',
      ['length: 44 m', 'length: 40 m'],
      [
        'address: 192.168.1.23, speed: 100 Mb/s, poe: {class: 3}',
        'address: 192.168.1.23, speed: 100 Mb/s, poe: {class: 4}',
      ],
    ],
    ['a budget that is too small', 'poe-budget 30 W', ['60 W', '30 W']],
    [
      'a recording of what the server does not receive',
      'recorder-not-receiving door',
      ['receivers: [nas, desk]', 'receivers: [desk]'],
    ],
    ['a disk that is too small', 'volume-fill 1 TB', ['4 TB', '1 TB']],
    ['a slow disk', 'write-rate 1 MB/s', ['100 MB/s', '1 MB/s']],
    [
      'names without seconds',
      'file-name-collision "drive/%Y-%m-%d_%H-%M%z.mp4"',
      ['drive/%Y-%m-%d_%H-%M-%S%z.mp4', 'drive/%Y-%m-%d_%H-%M%z.mp4'],
      ['stream: drive, volume: disk, segment: 60 s', 'stream: drive, volume: disk, segment: 30 s'],
    ],
    [
      'bytes for bits',
      'quantity 6 MB/s',
      [
        'drive-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s',
        'drive-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 MB/s',
      ],
    ],
    [
      'a subnet that is misspelt',
      'address-outside-subnet 192.168.11.0/24',
      ['192.168.1.0/24, gateway: router, dhcp-pool: 192.168.1.100-192.168.1.199', '192.168.11.0/24, gateway: router'],
    ],
    [
      'a subnet that is too small',
      'address-outside-subnet 192.168.1.0/28',
      ['192.168.1.0/24, gateway: router, dhcp-pool: 192.168.1.100-192.168.1.199', '192.168.1.0/28, gateway: router'],
    ],
    [
      'a pool that takes in the gateway',
      'dhcp-pool-outside-subnet 192.168.1.1-192.168.1.199',
      ['192.168.1.100-192.168.1.199', '192.168.1.1-192.168.1.199'],
    ],
  ],
  'two-cards': [
    [
      'a peak that is far too high, of what the server sends on and records',
      'rate-too-high 900 Mb/s',
      [
        'streams:\n  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s',
        'streams:\n  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 900 Mb/s',
      ],
    ],
    [
      'one port of the switch is in the other VLAN',
      'address-outside-subnet core/5',
      ['5-8: {speed: 1 Gb/s, vlan: video}', '5: {speed: 1 Gb/s, vlan: house}\n      6-8: {speed: 1 Gb/s, vlan: video}'],
    ],
    ['no querier', 'no-querier video', [', querier: core}', '}']],
    ['a querier that is a camera', 'querier-absent gate-cam', ['querier: core', 'querier: gate-cam']],
    ['no route for multicast', 'unintended-egress nas', ['      - {to: 224.0.0.0/4, port: cams}\n', '']],
    ['the route by the wrong card', 'unintended-egress nas', ['224.0.0.0/4, port: cams', '224.0.0.0/4, port: lan']],
    [
      'the cards of the server are swapped',
      'cables-swapped nas/lan',
      ['from: core/5, to: nas/cams', 'from: core/5, to: nas/lan'],
      ['from: core/9, to: nas/lan', 'from: core/9, to: nas/cams'],
    ],
    ['a camera at a port of the house', 'address-outside-subnet core/12', ['from: core/3', 'from: core/12']],
    [
      'camera and computer are swapped',
      'cables-swapped desk',
      ['from: core/3, to: shed-cam', 'from: core/3, to: desk'],
      ['from: core/11, to: desk', 'from: core/11, to: shed-cam'],
      ['poe: {class: 4}', 'location: shed'],
    ],
    [
      'two streams on one group and port',
      'group-clash 239.192.20.21, group-clash 239.192.20.21',
      ['239.192.20.22', '239.192.20.21'],
    ],
    ['a group that is no group', 'group-not-multicast 192.168.20.21', ['239.192.20.21', '192.168.20.21']],
    ['a group that every switch floods', 'group-always-flooded 239.128.0.21', ['239.192.20.21', '239.128.0.21']],
    ['an odd RTP port', 'rtp-port 5005', ['group: 239.192.20.22, port: 5004', 'group: 239.192.20.22, port: 5005']],
    [
      'the server does not receive what it sends on',
      'carried-not-received gate',
      ['keyframe-interval: 2 s}, receivers: [nas]}\n  yard:', 'keyframe-interval: 2 s}}\n  yard:'],
      ['  gate-desk: {source: nas, carries: gate, transport: rtp, port: 5004, receivers: [desk]}\n', ''],
      [
        '  gate: {stream: gate, volume: archive, segment: 60 s, keep: 14 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mkv"}\n',
        '',
      ],
    ],
    [
      'the server does not receive what it sends on and records',
      'carried-not-received gate',
      ['keyframe-interval: 2 s}, receivers: [nas]}\n  yard:', 'keyframe-interval: 2 s}}\n  yard:'],
      ['  gate-desk: {source: nas, carries: gate, transport: rtp, port: 5004, receivers: [desk]}\n', ''],
    ],
    [
      'the uplink of the recorder is slow',
      'port-speed-mismatch nas/cams',
      ['cams: {address: 10.1.20.5, speed: 1 Gb/s}', 'cams: {address: 10.1.20.5, speed: 10 Mb/s}'],
    ],
    [
      'a screen of the house that is to get multicast of the cameras',
      'unreached-receiver desk',
      [
        'gate-live: {source: nas, carries: gate, transport: rtp, group: 239.192.20.21, port: 5004, receivers: [hall-screen]}',
        'gate-live: {source: nas, carries: gate, transport: rtp, group: 239.192.20.21, port: 5004, receivers: [hall-screen, desk]}',
      ],
    ],
    [
      'no camera is cabled where its VLAN is',
      'unknown-name vidoe',
      ['5-8: {speed: 1 Gb/s, vlan: video}', '5-8: {speed: 1 Gb/s, vlan: vidoe}'],
    ],
    ['two names of files are one', 'file-name-collision "gate/%Y-%m-%d_%H-%M-%S%z.mkv"', ['"yard/%Y', '"gate/%Y']],
  ],
  'two-buildings': [
    [
      'an absurd rate of a stream that is kept as policy asks',
      'rate-too-high 600 Mb/s',
      [
        'stall: {source: stall-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s',
        'stall: {source: stall-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 600 Mb/s',
      ],
    ],
    ['a disk too small for what policy asks', 'volume-fill 1 TB', ['capacity: 8 TB', 'capacity: 1 TB']],
    [
      "the router's addresses are exchanged",
      'address-outside-subnet 10.2.20.1',
      ['addresses: {house: 10.2.10.1, video: 10.2.20.1}', 'addresses: {house: 10.2.20.1, video: 10.2.10.1}'],
    ],
    [
      'a leg of the router has an address of the other',
      'address-outside-subnet 10.2.10.1',
      ['addresses: {house: 10.2.10.1, video: 10.2.20.1}', 'addresses: {house: 10.2.10.1, video: 10.2.10.1}'],
    ],
    [
      'the barn does not snoop, and a slow camera there drowns',
      'flooding barn',
      ['address: 10.2.20.3\n    igmp-snooping: true\n    unregistered-multicast: drop', 'address: 10.2.20.3'],
      ['address: 10.2.20.43, speed: 100 Mb/s', 'address: 10.2.20.43, speed: 10 Mb/s'],
    ],
    [
      'video is missing at one end of the trunk',
      'vlan-mismatch barn/8',
      ['8: {speed: 1 Gb/s, trunk: [house, video]}\n  recorder', '8: {speed: 1 Gb/s, trunk: [house]}\n  recorder'],
    ],
    [
      'house is missing at one end of the trunk',
      'vlan-mismatch core/16',
      ['16: {speed: 1 Gb/s, trunk: [house, video]}', '16: {speed: 1 Gb/s, trunk: [video]}'],
    ],
    [
      'video is missing at both ends of the trunk',
      'vlan-missing core/16',
      ['16: {speed: 1 Gb/s, trunk: [house, video]}', '16: {speed: 1 Gb/s, trunk: [house]}'],
      ['8: {speed: 1 Gb/s, trunk: [house, video]}\n  recorder', '8: {speed: 1 Gb/s, trunk: [house]}\n  recorder'],
    ],
    [
      'one end of the trunk is an access port',
      'vlan-mismatch barn/8',
      ['8: {speed: 1 Gb/s, trunk: [house, video]}\n  recorder', '8: {speed: 1 Gb/s, vlan: video}\n  recorder'],
    ],
    [
      'the trunk has no VLAN at one end',
      'port-without-vlan barn/8',
      ['8: {speed: 1 Gb/s, trunk: [house, video]}\n  recorder', '8: {speed: 1 Gb/s}\n  recorder'],
    ],
    [
      'the fibre is not there',
      'unreached-receiver recorder',
      ['  - {from: core/16, to: barn/8, type: os2, length: 140 m}\n', ''],
    ],
    ['copper for the fibre', 'cable-length 140 m', ['type: os2, length: 140 m', 'type: cat6, length: 140 m']],
    ['no querier', 'no-querier video', [', querier: core}', '}']],
    ['the querier is not in the VLAN', 'querier-absent office-pc', ['querier: core', 'querier: office-pc']],
    [
      'no gateway of video',
      'unreached-receiver office-pc',
      ['subnet: 10.2.20.0/24, gateway: router, querier', 'subnet: 10.2.20.0/24, querier'],
    ],
    [
      'the router lacks video',
      'address-not-carried 10.2.20.1',
      ['lan: {speed: 1 Gb/s, trunk: [house, video],', 'lan: {speed: 1 Gb/s, trunk: [house],'],
    ],
    [
      'the port of the router is an access port',
      'vlan-mismatch core/15',
      ['15: {speed: 1 Gb/s, trunk: [house, video]}', '15: {speed: 1 Gb/s, vlan: house}'],
    ],
    ['the recorder is at a port of the house', 'address-outside-subnet core/10', ['from: core/5', 'from: core/10']],
    [
      'a camera is at a port of the house',
      'address-outside-subnet barn/6',
      ['from: barn/3, to: loft-cam', 'from: barn/6, to: loft-cam'],
      ['  - {from: barn/6, to: barn-pc, type: cat6, length: 7 m}\n', ''],
      ['receivers: [office-pc, barn-pc]', 'receivers: [office-pc]'],
      ['address: 10.2.20.43, speed: 100 Mb/s, poe: {class: 2}', 'address: 10.2.20.43, speed: 100 Mb/s'],
    ],
    [
      'a policy that the recording does not keep to',
      'retention 7 d',
      [
        'stream: ride, volume: archive, segment: 60 s, keep: 14 d',
        'stream: ride, volume: archive, segment: 60 s, keep: 7 d',
      ],
    ],
    [
      'the link between the buildings is slow',
      'link-load core/16',
      ['16: {speed: 1 Gb/s, trunk: [house, video]}', '16: {speed: 10 Mb/s, trunk: [house, video]}'],
      [
        '8: {speed: 1 Gb/s, trunk: [house, video]}\n  recorder',
        '8: {speed: 10 Mb/s, trunk: [house, video]}\n  recorder',
      ],
      [
        'stall: {source: stall-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s',
        'stall: {source: stall-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 Mb/s, peak-bitrate: 1 Mb/s',
      ],
      [
        'ride: {source: ride-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s',
        'ride: {source: ride-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 8 Mb/s',
      ],
      [
        'loft: {source: loft-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 3 Mb/s, peak-bitrate: 5 Mb/s',
        'loft: {source: loft-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 Mb/s, peak-bitrate: 1 Mb/s',
      ],
    ],
    [
      'a receiver that is a switch',
      'unreached-receiver barn',
      ['receivers: [office-pc, barn-pc]', 'receivers: [office-pc, barn]'],
    ],
    [
      'the subnet of video is misspelt',
      'address-outside-subnet 10.3.20.0/24',
      ['subnet: 10.2.20.0/24', 'subnet: 10.3.20.0/24'],
    ],
  ],
  'poe-chain': [
    [
      'the switch in the garden gets less than it feeds',
      'poe-passed-on {class: 4, power: 25 W}',
      ['{class: 6, power: 50 W}', '{class: 4, power: 25 W}'],
    ],
    ['the port in the house feeds too little', 'poe-class 6', ['poe: bt-type-4', 'poe: at']],
    ['no budget is said', 'poe-budget-missing garden', ['poe-budget: 40 W, ', '']],
    ['a link of copper over its length', 'cable-length 170 m', ['length: 70 m', 'length: 170 m']],
    [
      'a loop by a second cable',
      'loop garden/5',
      ['  - {from: main/5', '  - {from: main/2, to: garden/5, type: cat6, length: 70 m}\n  - {from: main/5'],
    ],
  ],
  'small-switches': [
    [
      'a small switch in both VLANs',
      'vlan-merged core/8',
      ['  - {from: core/16', '  - {from: core/8, to: attic/5}\n  - {from: core/16'],
    ],
    [
      'a small switch in the wrong VLAN',
      'address-outside-subnet core/8',
      ['from: core/1, to: attic/1', 'from: core/8, to: attic/1'],
    ],
    [
      'the small switches are swapped',
      'cables-swapped parlour/1',
      ['from: core/1, to: attic/1', 'from: core/1, to: parlour/1'],
      ['from: core/7, to: parlour/1', 'from: core/7, to: attic/1'],
    ],
    ['the attic is not joined', 'unreached-receiver nas', ['  - {from: core/1, to: attic/1}\n', '']],
    ['the router has no address in video', 'gateway-without-address router', [', video: 10.3.20.1}', '}']],
  ],
  'ring': [
    [
      'a switch without spanning tree',
      'loop west/10',
      [
        'west: {kind: switch, address: 10.4.20.4, igmp-snooping: true, spanning-tree: true',
        'west: {kind: switch, address: 10.4.20.4, igmp-snooping: true',
      ],
    ],
    [
      'a cable lacks the VLAN at one end',
      'vlan-mismatch north/9',
      [
        'north: {kind: switch, address: 10.4.20.3, igmp-snooping: true, spanning-tree: true, ports: {1-8: {speed: 1 Gb/s, vlan: video}, 9-10: {speed: 1 Gb/s, trunk: [video]}}}',
        'north: {kind: switch, address: 10.4.20.3, igmp-snooping: true, spanning-tree: true, ports: {1-8: {speed: 1 Gb/s, vlan: video}, 9: {speed: 1 Gb/s, trunk: [show]}, 10: {speed: 1 Gb/s, trunk: [video]}}}',
      ],
      ['querier: east}', 'querier: east}\n  show: {id: 30}'],
    ],
    ['no querier', 'no-querier video', [', querier: east}', '}']],
  ],
  'aerial': [
    [
      'two planes are swapped at the multiswitch',
      'planes-swapped switch/hh',
      ['to: switch/vh', 'to: switch/x'],
      ['to: switch/hh', 'to: switch/vh'],
      ['to: switch/x', 'to: switch/hh'],
    ],
    [
      'the coax from the amplifier is missing',
      'aerial-unused mast-amp/in',
      [
        '  - {from: mast-amp/out, to: splitter/in, type: coax-6, length: 15 m, core: copper, through: [block, supply]}\n',
        '',
      ],
    ],
    [
      'the coax of the aerial is missing',
      'aerial-unused roof',
      ['  - {from: roof, to: filter/in, type: coax-6, length: 1 m}\n', ''],
    ],
    ['no symbol rate', 'quantity 0 MBd', ['symbol-rate: 27.5 MBd', 'symbol-rate: 0 MBd']],
    ['no frequency', 'quantity 0 MHz', ['frequency: 11778 MHz', 'frequency: 0 MHz']],
    [
      'a peak below the average',
      'peak-below-bitrate 8 Mb/s',
      ['rate: 4 Mb/s, peak-rate: 8', 'rate: 14 Mb/s, peak-rate: 8'],
    ],
    [
      'a channel of old times, which the filter stops',
      'frequency-not-passed 470-694 MHz',
      ['channel: 42', 'channel: 55'],
    ],
    [
      'a dish that gives far too little',
      'lnb-cable-loss box-2',
      ['sky-v: 76 dBµV, sky-h: 75 dBµV', 'sky-v: 46 dBµV, sky-h: 45 dBµV'],
    ],
    [
      'an aerial with far less than it should give, on long coax',
      'outlet-level-low kitchen',
      ['gain: 22 dB, noise', 'gain: 2 dB, noise'],
    ],
    ['far too much gain', 'outlet-level-high bedroom', ['gain: 22 dB', 'gain: 40 dB']],
    [
      'an amplifier that cannot put out so much',
      'amplifier-overdriven mast-amp',
      ['gain: 22 dB', 'gain: 40 dB'],
      ['max-output: 104 dBµV', 'max-output: 94 dBµV'],
    ],
    [
      'the coaxes of the amplifier are swapped',
      'amplifier-reversed mast-amp/out',
      ['to: mast-amp/in', 'to: mast-amp/out'],
      ['from: mast-amp/out', 'from: mast-amp/in'],
    ],
    ['a supply for 24 V', 'supply-voltage 12 V', ['power-inserter, supply: 12 V', 'power-inserter, supply: 24 V']],
    ['no supply', 'amplifier-unpowered out', ['[block, supply]', '[block]']],
    ['a supply that is too small', 'supply-current supply', ['current: 200 mA, loss', 'current: 40 mA, loss']],
    [
      'a mast that is not earthed',
      'aerial-earth {outside-protected-zone: true}',
      ['outside-protected-zone: true, earthed: 16 mm²', 'outside-protected-zone: true'],
    ],
    [
      'no filter in front of the amplifier',
      'mobile-band mast-amp',
      ['from: roof, to: filter/in', 'from: roof, to: mast-amp/in'],
      ['  - {from: filter/out, to: mast-amp/in, type: coax-6, length: 1 m}\n', ''],
    ],
    ['an output without terminator', 'splitter-open splitter', [', terminated: [out-6]', '']],
    ['a filter for the wrong channels', 'frequency-not-passed 470-600 MHz', ['passes: 470-694', 'passes: 470-600']],
    ['a multiswitch for television', 'frequency-not-passed 5-862 MHz', ['frequencies: 950-2400', 'frequencies: 5-862']],
    ['a satellite on the input for television', 'frequency-not-passed switch', ['to: switch/vh', 'to: switch/tv']],
    [
      'tuners that do not do DVB-T2',
      'tuner-system news',
      ['2-3: {systems: [dvb-t, dvb-t2], input: rf}', '2-3: {systems: [dvb-t], input: rf}'],
    ],
    ['a tuner too few', 'tuner-shortage evening', ['2-3: {systems', '2: {systems']],
    ['one channel twice', 'channel-clash east-2', ['channel: 28', 'channel: 22']],
    [
      'a modulation that DVB-T has not',
      'multiplex-parameters 256qam',
      ['33, modulation: 64qam', '33, modulation: 256qam'],
    ],
    [
      'a channel and another frequency',
      'channel-frequency 650 MHz',
      ['channel: 42', 'channel: 42, frequency: 650 MHz'],
    ],
    [
      'a service of more than its multiplex',
      'multiplex-rate east-1',
      ['rate: 4 Mb/s, peak-rate: 8', 'rate: 44 Mb/s, peak-rate: 48'],
    ],
    [
      'a coax without a length',
      'coax-length-missing splitter/out-4',
      ['bedroom/in, type: coax-6, length: 7 m', 'bedroom/in, type: coax-6'],
    ],
    ['a level in no unit', 'quantity 55 dBuX', ['east-1: 55 dBµV', 'east-1: 55 dBuX']],
    [
      'a splitter with too few ways',
      'no-such-port out-5',
      ['ways: 6, loss: 10 dB', 'ways: 4, loss: 10 dB'],
      [', terminated: [out-6]', ''],
    ],
    [
      'a receiver that takes less',
      'tuner-overload box-1',
      [
        '10.9.0.11, inputs: {sat: {supplies: 400 mA, max-input: 90',
        '10.9.0.11, inputs: {sat: {supplies: 400 mA, max-input: 60',
      ],
    ],
    [
      'an output of the splitter that leads back to the aerial',
      'coax-loop splitter/out-6',
      [', terminated: [out-6]}', '}\n  join: {kind: splitter, ways: 2, loss: 4 dB}'],
      [
        '  - {from: roof, to: filter/in, type: coax-6, length: 1 m}',
        '  - {from: roof, to: join/out-1, type: coax-6, length: 1 m}\n' +
          '  - {from: join/in, to: filter/in, type: coax-6, length: 1 m}\n' +
          '  - {from: splitter/out-6, to: join/out-2, type: coax-6, length: 1 m}',
      ],
    ],
    ['a gain without a unit', 'quantity 22', ['gain: 22 dB', 'gain: 22']],
    ['a splitter of no ways', 'out-of-range 0', ['ways: 6', 'ways: 0']],
    ['two coaxes at one output', 'port-cabled-twice splitter/out-1', ['splitter/out-2, to', 'splitter/out-1, to']],
    ['a filter that ends before it begins', 'malformed-value 694-470 MHz', ['470-694 MHz, loss', '694-470 MHz, loss']],
    [
      'a terminator at an output that is not there',
      'no-such-port out-7',
      ['terminated: [out-6]', 'terminated: [out-7]'],
    ],
    ['an inserter that is misspelt', 'unknown-name suply', ['[block, supply]', '[block, suply]']],
    ['the down-lead in a network port', 'cable-not-for-ends mast-amp/out', ['to: splitter/in', 'to: box-1']],
    ['a channel that is none', 'out-of-range 0', ['channel: 22', 'channel: 0']],
    ['neither channel nor frequency', 'multiplex-parameters dvb-t2', ['dvb-t2, channel: 22', 'dvb-t2']],
    ['a multiplex that is misspelt at the aerial', 'unknown-name east-9', ['east-1: 55 dBµV', 'east-9: 55 dBµV']],
    ['a loss with a minus', 'gain-reversed -10 dB', ['ways: 6, loss: 10 dB', 'ways: 6, loss: -10 dB']],
    ['a net rate with a digit too many', 'multiplex-rate 402 Mb/s', ['net-rate: 40.2', 'net-rate: 402']],
    ['a coax of a length in no unit', 'quantity 15', ['length: 15 m, core', 'length: 15, core']],
    ['network cable to an outlet', 'cable-not-for-ends cat6', ['bedroom/in, type: coax-6', 'bedroom/in, type: cat6']],
  ],
  'television': [
    ['no querier', 'no-querier tv', [', querier: sw}', '}']],
    [
      'no snooping, and slow screens drown',
      'flooding sw',
      ['igmp-snooping: true, unregistered-multicast: drop, ', ''],
      ['mux-rate: 14 Mb/s', 'mux-rate: 80 Mb/s'],
    ],
    [
      'a screen of 100 Mb/s gets too much',
      'link-load sw/9',
      ['mux-rate: 12 Mb/s, receivers: [parlour, kitchen]', 'mux-rate: 110 Mb/s, receivers: [parlour, kitchen]'],
      ['sw/9, to: kitchen', 'sw/9, to: kitchen'],
    ],
    ['a link-local group', 'group-reserved 224.0.0.41', ['239.192.40.1,', '224.0.0.41,']],
    [
      'groups that share a MAC address',
      'group-mac-shared 239.192.40.1, group-mac-shared 232.192.40.1',
      ['239.192.40.2', '232.192.40.1'],
    ],
  ],
  'routed': [
    ['the router does not route multicast', 'unreached-receiver wall', ['    multicast-routing: true\n', '']],
    ['a TTL of 1', 'ttl-too-small 1', ['239.192.20.21, port: 5004, ttl: 4', '239.192.20.21, port: 5004, ttl: 1']],
    ['no TTL is said', 'ttl-too-small a', ['239.192.20.21, port: 5004, ttl: 4, ', '239.192.20.21, port: 5004, ']],
    [
      'the router lacks a VLAN',
      'address-not-carried 10.6.30.1',
      ['lan: {speed: 1 Gb/s, trunk: [cams, view]', 'lan: {speed: 1 Gb/s, trunk: [cams]'],
    ],
    [
      'the port of the router lacks a VLAN',
      'vlan-mismatch core/16',
      ['16: {speed: 1 Gb/s, trunk: [cams, view]}', '16: {speed: 1 Gb/s, trunk: [cams]}'],
    ],
    ['the router is not cabled', 'unreached-receiver wall', ['  - {from: core/16, to: router/lan}\n', '']],
    [
      'no gateway of cams',
      'unreached-receiver desk',
      ['subnet: 10.6.20.0/24, gateway: router', 'subnet: 10.6.20.0/24'],
    ],
  ],
  'far-gate': [
    [
      'a camera that is to be fed over fibre',
      'poe-missing poe',
      ['address: 192.168.7.21, speed: 1 Gb/s', 'address: 192.168.7.21, speed: 1 Gb/s, poe: {class: 3}'],
    ],
    ['fibre of too short a reach', 'cable-length 1320 m', ['type: os2, length: 320 m', 'type: om3, length: 1320 m']],
    [
      'both converters are not joined',
      'unreached-receiver nas',
      ['  - {from: near/fo, to: far/fo, type: os2, length: 320 m}\n', ''],
    ],
    [
      'modules that do not meet',
      'port-speed-mismatch near/fo',
      [
        'far: {kind: media-converter, ports: {cu: {speed: 1 Gb/s}, fo: {speed: 1 Gb/s}}}',
        'far: {kind: media-converter, ports: {cu: {speed: 1 Gb/s}, fo: {speed: 10 Gb/s}}}',
      ],
    ],
  ],
  'trunk-server': [
    [
      'the port of the server lacks video',
      'vlan-mismatch sw/9',
      ['9: {speed: 1 Gb/s, trunk: [house, video]}', '9: {speed: 1 Gb/s, trunk: [house]}'],
    ],
    [
      'the port of the server is an access port',
      'vlan-mismatch sw/9',
      ['9: {speed: 1 Gb/s, trunk: [house, video]}', '9: {speed: 1 Gb/s, vlan: house}'],
    ],
    [
      'the server tags nothing',
      'vlan-mismatch nas/eth',
      ['eth: {speed: 1 Gb/s, trunk: [house, video], addresses', 'eth: {speed: 1 Gb/s, addresses'],
    ],
    [
      'an address is in the other VLAN',
      'address-outside-subnet 10.8.10.15',
      ['video: 10.8.20.5}', 'video: 10.8.10.15}'],
    ],
  ],
  'tree': [
    [
      'a middle trunk lacks video at one end',
      'vlan-mismatch garage/8',
      [
        '8: {speed: 1 Gb/s, trunk: [house, video, guests]}}\n  lodge',
        '8: {speed: 1 Gb/s, trunk: [house, guests]}}\n  lodge',
      ],
    ],
    [
      'a middle trunk lacks video at both ends',
      'vlan-missing core/10',
      ['10: {speed: 1 Gb/s, trunk: [house, video, guests]}', '10: {speed: 1 Gb/s, trunk: [house, guests]}'],
      [
        '8: {speed: 1 Gb/s, trunk: [house, video, guests]}}\n  lodge',
        '8: {speed: 1 Gb/s, trunk: [house, guests]}}\n  lodge',
      ],
    ],
    [
      'two trunks lack video',
      'vlan-mismatch garage/8',
      [
        '8: {speed: 1 Gb/s, trunk: [house, video, guests]}}\n  lodge',
        '8: {speed: 1 Gb/s, trunk: [house, guests]}}\n  lodge',
      ],
    ],
    ['the access point is at a port of the video', 'vlan-mismatch up/4', ['from: up/7', 'from: up/4']],
    ['no querier', 'no-querier video', [', querier: core}', '}']],
    ['the querier is elsewhere', 'querier-absent desk', ['querier: core', 'querier: desk']],
    [
      'a switch is cabled to the wrong port',
      'vlan-mismatch core/6',
      ['from: core/9, to: up/8', 'from: core/6, to: up/8'],
    ],
    [
      'the lodge is not joined',
      'unreached-receiver nas',
      ['  - {from: garage/7, to: lodge/8, type: os2, length: 150 m}\n', ''],
    ],
    [
      'guests are missing for the access point',
      'vlan-mismatch garage/8',
      [
        '8: {speed: 1 Gb/s, trunk: [house, video, guests]}}\n  lodge',
        '8: {speed: 1 Gb/s, trunk: [house, video]}}\n  lodge',
      ],
    ],
    [
      'a screen is named twice',
      'repeated-value hall-screen',
      ['receivers: [hall-screen, lodge-screen]', 'receivers: [hall-screen, lodge-screen, hall-screen]'],
    ],
    ['a plug in the panel twice', 'port-cabled-twice panel/2', ['through: [panel/3]', 'through: [panel/2]']],
  ],
  'sub-streams': [
    [
      'one address for two streams',
      'rtsp-address-shared /main',
      [
        '/sub, video: {codec: h264, size: 640x360, frame-rate: 10, bitrate: 500 kb/s, keyframe-interval: 2 s}, receivers: [tablet]}\n  back-main',
        '/main, video: {codec: h264, size: 640x360, frame-rate: 10, bitrate: 500 kb/s, keyframe-interval: 2 s}, receivers: [tablet]}\n  back-main',
      ],
    ],
    [
      'files are longer than they are kept',
      'keep-below-segment 7 min',
      [
        'stream: front-main, volume: usb, segment: 2 min, keep: 7 d',
        'stream: front-main, volume: usb, segment: 15 min, keep: 7 min',
      ],
    ],
    [
      'segments that end between keyframes',
      'segment-keyframe 90 s',
      ['stream: front-main, volume: usb, segment: 2 min', 'stream: front-main, volume: usb, segment: 90 s'],
      [
        'bitrate: 8 Mb/s, keyframe-interval: 4 s}, receivers: [nas]}\n  front-sub',
        'bitrate: 8 Mb/s, keyframe-interval: 4 s}, receivers: [nas]}\n  front-sub',
      ],
    ],
    [
      'a peak below the average',
      'peak-below-bitrate 5 Mb/s',
      [
        'bitrate: 8 Mb/s, keyframe-interval: 4 s}, receivers: [nas]}\n  front-sub',
        'bitrate: 8 Mb/s, peak-bitrate: 5 Mb/s, keyframe-interval: 4 s}, receivers: [nas]}\n  front-sub',
      ],
    ],
  ],
  'tagging-ap': [
    [
      'the access point tags on a switch that knows no tags',
      'vlan-mismatch ap',
      [
        'ap: {kind: access-point, address: 192.168.1.3, speed: 1 Gb/s}',
        'ap: {kind: access-point, ports: {eth: {speed: 1 Gb/s, trunk: [lan, guests]}}}',
      ],
      ['gateway: router}', 'gateway: router}\n  guests: {id: 30}'],
    ],
    [
      'the server tags on a switch that knows no tags',
      'vlan-mismatch nas',
      [
        'nas: {kind: server, address: 192.168.1.30, speed: 1 Gb/s}',
        'nas: {kind: server, ports: {eth: {speed: 1 Gb/s, trunk: [lan], addresses: {lan: 192.168.1.30}}}}',
      ],
    ],
  ],
  'bare': [
    ['the screen is not cabled', 'unreached-receiver screen', ['  - {from: sw/3, to: screen}\n', '']],
    [
      'a cable that goes back',
      'cable-to-itself sw/5',
      ['  - {from: sw/3, to: screen}', '  - {from: sw/3, to: screen}\n  - {from: sw/4, to: sw/5}'],
    ],
  ],
  'two-recorders': [
    ['no querier', 'no-querier video', [', querier: a}', '}']],
    ['fibre of too short a reach', 'cable-length 900 m', ['length: 90 m', 'length: 900 m']],
    [
      'a recorder does not take a stream',
      'recorder-not-receiving b',
      [
        'keyframe-interval: 2 s}, receivers: [nas-a, nas-b]}\nvolumes',
        'keyframe-interval: 2 s}, receivers: [nas-b]}\nvolumes',
      ],
    ],
    ['one group for both', 'group-clash 239.255.12.1, group-clash 239.255.12.1', ['239.255.12.2', '239.255.12.1']],
    ['a mask that is too narrow', 'address-outside-subnet 10.12.20.0/24', ['10.12.20.0/23', '10.12.20.0/24']],
  ],
  'no-dns-no-disk': [
    [
      'a source-specific group without its source',
      'group-without-source 232.1.1.1',
      ['239.255.50.14', '232.1.1.1'],
      ['w: {kind: camera, address: 172.16.50.14,', 'w: {kind: camera,'],
    ],
    [
      'a camera is to receive itself',
      'receives-itself n',
      [
        '239.255.50.11, port: 5004, video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 1 s}, receivers: [wall]',
        '239.255.50.11, port: 5004, video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 1 s}, receivers: [wall, n]',
      ],
    ],
    ['no port is left for RTCP', 'port-beyond-last 65535', ['239.255.50.14, port: 5004', '239.255.50.14, port: 65535']],
    [
      'the wall is slow',
      'port-speed-mismatch wall',
      [
        'wall: {kind: display, address: 172.16.50.61, speed: 1 Gb/s}',
        'wall: {kind: display, address: 172.16.50.61, speed: 10 Mb/s}',
      ],
    ],
    [
      'a camera sends to the group of another',
      'group-clash 239.255.50.11, group-clash 239.255.50.11',
      ['239.255.50.12', '239.255.50.11'],
    ],
    ['a port beyond the last', 'out-of-range 66000', ['239.255.50.14, port: 5004', '239.255.50.14, port: 66000']],
  ],
  'box': [
    [
      'the camera is in no subnet of the box',
      'address-outside-subnet 192.168.1.21',
      ['192.168.178.21', '192.168.1.21'],
    ],
    [
      'the box feeds nothing',
      'poe-missing poe',
      ['address: 192.168.178.21, speed: 100 Mb/s', 'address: 192.168.178.21, speed: 100 Mb/s, poe: {class: 2}'],
    ],
    ['a fixed address in the pool', 'address-in-dhcp-pool 192.168.178.111', ['192.168.178.11,', '192.168.178.111,']],
    ['a file ending that no program writes', 'file-format "door/%Y%m%dT%H%M%S%z.avi"', ['%z.mkv', '%z.avi']],
  ],
  'routing-switch': [
    [
      'the annexe lacks video',
      'vlan-mismatch annexe/8',
      ['8: {speed: 1 Gb/s, trunk: [house, video]}}\n  nas', '8: {speed: 1 Gb/s, trunk: [house]}}\n  nas'],
    ],
    [
      'the annexe lacks house',
      'vlan-mismatch annexe/8',
      ['8: {speed: 1 Gb/s, trunk: [house, video]}}\n  nas', '8: {speed: 1 Gb/s, trunk: [video]}}\n  nas'],
    ],
    ['it does not route', 'gateway-without-address core', ['    routing: true\n', '']],
    [
      'it has no address in house',
      'gateway-without-address core',
      ['{house: 10.20.10.1, video: 10.20.20.1}', '{video: 10.20.20.1}'],
    ],
    ['no querier', 'no-querier video', ['gateway: core, querier: core', 'gateway: core']],
  ],
  'bundle': [
    ['one cable of the server is in another port', 'aggregation-mismatch bond0', ['from: a/10', 'from: a/6']],
    [
      'two cables without a bundle',
      'loop b/8',
      ['7-8: {speed: 1 Gb/s, trunk: [video], lag: up}, 9-10', '7-8: {speed: 1 Gb/s, trunk: [video]}, 9-10'],
      [
        'b: {kind: switch, address: 10.21.20.3, igmp-snooping: true, unregistered-multicast: drop, ports: {1-6: {speed: 1 Gb/s, vlan: video}, 7-8: {speed: 1 Gb/s, trunk: [video], lag: up}}}',
        'b: {kind: switch, address: 10.21.20.3, igmp-snooping: true, unregistered-multicast: drop, ports: {1-6: {speed: 1 Gb/s, vlan: video}, 7-8: {speed: 1 Gb/s, trunk: [video]}}}',
      ],
    ],
  ],
  'chooser': [
    ['all programmes at a time', 'link-load sw/5', ['decoders: 1', 'decoders: 8']],
    [
      'a name is misspelt among the receivers',
      'unknown-name denn',
      [
        '239.255.1.3, port: 5004, mux-rate: 12 Mb/s, receivers: [den]',
        '239.255.1.3, port: 5004, mux-rate: 12 Mb/s, receivers: [denn]',
      ],
    ],
  ],
  'without-figures': [
    [
      'a stream without a rate',
      'rate-missing video',
      [
        'cam2, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s, keyframe-interval: 2 s}',
        'cam2, transport: rtsp, port: 554, video: {codec: h264, keyframe-interval: 2 s}',
      ],
    ],
    ['a stream without a transport', 'transport-missing cam2', ['cam2, transport: rtsp, port: 554', 'cam2, port: 554']],
    ['the recorder is at nothing', 'unreached-receiver nas', ['  - {from: sw/3, to: nas}\n', '']],
  ],
  'three-buildings': [
    [
      'copper between two buildings',
      'copper-between-buildings cat6',
      ['main/11, to: barn/8, type: os2', 'main/11, to: barn/8, type: cat6'],
    ],
    [
      'the barn lacks the VLAN',
      'vlan-mismatch barn/8',
      ['8: {speed: 1 Gb/s, trunk: [video]}}}\n  nas', '8: {speed: 1 Gb/s, trunk: [house]}}}\n  nas'],
    ],
    [
      'the lodge lacks video at both ends',
      'vlan-missing main/10',
      ['10: {speed: 1 Gb/s, trunk: [house, video]}', '10: {speed: 1 Gb/s, trunk: [house]}'],
      ['8: {speed: 1 Gb/s, trunk: [house, video]}}}\n  barn', '8: {speed: 1 Gb/s, trunk: [house]}}}\n  barn'],
    ],
    [
      'the fibres are swapped',
      'vlan-mismatch main/11',
      ['main/10, to: lodge/8', 'main/11, to: lodge/8'],
      ['main/11, to: barn/8', 'main/10, to: barn/8'],
    ],
    ['the querier is a switch that is not there', 'unknown-name mian', ['querier: main', 'querier: mian']],
  ],
  'panel': [
    [
      'camera and desk are swapped at the panel',
      'cables-swapped desk',
      ['core/2, to: south, type: cat6, length: 35 m', 'core/2, to: desk, type: cat6, length: 35 m'],
      ['core/8, to: desk, type: cat6, length: 15 m', 'core/8, to: south, type: cat6, length: 15 m'],
    ],
    ['a disk too few', 'volume-disks 2', ['disks: 3', 'disks: 2']],
    ['a server of two units one too low', 'rack-height 9', ['rack: wall, unit: 8', 'rack: wall, unit: 9']],
    ['a switch in the unit of the panel', 'rack-overlap 1', ['rack: wall, unit: 2', 'rack: wall, unit: 1']],
    ['a server for a deeper cabinet', 'rack-depth 480 mm', ['depth: 330 mm', 'depth: 480 mm']],
    ['more than the wall bears', 'rack-weight 25 kg', ['weight: 9 kg', 'weight: 29 kg']],
    ['the rack of a device is left out', 'unit-without-rack 2', ['rack: wall, unit: 2', 'unit: 2']],
    ['the rack is misspelt', 'unknown-name wal', ['rack: wall, unit: 2', 'rack: wal, unit: 2']],
    [
      'a lead that is too short',
      'lead-too-short 0.2 m',
      ['core/3, to: nas/b, type: cat6, length: 1 m', 'core/3, to: nas/b, type: cat6, length: 0.2 m'],
    ],
    [
      'kept for longer than it may be',
      'retention 60 d',
      [
        'stream: north, volume: raid, segment: 60 s, keep: 30 d',
        'stream: north, volume: raid, segment: 60 s, keep: 60 d',
      ],
      ['capacity: 4 TB', 'capacity: 8 TB'],
    ],
    ['the gateway of the server is nobody', 'route-gateway 10.24.10.9', ['via: 10.24.10.1', 'via: 10.24.10.9']],
    [
      'two hosts have one hardware address',
      'duplicate-mac "02:00:00:00:00:01", duplicate-mac "02:00:00:00:00:01"',
      ['address: 10.24.20.21,', 'address: 10.24.20.21, mac: "02:00:00:00:00:01",'],
      ['address: 10.24.20.22,', 'address: 10.24.20.22, mac: "02:00:00:00:00:01",'],
    ],
  ],
  'ten-gigabit': [
    [
      'the uplink has a gigabit',
      'link-load left/up',
      ['up: {speed: 10 Gb/s, trunk: [video]}', 'up: {speed: 1 Gb/s, trunk: [video]}'],
      ['3-4: {speed: 10 Gb/s, trunk: [video]}', '3-4: {speed: 1 Gb/s, trunk: [video]}'],
    ],
    [
      'one module of the uplink is slower',
      'port-speed-mismatch left/up',
      ['up: {speed: 10 Gb/s, trunk: [video]}', 'up: {speed: 1 Gb/s, trunk: [video]}'],
    ],
    [
      'the wall has a gigabit',
      'port-speed-mismatch wall',
      [
        'wall: {kind: display, address: 10.25.20.61, speed: 10 Gb/s}',
        'wall: {kind: display, address: 10.25.20.61, speed: 1 Gb/s}',
      ],
    ],
    [
      'copper that does not do ten gigabit so far',
      'cable-length 80 m',
      ['spine/2, to: wall, type: cat6a, length: 20 m', 'spine/2, to: wall, type: cat6, length: 80 m'],
    ],
    ['a budget that is too small', 'poe-budget 90 W', ['370 W', '90 W']],
  ],
  'local-scope': [
    [
      'a group out of the scope of the others',
      'group-reserved 239.1.1.21',
      [
        'receivers: [nas]}\n',
        'receivers: [nas]}\n  yard-two: {source: nas, carries: yard, transport: rtp, group: 239.255.1.22, port: 5004, receivers: [tv]}\n',
      ],
    ],
    ['an address in the pool without a reservation', 'address-in-dhcp-pool 192.168.8.110', [', reserved: true', '']],
    ['no querier', 'no-querier lan', [', querier: sw', '']],
  ],
  'guests-only-at-core': [
    [
      'the loft has guests, and its trunk does not',
      'vlan-mismatch loft/1',
      ['2-5: {speed: 1 Gb/s, vlan: house}', '2-4: {speed: 1 Gb/s, vlan: house}, 5: {speed: 1 Gb/s, vlan: guests}'],
    ],
  ],
  'provider-box': [
    ['PoE camera in a port without PoE', 'poe-missing poe', ['from: poe-switch/4', 'from: poe-switch/6']],
    ['camera in another /24', 'address-outside-subnet 192.168.1.203', ['192.168.0.203', '192.168.1.203']],
    ['disk too small', 'volume-fill 200 GB', ['capacity: 4 TB', 'capacity: 200 GB']],
    [
      'address of the NAS in the pool',
      'address-in-dhcp-pool 192.168.0.110',
      ['address: 192.168.0.10,', 'address: 192.168.0.110,'],
    ],
  ],
  'one-armed': [
    [
      'a leg of the router has an address of another',
      'address-outside-subnet 10.2.2.1',
      ['iot: 10.2.2.1, cctv: 10.3.3.1}', 'iot: 10.2.2.1, cctv: 10.2.2.1}'],
    ],
    [
      'a rate with three digits too many, through the router',
      'rate-too-high 8 Gb/s',
      ['size: 3840x2160, bitrate: 8 Mb/s', 'size: 3840x2160, bitrate: 8 Gb/s'],
    ],
    ['recorder in the house VLAN port', 'address-outside-subnet sw1/3', ['from: sw1/8', 'from: sw1/3']],
    [
      'router does not carry cctv',
      'address-not-carried 10.3.3.1',
      ['trunk: [lan, iot, cctv]\n        addresses', 'trunk: [lan, iot]\n        addresses'],
    ],
    [
      'a subnet that is too narrow for its cameras',
      'address-outside-subnet 10.3.3.0/28',
      ['10.3.3.0/26', '10.3.3.0/28'],
    ],
    ['one id for two VLANs', 'vlan-id 202, vlan-id 202', ['id: 101', 'id: 202']],
    ['gateway address typo', 'address-outside-subnet 10.1.2.1', ['lan: 10.1.1.1', 'lan: 10.1.2.1']],
  ],
  'injector': [
    ['cable over 100 m', 'cable-length 118 m', ['length: 88 m', 'length: 118 m']],
    [
      'injector the wrong way round',
      'poe-missing poe',
      ['router/2, to: injector/in', 'router/2, to: injector/out'],
      ['from: injector/out, to: drive-cam', 'from: injector/in, to: drive-cam'],
    ],
    ['injector only af', 'poe-class 4', ['out: {speed: 1 Gb/s, poe: at}', 'out: {speed: 1 Gb/s, poe: af}']],
  ],
  'extender': [
    ['extender is fed by a port without PoE', 'poe-missing poe', ['from: hsw/1', 'from: hsw/7']],
    [
      'two pan-tilt cameras on what the extender has',
      'poe-budget 18 W',
      [
        '10.40.0.21, speed: 100 Mb/s, poe: {class: 2, power: 5 W}',
        '10.40.0.21, speed: 100 Mb/s, poe: {class: 3, power: 12 W}',
      ],
    ],
  ],
  'modules': [
    ['both bidi modules of the same kind', 'medium-mismatch gate/fo', ['1000base-bx10-u', '1000base-bx10-d']],
    [
      'multimode module on single-mode fibre',
      'medium-mismatch barn/sfp',
      ['sfp1: {speed: 1 Gb/s, module: 1000base-lx10', 'sfp1: {speed: 1 Gb/s, module: 1000base-sx'],
    ],
    [
      'the barn trunk lacks the cameras at both ends',
      'vlan-missing main/sfp1',
      [
        'sfp1: {speed: 1 Gb/s, module: 1000base-lx10, trunk: [data, cams]}',
        'sfp1: {speed: 1 Gb/s, module: 1000base-lx10, trunk: [data]}',
      ],
      [
        'sfp: {speed: 1 Gb/s, module: 1000base-lx10, trunk: [data, cams]}',
        'sfp: {speed: 1 Gb/s, module: 1000base-lx10, trunk: [data]}',
      ],
    ],
  ],
  'editing': [
    [
      'copper of category 5e for ten gigabit over 70 m',
      'cable-speed cat5e',
      ['type: cat6a, length: 4 m', 'type: cat5e, length: 70 m'],
    ],
    ['om3 for copper cage', 'medium-mismatch om3', ['type: cat6a, length: 4 m', 'type: om3, length: 4 m']],
    ['traffic beyond the card', 'link-load cellar/te1', ['rate: 6 Gb/s', 'rate: 12 Gb/s']],
  ],
  'wall': [
    ['querier forgotten', 'no-querier av', [', querier: core}', '}']],
    ['two groups the same', 'group-clash 239.255.77.22, group-clash 239.255.77.22', ['239.255.77.23', '239.255.77.22']],
    [
      'kitchen gets 4K',
      'not-decodable kitchen',
      [
        'cam-n, transport: rtsp, port: 554, video: {codec: h264, size: 1920x1080',
        'cam-n, transport: rtsp, port: 554, video: {codec: h264, size: 3840x2160',
      ],
    ],
    ['odd RTP port', 'rtp-port 5005', ['group: 239.255.77.22, port: 5004', 'group: 239.255.77.22, port: 5005']],
    ['unicast address for a group', 'group-not-multicast 10.77.0.23', ['239.255.77.23', '10.77.0.23']],
  ],
  'office-and-watch': [
    ['multicast route by the LAN card', 'unintended-egress eno2', ['port: eno2\n  cam-door', 'port: eno1\n  cam-door']],
    ['no multicast route at all', 'unintended-egress eno2', ['      - to: 239.0.0.0/8\n        port: eno2\n', '']],
    ['gateway typo', 'route-gateway 192.168.2.11', ['via: 192.168.2.1', 'via: 192.168.2.11']],
    [
      'cards swapped at the switch',
      'cables-swapped srv/eno1',
      ['sw/7, to: srv/eno2', 'sw/7, to: srv/eno1'],
      ['sw/9, to: srv/eno1', 'sw/9, to: srv/eno2'],
    ],
    [
      'camera in the office port',
      'address-outside-subnet sw/12',
      ['from: sw/2, to: cam-lane', 'from: sw/12, to: cam-lane'],
    ],
    [
      'pc is to take the group of the other VLAN',
      'unreached-receiver pc',
      ['239.192.3.21, port: 6000, receivers: [panel]', '239.192.3.21, port: 6000, receivers: [panel, pc]'],
    ],
  ],
  'two-islands': [
    ['camera plugged into the house switch', 'address-apart house/4', ['from: cameras/2', 'from: house/4']],
    ['a camera with an address of the house', 'address-apart cameras/2', ['192.168.100.12', '192.168.1.12']],
    [
      'server cards swapped',
      'cables-swapped server/cam',
      ['house/2, to: server/lan', 'house/2, to: server/cam'],
      ['cameras/5, to: server/cam', 'cameras/5, to: server/lan'],
    ],
  ],
  'native-trunk': [
    [
      'a route into a VLAN that is not there',
      'unknown-name attic',
      ['port: enp2s0, vlan: cams}', 'port: enp2s0, vlan: attic}'],
    ],
    [
      'the server lacks the VLAN of a route and an address',
      'address-not-carried 192.168.30.5',
      [
        '    ports:\n      enp2s0: {speed: 1 Gb/s, trunk: [home, cams]',
        '    ports:\n      enp2s0: {speed: 1 Gb/s, trunk: [home]',
      ],
    ],
    [
      'native differs at the two ends',
      'vlan-mismatch sw/2',
      [
        'enp2s0: {speed: 1 Gb/s, trunk: [home, cams], native: home, addresses',
        'enp2s0: {speed: 1 Gb/s, trunk: [home, cams], native: cams, addresses',
      ],
    ],
    [
      'multicast route into the wrong VLAN',
      'unintended-egress box',
      ['port: enp2s0, vlan: cams}', 'port: enp2s0, vlan: home}'],
    ],
  ],
  'fibre-ring': [
    [
      'one switch without spanning tree',
      'loop d/e1',
      ['c: {kind: switch, address: 10.50.0.4, spanning-tree: true, ', 'c: {kind: switch, address: 10.50.0.4, '],
    ],
    [
      'no priority anywhere, root by chance',
      'root-by-chance a',
      ['spanning-tree-priority: 0, ', ''],
      ['spanning-tree-priority: 4096, ', ''],
    ],
    [
      'priority no multiple of 4096',
      'out-of-range 5000',
      ['spanning-tree-priority: 4096', 'spanning-tree-priority: 5000'],
    ],
  ],
  'tv-switch': [
    [
      'the small switch is in a camera port',
      'address-outside-subnet sw/10',
      ['from: sw/3, to: tv-switch/1', 'from: sw/10, to: tv-switch/1'],
    ],
    [
      'a loop at the small switch',
      'loop sw/4',
      [
        '  - {from: tv-switch/3, to: console, type: cat5e, length: 1 m}',
        '  - {from: tv-switch/3, to: console, type: cat5e, length: 1 m}\n  - {from: tv-switch/4, to: sw/4}',
      ],
    ],
  ],
  'mill': [
    ['two volumes on one path', 'volume-path-shared /srv/wet', ['path: /srv/shop', 'path: /srv/wet']],
    [
      'names without seconds, and files of 30 s',
      'file-name-collision "till/%Y-%m-%d/%H-%M%z.mkv"',
      [
        'volume: shop, segment: 60 s, keep: 28 d, file: "till/%Y-%m-%d/%H-%M-%S%z.mkv"',
        'volume: shop, segment: 30 s, keep: 28 d, file: "till/%Y-%m-%d/%H-%M%z.mkv"',
      ],
    ],
    [
      'no offset in the name, clocks go back',
      'repeated-hour "mill/%Y-%m-%d/%H-%M-%S.mkv"',
      ['"mill/%Y-%m-%d/%H-%M-%S%z.mkv"', '"mill/%Y-%m-%d/%H-%M-%S.mkv"'],
    ],
  ],
  'clock': [['the clock is plugged in nowhere', 'traffic-unreached clock', ['  - {from: s1/5, to: clock}\n', '']]],
  'off-site': [['copy exceeds the upload', 'internet-load 100 Mb/s', ['rate: 40 Mb/s', 'rate: 140 Mb/s']]],
  'groups-routed': [
    [
      'TTL left at 1',
      'ttl-too-small f1-tv',
      ['group: 239.192.0.21, port: 5004, ttl: 8', 'group: 239.192.0.21, port: 5004'],
    ],
    ['multicast routing is off', 'unreached-receiver tv-a', ['    multicast-routing: true\n', '']],
  ],
  'lags': [
    [
      'cables of two groups are exchanged',
      'aggregation-mismatch top/22',
      ['from: top/22, to: nas/p2', 'from: top/23, to: nas/p2'],
      ['from: top/23, to: bottom/23', 'from: top/22, to: bottom/23'],
    ],
    [
      'one of the two cables into a port outside of the group',
      'aggregation-mismatch to-top',
      ['from: top/24', 'from: top/20'],
    ],
    ['both ends passive', 'aggregation-mismatch to-top', ['lag: to-top, lacp: active', 'lag: to-top, lacp: passive']],
  ],
  'double-router': [
    [
      'the own router hands packets to nobody',
      'route-gateway 192.168.178.9',
      ['via: 192.168.178.1}', 'via: 192.168.178.9}'],
    ],
    [
      'own router subnet same as the outer',
      'address-outside-subnet 192.168.178.0/24',
      ['inner: {id: 1, subnet: 192.168.1.0/24', 'inner: {id: 1, subnet: 192.168.178.0/24'],
    ],
  ],
  'workshop': [['sx modules over 700 m', 'cable-length 700 m', ['length: 180 m', 'length: 700 m']]],
  'three-legs': [
    [
      'route of one group by the wrong leg',
      'unintended-egress hub',
      ['{to: 239.255.13.0/24, port: e2}', '{to: 239.255.13.0/24, port: e1}'],
    ],
  ],
  'transit': [
    [
      'the cable of the router is in a port of the house',
      'address-outside-subnet core/15',
      ['from: core/24, to: edge/lan', 'from: core/15, to: edge/lan'],
    ],
    [
      'the router has no route back',
      'route-missing edge',
      ['    routes: [{to: 10.20.0.0/16, port: lan, via: 10.20.99.2}]\n', ''],
    ],
    ['the router has a route back to one VLAN of two', 'route-missing edge', ['10.20.0.0/16', '10.20.10.0/24']],
    [
      'the switch has no way out',
      'route-missing core',
      ['    routes: [{to: default, port: 24, via: 10.20.99.1}]\n', ''],
    ],
    ['the switch does not route', 'gateway-without-address core', ['    routing: true\n', '']],
    [
      'another subnet than switch and router are in',
      'address-outside-subnet 10.20.89.0/30',
      ['10.20.99.0', '10.20.89.0'],
    ],
    ['the subnet of another VLAN', 'address-outside-subnet 10.20.20.0/30', ['10.20.99.0', '10.20.20.0']],
  ],
  'by-dhcp': [
    [
      'a switch without ports',
      'no-such-port sw',
      ['sw: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}, poe-budget: 55 W}', 'sw: {kind: switch}'],
    ],
  ],
  're-encoding': [
    ['the server is to ask for memberships', 'querier-absent enc', ['querier: s1', 'querier: enc']],
    [
      'the screen gets what it does not take',
      'not-decodable hall',
      [
        'video: {codec: h264, size: 1920x1080, bitrate: 6 Mb/s}',
        'video: {codec: h265, size: 1920x1080, bitrate: 6 Mb/s}',
      ],
    ],
  ],
  'wireless-vlans': [
    [
      'a range of ports lacks a VLAN',
      'vlan-mismatch sw/2',
      ['2-3: {speed: 1 Gb/s, trunk: [lan, guest], native: lan, poe: at}', '2-3: {speed: 1 Gb/s, vlan: lan, poe: at}'],
    ],
    [
      'an access point at a port without its VLAN and without power',
      'vlan-mismatch sw/8',
      ['from: sw/3, to: ap2', 'from: sw/8, to: ap2'],
    ],
    [
      'the house may not ask the cameras',
      'unreached-receiver pc',
      ['gateway: r, dhcp-pool: 192.168.10.100', 'gateway: r, reaches: [], dhcp-pool: 192.168.10.100'],
    ],
  ],
  'firewall-legs': [
    [
      'the switches are swapped',
      'cables-swapped so/1',
      ['fw/a, to: so/1', 'fw/b, to: so/1'],
      ['fw/b, to: sc/6', 'fw/a, to: sc/6'],
    ],
    ['the office may not ask', 'unreached-receiver boss', ['reaches: [cam]', 'reaches: []']],
    ['a leg with an address of nowhere', 'address-outside-subnet 172.61.1.1', ['172.16.1.1', '172.61.1.1']],
  ],
  'management-vlan': [
    [
      'the native VLANs of a trunk differ',
      'vlan-mismatch s2/1',
      [
        'poe-budget: 120 W, ports: {1: {speed: 1 Gb/s, trunk: [mgmt, use, cam], native: mgmt}',
        'poe-budget: 120 W, ports: {1: {speed: 1 Gb/s, trunk: [mgmt, use, cam], native: use}',
      ],
    ],
    [
      'the querier has no address in its VLAN',
      'querier-address s1',
      ['addresses: {mgmt: 10.0.99.2, cam: 10.0.20.2}', 'addresses: {mgmt: 10.0.99.2}'],
    ],
  ],
  'star': [
    ['a mask that is too narrow', 'address-outside-subnet 10.20.0.0/24', ['10.20.0.0/23', '10.20.0.0/24']],
    ['copper to the next building', 'copper-between-buildings cat6', ['from: b3/2, to: scr', 'from: b2/2, to: scr']],
  ],
  'small-masks': [
    ['a mask that takes in the other VLANs', 'overlapping-subnets 10.0.0.0/19', ['10.0.20.0/26', '10.0.0.0/19']],
    [
      'a server with an address of another VLAN',
      'address-outside-subnet sw/12',
      ['rec: {kind: server, address: 10.0.20.10', 'rec: {kind: server, address: 10.0.30.10'],
    ],
  ],
  'stairwell': [
    ['a camera that serves one at a time', 'too-many-sessions 1', ['sessions: 3', 'sessions: 1']],
    [
      'an address with two digits swapped',
      'address-outside-subnet 192.168.23.1',
      ['flat-b: 192.168.32.1', 'flat-b: 192.168.23.1'],
    ],
  ],
};

export const mistakes: readonly Mistake[] = Object.entries(OF_HOUSE).flatMap(([house, rows]) =>
  rows.map(([is, told, ...edits]) => ({ house, is, told, edits })),
);
