// Made from schemas/site.schema.json by `npm run generate`; edits belong there.

/**
 * The video side of a house: its VLANs, devices, cables, streams, volumes and recordings. All *.site.yaml files of a folder are one site.
 */
export interface UrnPlumblineSite {
  /**
   * What holds for the whole site; once in the folder.
   */
  site?: {
    /**
     * What the site is called.
     */
    name?: string;
    /**
     * The IANA time zone that file names are written in.
     */
    timezone?: string;
    /**
     * Anything worth saying about the site; shown where it is mentioned.
     */
    description?: string;
  };
  /**
   * Virtual LANs by name.
   */
  vlans?: {
    [k: string]: Vlan;
  };
  /**
   * Everything with a network port, by name.
   */
  devices?: {
    [k: string]: Device;
  };
  /**
   * What is plugged into what.
   */
  cables?: Cable[];
  /**
   * What is sent over the network, by name.
   */
  streams?: {
    [k: string]: Stream;
  };
  /**
   * Where recordings are written, by name.
   */
  volumes?: {
    [k: string]: Volume;
  };
  /**
   * What is recorded, by name.
   */
  recordings?: {
    [k: string]: Recording;
  };
  /**
   * What the site must hold to.
   */
  policies?: {
    'link-load'?: Threshold;
    'volume-fill'?: Threshold1;
    /**
     * How long recordings must and may be kept.
     */
    retention?: Retention[];
  };
  /**
   * How grave each rule is here, and what is knowingly accepted.
   */
  lint?: {
    /**
     * Severity by rule.
     */
    rules?: {
      /**
       * How the rule's findings are told.
       */
      [k: string]: 'off' | 'hint' | 'information' | 'warning' | 'error';
    };
    /**
     * Findings that are known and accepted, each with a reason. One that matches nothing any more is told.
     */
    accept?: Acceptance[];
  };
}
/**
 * A virtual LAN: a broadcast domain of its own, with its subnet.
 */
export interface Vlan {
  /**
   * The number in the 802.1Q tag, 1 to 4094. Each VLAN has its own.
   */
  id: number;
  /**
   * The IPv4 network of the VLAN, with its prefix length.
   */
  subnet?: string;
  /**
   * The router that the VLAN's hosts send to for every other network. It has an address in the subnet.
   */
  gateway?: string;
  /**
   * First and last address that the DHCP server gives away; fixed addresses stay out of it.
   */
  'dhcp-pool'?: string;
  /**
   * The switch or router that asks who wants which group (IGMP). Without one, memberships end after about four minutes, and reports do not pass from switch to switch. Every group travels to it.
   */
  querier?: string;
  /**
   * Anything worth saying about the VLAN; shown where it is mentioned.
   */
  description?: string;
}
/**
 * Anything with a network port: a switch, a router, a camera, a screen … A device without `ports` has one port, named eth.
 */
export interface Device {
  /**
   * What the device is. Switches, access points and media converters forward frames; routers forward between VLANs; a patch panel holds cables; all others are hosts.
   */
  kind:
    | 'switch'
    | 'router'
    | 'access-point'
    | 'media-converter'
    | 'server'
    | 'camera'
    | 'display'
    | 'computer'
    | 'tuner'
    | 'patch-panel';
  /**
   * The switch listens to who has joined which group, and sends a group only there and to the querier. Absent or false: it floods every group to every port.
   */
  'igmp-snooping'?: boolean;
  /**
   * What a snooping switch does with a group that nobody has joined: `flood` it to every port, or `drop` it (but for the ports that lead to the querier).
   */
  'unregistered-multicast'?: 'flood' | 'drop';
  /**
   * The switch runs rapid spanning tree and cuts loops. Absent or false: a loop stays closed.
   */
  'spanning-tree'?: boolean;
  /**
   * The lowest becomes the root; a multiple of 4096 from 0 to 61440.
   */
  'spanning-tree-priority'?: number;
  /**
   * The most that the switch feeds over all its ports together, from its data sheet.
   */
  'poe-budget'?: string;
  /**
   * The router forwards multicast between its VLANs, where a receiver has joined and the TTL allows it; it also asks for memberships.
   */
  'multicast-routing'?: boolean;
  /**
   * The ports by name. A range such as `1-8` declares each of its numbers alike.
   */
  ports?: {
    [k: string]: Port;
  };
  /**
   * IPv4 address of the port, in the subnet of its VLAN and outside the DHCP pool. On a device of one port it is that port's; on a switch or access point it is the address that it is managed at. Under a range of ports it is the first one's, and the others follow.
   */
  address?: string;
  /**
   * Hardware address, for reservations in the DHCP server.
   */
  mac?: string;
  /**
   * The fastest that the port runs. A link runs at the slower of its two ends.
   */
  speed?: string;
  /**
   * On a switch's port, what it can feed, as the standard's type: `af` 15.4 W, `at` 30 W, `bt` 60 W (Type 3), `bt-type-4` 90 W, all at the switch. On a powered device, its class, and what it draws at most if that is known.
   */
  poe?:
    | string
    | {
        /**
         * Power class of IEEE 802.3, 0 to 8; 0 is a device that does not say.
         */
        class?: number;
        /**
         * The most that the device draws, at its own end of the cable.
         */
        power?: string;
      };
  /**
   * What the device sends out of another port than its addresses and gateway say. The most specific route counts.
   */
  routes?: Route[];
  /**
   * What it is, in your own words; for papers only.
   */
  model?: string;
  /**
   * Where it is; for papers and labels.
   */
  location?: string;
  /**
   * Anything worth saying about the device; shown where it is mentioned.
   */
  description?: string;
}
/**
 * A port of a device. On a switch, `vlan` makes it an access port and `trunk` a tagged one; a switch with neither on any port passes everything on as it comes.
 */
