/**
 * A site of about so many lines, of 20 to 24 bytes each: access switches around a core, a camera at each port, recorded
 * and sent on as multicast.
 */

const LINES_PER_CAMERA = 37;
const CAMERAS_PER_SWITCH = 40;

export interface SiteOptions {
  /** Whether about every tenth line has a finding; without them the site checks clean. */
  readonly findings?: boolean;
}

export function generatedSite(lines: number, { findings = false }: SiteOptions = {}): string {
  const cameras = Math.max(1, Math.floor((lines - 50) / LINES_PER_CAMERA));
  const switches = Math.ceil(cameras / CAMERAS_PER_SWITCH);
  const each = (count: number, make: (i: number) => string): string =>
    Array.from({ length: count }, (_, i) => make(i + 1)).join('');
  // Findings of rules that look at one item, at two, and at wiring; some come with a fix or another place.
  const wrong = findings
    ? { speed: '100 Mb/s', length: 110, port: 5005, segment: '61 s' }
    : { speed: '1 Gb/s', length: 10, port: 5004, segment: '60 s' };
  return `site:
  name: Generated
  timezone: Europe/London
vlans:
  house: {id: 10, subnet: 10.0.0.0/16, gateway: router}
  video: {id: 20, subnet: 10.16.0.0/12, gateway: router, querier: core}
devices:
  router:
    kind: router
    ports:
      lan:
        speed: 10 Gb/s
        trunk: [house, video]
        addresses: {house: 10.0.0.1, video: 10.16.0.1}
  core:
    kind: switch
    igmp-snooping: true
    unregistered-multicast: drop
    spanning-tree: true
    address: 10.16.0.2
    ports:
      1-${switches}: {speed: 40 Gb/s, trunk: [house, video]}
      router: {speed: 10 Gb/s, trunk: [house, video]}
      server: {speed: 100 Gb/s, vlan: video}
  recording-server:
    kind: server
    ports:
      cams: {speed: 100 Gb/s, address: 10.16.0.3}
${each(
  switches,
  (i) => `  access-${i}:
    kind: switch
    igmp-snooping: true
    unregistered-multicast: drop
    spanning-tree: true
    poe-budget: 400 W
    ports:
      1-${CAMERAS_PER_SWITCH}: {speed: 1 Gb/s, vlan: video, poe: af}
      screen: {speed: 1 Gb/s, vlan: video}
      up: {speed: 40 Gb/s, trunk: [house, video]}
  screen-${i}:
    kind: display
    address: ${address(10, 17, i)}
    speed: 1 Gb/s
`,
)}${each(
    cameras,
    (i) => `  camera-${i}:
    kind: camera
    address: ${address(10, 18, i)}
    speed: ${wrong.speed}
    poe: {class: 2}
    location: south side, pole ${i}
`,
  )}cables:
  - {from: core/router, to: router, type: cat6a, length: 2 m}
  - {from: core/server, to: recording-server, type: os2, length: 2 m}
${each(
  switches,
  (i) => `  - from: core/${i}
    to: access-${i}/up
    type: om4
    length: 50 m
  - from: access-${i}/screen
    to: screen-${i}
    type: cat6
    length: 20 m
`,
)}${each(
    cameras,
    (i) => `  - from: access-${Math.ceil(i / CAMERAS_PER_SWITCH)}/${((i - 1) % CAMERAS_PER_SWITCH) + 1}
    to: camera-${i}
    type: cat6
    length: ${wrong.length + (i % 70)} m
    label: ${i}, south side, pole ${i}
`,
  )}streams:
${each(
  cameras,
  (i) => `  camera-${i}:
    source: camera-${i}
    transport: rtsp
    port: 554
    video:
      codec: h264
      size: 2560x1440
      frame-rate: 20
      bitrate: 4 Mb/s
      peak-bitrate: 6 Mb/s
      keyframe-interval: 2 s
    receivers: [recording-server]
  live-${i}:
    source: recording-server
    carries: camera-${i}
    transport: rtp
    group: ${address(239, 192, i)}
    port: ${wrong.port}
    receivers: [screen-${(i % switches) + 1}]
`,
)}volumes:
  archive:
    host: recording-server
    capacity: 8000 TB
    reserve: 5 %
    sustained-write: 900 GB/s
recordings:
${each(
  cameras,
  (i) => `  camera-${i}:
    stream: camera-${i}
    volume: archive
    segment: ${wrong.segment}
    keep: 14 d
    file: "camera-${i}/%Y-%m-%d_%H-%M-%S%z.mp4"
`,
)}`;
}

/** The i-th address of a /16, leaving out those whose last octet is 0 or 255. */
function address(a: number, b: number, i: number): string {
  return `${a}.${b + Math.floor(i / (250 * 250))}.${1 + (Math.floor(i / 250) % 250)}.${1 + (i % 250)}`;
}
