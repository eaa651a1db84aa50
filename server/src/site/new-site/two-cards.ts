/** A server with two network cards: one in the house, one beside the cameras. */

export const twoCards = (
  zone: string,
): string => `# A site is a folder: all its *.site.yaml files together, in any order.
# This one is a start: make it your own. The server has a card in the house and one beside the cameras.

site:
  name: Home
  timezone: ${zone}    # whose clock names the files of recordings

vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.100-192.168.10.199}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}    # no way out: cameras have nothing to ask elsewhere

devices:
  router: {kind: router, address: 192.168.10.1, speed: 1 Gb/s}
  core:
    kind: switch
    address: 192.168.20.2
    igmp-snooping: true
    unregistered-multicast: drop
    poe-budget: 60 W            # what it can feed over all its ports together
    ports:
      1-4: {speed: 100 Mb/s, vlan: video, poe: af}
      5-6: {speed: 1 Gb/s, vlan: video}
      7-10: {speed: 1 Gb/s, vlan: house}
  # Aim cameras at your own ground only. What may be filmed, and kept how long, is for the law of the place.
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}
  yard-cam: {kind: camera, address: 192.168.20.32, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}
  recorder:
    kind: server
    ports:
      lan: {speed: 1 Gb/s, address: 192.168.10.5}
      cams: {speed: 1 Gb/s, address: 192.168.20.5}
    routes:
      - {to: 224.0.0.0/4, port: cams}                     # else multicast leaves by the card that has the gateway
      - {to: default, port: lan, via: 192.168.10.1}
  hall-screen: {kind: display, address: 192.168.20.61, speed: 1 Gb/s}
  desk-pc: {kind: computer, address: 192.168.10.21, speed: 1 Gb/s}

cables:
  - {from: core/1, to: gate-cam, type: cat6, length: 38 m}
  - {from: core/2, to: yard-cam, type: cat6, length: 22 m}
  - {from: core/5, to: recorder/cams, type: cat6, length: 2 m}
  - {from: core/6, to: hall-screen, type: cat6, length: 12 m}
  - {from: core/7, to: router, type: cat6, length: 1 m}
  - {from: core/8, to: recorder/lan, type: cat6, length: 2 m}
  - {from: core/9, to: desk-pc, type: cat6, length: 14 m}

streams:
  # The server pulls each camera once, however many watch.
  gate:
    source: gate-cam
    transport: rtsp
    port: 554
    video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s, keyframe-interval: 2 s}
    receivers: [recorder]
  yard:
    source: yard-cam
    transport: rtsp
    port: 554
    video: {codec: h264, bitrate: 4 Mb/s, peak-bitrate: 6 Mb/s, keyframe-interval: 2 s}
    receivers: [recorder]
  # Sent on to a group, so that any screen beside the cameras can watch and no link carries it twice.
  gate-shown:
    source: recorder
    carries: gate
    transport: rtp
    group: 239.192.20.31
    port: 5004
    egress: cams
    receivers: [hall-screen]
  # No group leaves its VLAN: the desk gets a copy of its own, by the other card.
  gate-desk:
    source: recorder
    carries: gate
    transport: rtp
    port: 5004
    receivers: [desk-pc]

volumes:
  archive: {host: recorder, capacity: 4 TB, reserve: 5 %}

recordings:
  gate: {stream: gate, volume: archive, segment: 60 s, keep: 14 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}
  yard: {stream: yard, volume: archive, segment: 60 s, keep: 14 d, file: "yard/%Y-%m-%d_%H-%M-%S%z.mp4"}
`;
