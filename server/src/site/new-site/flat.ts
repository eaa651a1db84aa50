/** One network on one switch: two cameras, a server and a screen. */

export const flat = (zone: string): string => `# A site is a folder: all its *.site.yaml files together, in any order.
# This one is a start: make it your own.
# Change a figure to see what it does. With "speed: 10 Mb/s" at the recorder, its cable no longer carries both cameras.

site:
  name: Home
  timezone: ${zone}    # whose clock names the files of recordings

vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}    # the querier keeps multicast where it is wanted

devices:
  core:
    kind: switch
    address: 192.168.20.2
    igmp-snooping: true
    poe-budget: 60 W            # what it can feed over all its ports together
    ports:
      1-4: {speed: 100 Mb/s, vlan: video, poe: af}
      5-8: {speed: 1 Gb/s, vlan: video}
  # Aim cameras at your own ground only. What may be filmed, and kept how long, is for the law of the place.
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}
  yard-cam: {kind: camera, address: 192.168.20.32, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
  hall-screen: {kind: display, address: 192.168.20.61, speed: 1 Gb/s}

cables:
  - {from: core/1, to: gate-cam, type: cat6, length: 38 m}
  - {from: core/2, to: yard-cam, type: cat6, length: 22 m}
  - {from: core/5, to: recorder, type: cat6, length: 2 m}
  - {from: core/6, to: hall-screen, type: cat6, length: 12 m}

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
  # Sent on to a group, so that any screen can watch and no link carries it twice.
  gate-shown:
    source: recorder
    carries: gate
    transport: rtp
    group: 239.192.20.31
    port: 5004
    receivers: [hall-screen]

volumes:
  archive: {host: recorder, capacity: 4 TB, reserve: 5 %}

recordings:
  gate: {stream: gate, volume: archive, segment: 60 s, keep: 14 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}
  yard: {stream: yard, volume: archive, segment: 60 s, keep: 14 d, file: "yard/%Y-%m-%d_%H-%M-%S%z.mp4"}
`;