export interface Port {
  /**
   * The fastest that the port runs. A link runs at the slower of its two ends.
   */
  speed?: string;
  /**
   * The one VLAN of an access port; its frames bear no tag.
   */
  vlan?: string;
  /**
   * The VLANs that cross the port with a tag.
   *
   * Items: A VLAN that crosses with its tag.
   */
  trunk?: string[];
  /**
   * The VLAN of a trunk's frames without a tag.
   */
  native?: string;
  /**
   * IPv4 address of the port, in the subnet of its VLAN and outside the DHCP pool. On a device of one port it is that port's; on a switch or access point it is the address that it is managed at. Under a range of ports it is the first one's, and the others follow.
   */
  address?: string;
  /**
   * Where a port carries several VLANs, the device's address in each.
   */
  addresses?: {
    /**
     * IPv4 address in that VLAN.
     */
    [k: string]: string;
  };
  /**
   * On a switch's port, what it can feed, as the standard's type: `af` 15.4 W, `at` 30 W, `bt` 60 W (Type 3), `bt-type-4` 90 W, all at the switch. On a powered device, its class, and what it draws at most if that is known.
   */
  poe?:
    | string
    | {
        /**
         * Power class of IEEE 802.3, 0 to 8; 0 is a device that does not say.
         */
        class?: number;
        /**
         * The most that the device draws, at its own end of the cable.
         */
        power?: string;
      };
  /**
   * Hardware address, for reservations in the DHCP server.
   */
  mac?: string;
  /**
   * Set by hand as a port with a multicast router behind it: it gets every group and all reports.
   */
  'router-port'?: boolean;
  /**
   * Membership reports are sent out here too, though no querier was heard behind it.
   */
  'forward-reports'?: boolean;
  /**
   * Anything worth saying about the port; shown where it is mentioned.
   */
  description?: string;
}
/**
 * Where a host sends what goes to a network.
 */
export interface Route {
  /**
   * A network with its prefix length, or `default` for everything else. All multicast is 224.0.0.0/4.
   */
  to: string;
  /**
   * The port of this device that it leaves by.
   */
  port: string;
  /**
   * The router that it is handed to, where the destination is not on the port's own network.
   */
  via?: string;
}
/**
 * A cable between two ports.
 */
export interface Cable {
  /**
   * One end: device/port, or the device alone where it has one port.
   */
  from: string;
  /**
   * The other end.
   */
  to: string;
  /**
   * Copper by its category, fibre by its class, or `dac` for a direct attach cable.
   */
  type?: 'cat5' | 'cat5e' | 'cat6' | 'cat6a' | 'cat7' | 'cat8' | 'om1' | 'om2' | 'om3' | 'om4' | 'om5' | 'os2' | 'dac';
  /**
   * The whole run from port to port, patch cords included.
   */
  length?: string;
  /**
   * The patch-panel positions that it runs through, in order.
   *
   * Items: panel/position.
   */
  through?: string[];
  /**
   * What is written on it.
   */
  label?: string;
  /**
   * Anything worth saying about the cable; shown where it is mentioned.
   */
  description?: string;
}
/**
 * Pictures and sound from one device to others: with a `group` multicast, else unicast, one copy for each receiver.
 */
