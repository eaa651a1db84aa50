// A small site: one camera, one recorder that records and re-sends it, one screen that is not cabled yet.

import { planOf, type Plan } from '../../server/src/plan.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

export const PADDOCK = `
site:
  name: Harrow Lane
  timezone: Europe/London

vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.100-192.168.10.199}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}

devices:
  core:
    kind: switch
    igmp-snooping: true
    unregistered-multicast: drop
    spanning-tree: true
    poe-budget: 130 W
    ports:
      1-8: {speed: 1 Gb/s, vlan: video, poe: at}
      9-15: {speed: 1 Gb/s, vlan: house}
      16: {speed: 1 Gb/s, trunk: [house, video]}
  router:
    kind: router
    multicast-routing: false
    ports:
      lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}
  recorder:
    kind: server
    ports:
      lan: {speed: 1 Gb/s, address: 192.168.10.5}
      cams: {speed: 1 Gb/s, address: 192.168.20.5}
    routes:
      - {to: 224.0.0.0/4, port: cams}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s, poe: {class: 3}}
  kitchen-screen: {kind: display, address: 192.168.10.40, speed: 100 Mb/s}
  panel-a: {kind: patch-panel, ports: {1-24: {}}}

cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m, through: [panel-a/1]}
  - {from: core/2, to: recorder/cams, type: cat6, length: 1 m}

streams:
  paddock:
    source: paddock-cam
    transport: rtsp
    port: 554
    video: {codec: h264, size: 2560x1440, frame-rate: 20, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s, keyframe-interval: 2 s}
    audio: {codec: pcma, bitrate: 64 kb/s}
    receivers: [recorder]
  paddock-live:
    source: recorder
    carries: paddock
    transport: rtp
    group: 239.192.20.31
    port: 5004
    ttl: 4
    audio: {codec: aac, bitrate: 96 kb/s}
    receivers: [recorder, kitchen-screen]

volumes:
  archive: {host: recorder, capacity: 8 TB, reserve: 5 %, sustained-write: 120 MB/s}

recordings:
  paddock: {stream: paddock-live, volume: archive, segment: 60 s, keep: 14 d, file: "paddock/%Y-%m-%d_%H-%M-%S.mp4"}
`;

/** The plan of a site whose one file has that text. */
export function planFrom(text: string): Plan {
  const folder = new SiteFolder();
  folder.set('file:///harrow-lane/all.site.yaml', text);
  return planOf(folder.site());
}
