/** Two buildings with a switch each, and fibre between them. */

export const buildings = (
  zone: string,
): string => `# A site is a folder: all its *.site.yaml files together, in any order.
# This one is a start: make it your own. Each building has its switch, and only glass goes from one to the other.

site:
  name: Home
  timezone: ${zone}    # whose clock names the files of recordings

vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.100-192.168.10.199}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router, querier: core}

devices:
  core:
    kind: switch
    building: house
    address: 192.168.20.2
    igmp-snooping: true
    unregistered-multicast: drop
    spanning-tree: true
    spanning-tree-priority: 4096    # the root: all paths are short from here
    poe-budget: 60 W                # what it can feed over all its ports together
    ports:
      1-4: {speed: 100 Mb/s, vlan: video, poe: af}
      5-6: {speed: 1 Gb/s, vlan: video}
      7-8: {speed: 1 Gb/s, vlan: house}
      9: {speed: 1 Gb/s, trunk: [house, video]}
      10: {speed: 1 Gb/s, module: 1000base-lx10, trunk: [house, video]}
  barn:
    kind: switch
    building: barn
    address: 192.168.20.3
    igmp-snooping: true
    unregistered-multicast: drop
    spanning-tree: true
    poe-budget: 60 W
    ports:
      1-4: {speed: 100 Mb/s, vlan: video, poe: af}
      5-6: {speed: 1 Gb/s, vlan: video}
      7-8: {speed: 1 Gb/s, vlan: house}
      10: {speed: 1 Gb/s, module: 1000base-lx10, trunk: [house, video]}
  router:
    kind: router
    building: house
    ports:
      lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}
  # Aim cameras at your own ground only. What may be filmed, and kept how long, is for the law of the place.
  gate-cam: {kind: camera, building: house, address: 192.168.20.31, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}
  barn-cam: {kind: camera, building: barn, address: 192.168.20.32, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}
  recorder: {kind: server, building: house, address: 192.168.20.5, speed: 1 Gb/s}
  hall-screen: {kind: display, building: house, address: 192.168.20.61, speed: 1 Gb/s}
  barn-screen: {kind: display, building: barn, address: 192.168.20.62, speed: 1 Gb/s}

cables:
  # Glass carries no lightning and joins no two earths. Look into no fibre end, lit or not.
  - {from: core/10, to: barn/10, type: os2, length: 120 m}
  - {from: core/9, to: router/lan, type: cat6, length: 1 m}
  - {from: core/1, to: gate-cam, type: cat6, length: 38 m}
  - {from: core/5, to: recorder, type: cat6, length: 2 m}
  - {from: core/6, to: hall-screen, type: cat6, length: 12 m}
  - {from: barn/1, to: barn-cam, type: cat6, length: 22 m}
  - {from: barn/5, to: barn-screen, type: cat6, length: 9 m}

streams:
  # The server pulls each camera once, however many watch.
  gate:
    source: gate-cam
    transport: rtsp
    port: 554
    video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s, keyframe-interval: 2 s}
    receivers: [recorder]
  barn:
    source: barn-cam
    transport: rtsp
    port: 554
    video: {codec: h264, bitrate: 4 Mb/s, peak-bitrate: 6 Mb/s, keyframe-interval: 2 s}
    receivers: [recorder]
  # Sent on to a group: the fibre carries it once, however many screens of the barn watch.
  gate-shown:
    source: recorder
    carries: gate
    transport: rtp
    group: 239.192.20.31
    port: 5004
    receivers: [hall-screen, barn-screen]

volumes:
  archive: {host: recorder, capacity: 4 TB, reserve: 5 %}

recordings:
  gate: {stream: gate, volume: archive, segment: 60 s, keep: 14 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}
  barn: {stream: barn, volume: archive, segment: 60 s, keep: 14 d, file: "barn/%Y-%m-%d_%H-%M-%S%z.mp4"}
`;