export interface Stream {
  /**
   * The device that sends it.
   */
  source: string;
  /**
   * The stream that the source takes in and sends on. Video and audio are as they come, unless they are given anew here.
   */
  carries?: string;
  /**
   * How it travels.
   */
  transport?: 'rtsp' | 'rtp' | 'ts-udp' | 'ts-rtp';
  /**
   * The port that it is sent to, or asked for at. RTP takes an even one, and RTCP the next.
   */
  port?: number;
  /**
   * The multicast group that it is sent to. Within a house, take 239.192.0.0/14 (RFC 2365); no two groups in use should share a MAC address.
   */
  group?: string;
  /**
   * How many routers it may pass, and one more.
   */
  ttl?: number;
  video?: Video;
  audio?: Audio;
  /**
   * The devices that are to get the stream. A server that records its own multicast is among them.
   *
   * Items: A device that gets the stream.
   */
  receivers?: string[];
  /**
   * Bytes of media in a packet: 1400 B where it is not given, and 1316 B (seven packets) of a transport stream.
   */
  'packet-size'?: string;
  /**
   * The constant rate of a whole transport stream, padding included.
   */
  'mux-rate'?: string;
  /**
   * The source's port that it is meant to leave by; it is checked against the routes.
   */
  egress?: string;
  /**
   * Anything worth saying about the stream; shown where it is mentioned.
   */
  description?: string;
}
/**
 * The picture.
 */
export interface Video {
  /**
   * How it is coded.
   */
  codec?: 'h264' | 'h265' | 'mpeg2' | 'mjpeg' | 'av1' | 'vp9';
  /**
   * Width and height in pixels.
   */
  size?: string;
  /**
   * Pictures a second.
   */
  'frame-rate'?: number;
  /**
   * The rate that is set, on average.
   */
  bitrate?: string;
  /**
   * The most over a second, when much moves; the bit rate where it is not given.
   */
  'peak-bitrate'?: string;
  /**
   * Time between pictures that stand by themselves. A recording can only be cut there.
   */
  'keyframe-interval'?: string;
}
/**
 * The sound.
 */
export interface Audio {
  /**
   * How it is coded.
   */
  codec?: 'pcma' | 'pcmu' | 'g722' | 'aac' | 'opus' | 'mp2' | 'ac3' | 'l16';
  /**
   * The rate that is set, on average.
   */
  bitrate?: string;
  /**
   * The most over a second; the bit rate where it is not given.
   */
  'peak-bitrate'?: string;
  /**
   * Samples a second; the codec's usual one where it is not given.
   */
  'sample-rate'?: string;
  /**
   * One for mono, two for stereo.
   */
  channels?: number;
}
/**
 * Disk space that recordings are written to.
 */
export interface Volume {
  /**
   * The device that the disks are in.
   */
  host: string;
  /**
   * Of the whole volume, or of each disk where `disks` is given. Makers count 1 TB as 10¹² bytes.
   */
  capacity: string;
  /**
   * How many equal disks the volume is made of.
   */
  disks?: number;
  /**
   * How the disks make up for one that fails.
   */
  redundancy?: 'none' | 'mirror' | 'raid5' | 'raid6' | 'raid10';
  /**
   * The part that is left free, for the file system and for safety.
   */
  reserve?: string;
  /**
   * What the volume writes for hours on end.
   */
  'sustained-write'?: string;
  /**
   * Anything worth saying about the volume; shown where it is mentioned.
   */
  description?: string;
}
/**
 * A stream written to a volume, in files of a segment each. People who are filmed have rights: local privacy law says what may be recorded, and for how long it may be kept.
 */
export interface Recording {
  /**
   * What is recorded. The volume's host must receive it.
   */
  stream: string;
  /**
   * Where it is written.
   */
  volume: string;
  /**
   * Length of a file. It ends at the next keyframe, so take a multiple of the keyframe interval.
   */
  segment?: string;
  /**
   * How long files are kept before they are deleted.
   */
  keep?: string;
  /**
   * Path below the volume, with the conversions of strftime(3) for the time that the file is begun, in the site's time zone.
   */
  file?: string;
  /**
   * Anything worth saying about the recording; shown where it is mentioned.
   */
  description?: string;
}
/**
 * How much of a link's speed its streams may take, at line rate and at peak; 70 % and 90 % where it is not given.
 */
export interface Threshold {
  /**
   * More than this is a warning.
   */
  warn?: string;
  /**
   * More than this is an error.
   */
  limit?: string;
}
/**
 * How much of a volume the recordings may take once they are kept as long as they should be; 90 % where it is not given.
 */
export interface Threshold1 {
  /**
   * More than this is a warning.
   */
  warn?: string;
  /**
   * More than this is an error.
   */
  limit?: string;
}
/**
 * How long some recordings must and may be kept.
 */
export interface Retention {
  /**
   * Which ones.
   *
   * Items: A recording that this holds for.
   */
  recordings: string[];
  /**
   * No shorter than this.
   */
  'at-least'?: string;
  /**
   * No longer than this.
   */
  'at-most'?: string;
  /**
   * Who asks for it: the law, an insurer, yourself.
   */
  because?: string;
}
/**
 * A finding that is known and accepted.
 */
export interface Acceptance {
  /**
   * The rule that finds it.
   */
  rule: string;
  /**
   * The name of what it is found at: a device, device/port, stream, volume, recording or VLAN.
   */
  at: string;
  /**
   * Why it is all right.
   */
  because: string;
}
