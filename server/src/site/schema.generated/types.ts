// Made from schemas/site.schema.json by `npm run generate`; edits belong there.

/**
 * The video side of a house: its VLANs, devices, cables, streams, television, disks and recordings. All *.site.yaml files of one folder are one site; a section may stand in any of them, and in several.
 */
export interface SiteFile {
  site?: Site;
  /**
   * The virtual LANs by name. A frame stays in its VLAN; only a router takes it to another.
   */
  vlans?: {
    [k: string]: Vlan;
  };
  /**
   * Everything that a cable ends in, by name: switches, routers, servers, cameras, displays, patch panels.
   */
  devices?: {
    [k: string]: Device;
  };
  /**
   * Racks and cabinets of 19 inches by name (IEC 60297), that devices say they are in. Earthing, mains and fixings in a rack: follow local codes, and leave to licensed people what these leave to them.
   */
  racks?: {
    [k: string]: Rack;
  };
  /**
   * A list of the cables, each from one port to another.
   */
  cables?: Cable[];
  /**
   * What is on air, by name: each a transport stream on a frequency.
   */
  multiplexes?: {
    [k: string]: Multiplex;
  };
  /**
   * The programmes in the multiplexes, by name.
   */
  services?: {
    [k: string]: Service;
  };
  /**
   * What must be had at the same time, by name.
   */
  occasions?: {
    [k: string]: Occasion;
  };
  /**
   * Video and audio on its way from one device to others, by name. With a group it is multicast, one copy per link; without, unicast, one copy per receiver.
   */
  streams?: {
    [k: string]: Stream;
  };
  /**
   * What else than streams uses the links, by name: a backup, a copy of files, viewing from away. It takes the paths that streams take, and adds to their loads.
   */
  traffic?: {
    [k: string]: Traffic;
  };
  /**
   * The disks that recordings are written to, by name.
   */
  volumes?: {
    [k: string]: Volume;
  };
  /**
   * Which stream is kept on which volume, for how long and in which files, by name.
   */
  recordings?: {
    [k: string]: Recording;
  };
  policies?: Policies;
  lint?: Lint;
}
/**
 * What the site is called and which clock it keeps.
 */
export interface Site {
  /**
   * What the site is called in reports.
   */
  name?: string;
  /**
   * The IANA time zone whose clock names the files of recordings. Where it has summer time, one hour a year comes twice.
   */
  timezone?: string;
  /**
   * What somebody who has never been there should know. Without effect on what is computed.
   */
  description?: string;
  /**
   * Which frequency a channel of television has.
   */
  'channel-plan'?: 'region-1' | 'australia' | 'north-america' | 'japan' | 'brazil';
}
/**
 * A virtual LAN, with the subnet whose addresses its hosts have.
 */
export interface Vlan {
  /**
   * The number in the tag of a frame on a trunk, 1 to 4094. Each VLAN has its own.
   */
  id?: number;
  /**
   * The IPv4 subnet of the VLAN. The addresses of all its hosts are in it.
   */
  subnet?: string;
  /**
   * The router through which hosts of this VLAN reach other VLANs. Without one, they reach none.
   */
  gateway?: string;
  /**
   * The VLANs whose hosts those of this VLAN may ask for something, as the router or firewall between them is set; answers come back in any case. Without it, all. It is about unicast: groups are not asked for at their source.
   *
   * Items: The name of a VLAN, not its number.
   */
  reaches?: string[];
  /**
   * Whether anything passes between this VLAN and the Internet, as the router or firewall is set; off, nothing does, whoever asks.
   */
  internet?: boolean;
  /**
   * The addresses that a DHCP server hands out, first and last. A fixed address inside can be given to somebody else too.
   */
  'dhcp-pool'?: string;
  /**
   * The switch or router that keeps asking who wants which group. Without one, memberships time out and a receiver behind another switch gets nothing; with one, every group of the VLAN also travels to it. It needs an address of its own.
   */
  querier?: string;
  /**
   * The device that its hosts set their clocks by (NTP). Without power or a way to it they keep their own time, which drifts by some seconds a day, and so do the times of footage.
   */
  clock?: string;
  /**
   * What the VLAN is for. Without effect on what is computed.
   */
  description?: string;
}
/**
 * Something that a cable ends in. Without `ports` it has one, named eth, and what belongs to a port is written at the device.
 */
export interface Device {
  /**
   * What it does with frames, or with signals on coax. Switches, access points and media converters forward frames within a VLAN, routers between VLANs, patch panels pass a cable on; cameras, displays and the like are end hosts. From the aerial to the earth block, parts pass signals along coax. A UPS and a circuit feed others with mains power.
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
    | 'patch-panel'
    | 'internet'
    | 'aerial'
    | 'lnb'
    | 'amplifier'
    | 'attenuator'
    | 'filter'
    | 'equaliser'
    | 'splitter'
    | 'tap'
    | 'combiner'
    | 'diplexer'
    | 'multiswitch'
    | 'outlet'
    | 'power-inserter'
    | 'isolator'
    | 'earth-block'
    | 'ups'
    | 'circuit';
  /**
   * Whether the switch listens to who joins which group and sends each group only there. Off, it floods every group to all ports of the VLAN.
   */
  'igmp-snooping'?: boolean;
  /**
   * What a snooping switch does with a group that nobody has joined. Without it, a group that nobody ever takes is flooded, as many switches do; one that a screen with `decoders` leaves is taken to be dropped.
   */
  'unregistered-multicast'?: 'flood' | 'drop';
  /**
   * What a snooping switch does in a VLAN in which nobody asks for memberships; switches differ. Where it is not said, the worse is predicted: a receiver behind another switch gets nothing.
   */
  'without-querier'?: 'by-reports' | 'flood';
  /**
   * How many groups the switch can keep apart while it snoops, as its papers say. Of more than that it floods or drops the rest.
   */
  'group-table'?: number;
  /**
   * Whether the switch runs the spanning tree protocol (IEEE 802.1D), which blocks links until no loop is left. Off, a loop of cables brings the network down.
   */
  'spanning-tree'?: boolean;
  /**
   * The switch with the lowest becomes the root that all paths are measured from; 0 to 61440 in steps of 4096.
   */
  'spanning-tree-priority'?: number;
  /**
   * The watts that the switch can feed over all its ports together. Each powered device takes what its class is allotted at the switch, loss in the cable included.
   */
  'poe-budget'?: string;
  /**
   * Whether the device forwards packets between the VLANs in which it has an address, as a layer-3 switch does. A router does unless told otherwise.
   */
  routing?: boolean;
  /**
   * Whether a device that routes also forwards groups from one VLAN to another. Off, a group stays in the VLAN that it is sent in.
   */
  'multicast-routing'?: boolean;
  /**
   * The ports by name. A name of two numbers and a hyphen declares each port from one to the other: 1-8. Without `ports`, the device has one port named eth.
   */
  ports?: {
    [k: string]: Port;
  };
  /**
   * The IPv4 address of its one port; of a switch, the address it is managed by and sends queries from. Beside the ports of a router, its address on the sockets that are switched with each other.
   */
  address?: string;
  /**
   * The address that the device itself has in each VLAN: of a switch to ask for memberships there, of one that routes as the gateway of its hosts.
   */
  addresses?: {
    /**
     * The device's IPv4 address in that VLAN.
     */
    [k: string]: string;
  };
  /**
   * The hardware address of its one port, as on the label.
   */
  mac?: string;
  /**
   * The DHCP server of the VLAN keeps the address for this `mac`, so that nobody else gets it, also where it lies in the pool.
   */
  reserved?: boolean;
  /**
   * What its operating system calls its one port; eth where nothing else is given.
   */
  interface?: string;
  /**
   * The highest speed of its one port. A link runs at the lower speed of its two ends.
   */
  speed?: string;
  /**
   * What is plugged into its one port. It must be what the cable is, and the port at the other end.
   */
  medium?: 'copper' | 'multimode' | 'single-mode' | 'direct-attach';
  /**
   * The module in the cage of its one port, by the kind of Ethernet it is (IEEE 802.3). Both ends need ones that meet: of one speed and kind of fibre; over a single fibre a -d at one end and a -u at the other. Look into no module and no fibre end: the light cannot be seen and can harm the eye.
   */
  module?:
    | '100base-fx'
    | '100base-lx10'
    | '100base-bx10-d'
    | '100base-bx10-u'
    | '1000base-t'
    | '1000base-sx'
    | '1000base-lx'
    | '1000base-lx10'
    | '1000base-bx10-d'
    | '1000base-bx10-u'
    | '2.5gbase-t'
    | '10gbase-t'
    | '10gbase-sr'
    | '10gbase-lrm'
    | '10gbase-lr'
    | '10gbase-er'
    | '10gbase-br10-d'
    | '10gbase-br10-u'
    | '25gbase-sr'
    | '25gbase-lr'
    | '40gbase-sr4'
    | '40gbase-lr4';
  /**
   * What it draws through its one port: its class, and where known the watts. At a port of a switch: what that port can feed.
   */
  poe?:
    | ('af' | 'at' | 'bt' | 'bt-type-4')
    | {
        /**
         * The power class that the device asks for, 0 to 8 (IEEE 802.3). For class 3 the switch sets aside 15.4 W, for class 4 30 W; class 0 says nothing and gets 15.4 W.
         */
        class?: number;
        /**
         * The watts that the device draws at most, measured at the device, heater and infrared lamps included. No more than its class allows.
         */
        power?: string;
      };
  /**
   * The rate towards the house that the provider gives, as it is measured: less than the speed of the port, most often.
   */
  down?: string;
  /**
   * The rate from the house to the Internet that the provider gives; mostly much lower than the other.
   */
  up?: string;
  /**
   * The rate at which an access point sends groups into the air, as all its stations must understand it: the lowest basic rate that is set. Lower rates take more of the time.
   */
  'basic-rate'?:
    | '1 Mb/s'
    | '2 Mb/s'
    | '5.5 Mb/s'
    | '6 Mb/s'
    | '9 Mb/s'
    | '11 Mb/s'
    | '12 Mb/s'
    | '18 Mb/s'
    | '24 Mb/s'
    | '36 Mb/s'
    | '48 Mb/s'
    | '54 Mb/s';
  /**
   * Whether an access point sends a group to each station that has joined it, on its own and at that station's rate, instead of once for all at the basic rate.
   */
  'multicast-to-unicast'?: boolean;
  /**
   * How many receivers it serves at a time when they pull a stream by RTSP, all its streams together; its papers say. Without it, any number.
   */
  sessions?: number;
  /**
   * How many of its streams a screen shows at a time. It joins and pulls no more, so a link carries the largest of them; on a change the one before may still come for up to 2 s, which is not counted. Without it, it takes all of them at once.
   */
  decoders?: number;
  decodes?: Decodes;
  /**
   * Which port it sends out of, by destination, as Linux takes it: the most specific route counts, and one for the subnet of a port instead of that port. A route by a port without a cable loses what is sent by it.
   */
  routes?: Route[];
  /**
   * What it is for. Without effect on what is computed.
   */
  description?: string;
  /**
   * What stands on its label. Without effect on what is computed.
   */
  model?: string;
  /**
   * Where to find it. Without effect on what is computed.
   */
  location?: string;
  /**
   * What it is made for; other frequencies do not pass.
   */
  frequencies?: string;
  /**
   * The frequencies that pass; it stops the others.
   */
  passes?: string;
  /**
   * The level of each multiplex at its connector, as metered there.
   */
  receives?: {
    /**
     * A number, a space and dBµV, dBuV, dBmV or dBm, across 75 Ω.
     */
    [k: string]: string;
  };
  /**
   * The strength of the field of each multiplex, in dBµV per metre; with `gain` the level at the connector follows.
   */
  field?: {
    /**
     * A number, a space and dBµV, dBuV, dBmV or dBm, across 75 Ω.
     */
    [k: string]: string;
  };
  /**
   * The carrier-to-noise ratio of each multiplex where it is received, as metered.
   */
  quality?: {
    /**
     * A number, a space and dB.
     */
    [k: string]: string;
  };
  /**
   * By how much it raises the level; of an aerial over a half-wave dipole (dBd).
   */
  gain?: string;
  /**
   * The noise that it adds.
   */
  'noise-figure'?: string;
  /**
   * The largest output with two carriers, at a third-order distance of 60 dB. More carriers lower it.
   */
  'max-output'?: string;
  /**
   * The connector that its supply comes in by; without it, it has a mains lead.
   */
  'powered-by'?: 'in' | 'out';
  /**
   * The voltage that it takes, or of an inserter gives.
   */
  supply?: string;
  /**
   * What it draws, or an inserter can give.
   */
  current?: string;
  /**
   * What it takes off on the way from its input to each output; of a tap on the way through.
   */
  loss?:
    | string
    | {
        /**
         * A number, a space and dB.
         */
        [k: string]: string;
      };
  /**
   * What it takes off on the way to its taps.
   */
  'tap-loss'?:
    | string
    | {
        /**
         * A number, a space and dB.
         */
        [k: string]: string;
      };
  /**
   * How much more it takes off at the lowest of its frequencies than at the highest.
   */
  slope?: string;
  /**
   * How many outputs it has: out-1, out-2 …; of a tap tap-1, tap-2 ….
   */
  ways?: number;
  /**
   * Connectors without a cable that have a 75 Ω terminator.
   *
   * Items: The name of a coax connector of the same device.
   */
  terminated?: string[];
  /**
   * How far its outputs are apart from each other.
   */
  isolation?: string;
  /**
   * Whether direct current passes, or the outputs from which it passes.
   */
  'power-pass'?: string[] | boolean;
  /**
   * What it stands on, and how that is earthed. Local codes and a licensed person decide; an earthed mast does not protect a house from lightning.
   */
  mast?: {
    /**
     * Whether it stands where lightning may strike it, on a roof or a mast.
     */
    'outside-protected-zone'?: boolean;
    /**
     * The cross-section of the conductor that earths it.
     */
    earthed?: string;
  };
  /**
   * How many outputs it has, and whether each gives what it is asked for.
   */
  type?: 'single' | 'twin' | 'quad' | 'quattro';
  /**
   * The coax connectors of a receiver, by name; or of a combiner, each with its range of frequencies.
   */
  inputs?: {
    /**
     * What a receiver takes at a coax connector.
     */
    [k: string]:
      | string
      | {
          /**
           * The systems that it receives; without it, all.
           *
           * Items: The system of digital television.
           */
          systems?: ('dvb-t' | 'dvb-t2' | 'dvb-c' | 'j83b' | 'dvb-s' | 'dvb-s2' | 'atsc' | 'isdb-t')[];
          /**
           * The noise that it adds; without it, what is usual.
           */
          'noise-figure'?: string;
          /**
           * The most that all signals together may be; without it, what an outlet may have of each, and 80 dBµV at least.
           */
          'max-input'?: string;
          /**
           * The current that it can put onto the coax, for an LNB or an amplifier.
           */
          supplies?: string;
          /**
           * The voltage of that current where it is not that of an LNB, 13 or 18 V.
           */
          supply?: string;
        };
  };
  /**
   * The tuners in it by name; a name of two numbers and a hyphen declares each from one to the other.
   */
  tuners?: {
    [k: string]: TunerUnit;
  };
  /**
   * The device that it is plugged into, where it has no network port of its own: its streams leave from there.
   */
  host?: string;
  /**
   * The bus of its host that it is plugged into.
   */
  bus?: string;
  /**
   * USB controllers, by name.
   */
  buses?: {
    /**
     * A USB controller; all that is plugged into it shares it.
     */
    [k: string]: {
      /**
       * Its speed.
       */
      kind: 'usb-2' | 'usb-3';
      /**
       * What all streams on it together may take; without it, what is usual.
       */
      usable?: string;
    };
  };
  /**
   * The building that it is in, as far as one earth goes: a lean-to that shares the earth of the house is part of it. Copper between two of them is told of.
   */
  building?: string;
  power?: OwnPower;
  /**
   * The volt-amperes that it can give, as its label has them.
   */
  rated?: string;
  /**
   * The watts that it can give: less than its volt-amperes, and a limit of its own.
   */
  'rated-power'?: string;
  /**
   * What its battery holds when new: volts times ampere-hours, as the label of the battery has them.
   */
  battery?: string;
  /**
   * What its battery is made of. A lead-acid battery gives less the faster it is emptied.
   */
  chemistry?: 'lead-acid' | 'lithium';
  /**
   * How much of what the battery gives comes out of its sockets; 85 % is assumed where nothing is said.
   */
  efficiency?: string;
  /**
   * How much of its charge it uses before it turns off; 80 % is assumed where nothing is said.
   */
  'depth-of-discharge'?: string;
  /**
   * How much of its capacity as new the battery still has: they age. 80 % is assumed where nothing is said, which is when many are replaced.
   */
  health?: string;
  /**
   * The rack that it is in.
   */
  rack?: string;
  /**
   * The unit of its rack that it is in; of several, the one with the lowest number. Put what is heavy at the bottom.
   */
  unit?: number;
  /**
   * How many units high it is, each of 44.45 mm (IEC 60297-3-100).
   */
  units?: number;
  /**
   * The side of the rack that it is fixed to.
   */
  side?: 'front' | 'rear';
  /**
   * How wide it is, where it stands on a shelf beside others in the same unit; together they have the 450 mm between the posts.
   */
  width?: string;
  /**
   * How far it reaches into its rack, with its plugs.
   */
  depth?: string;
  /**
   * What it weighs. Lift nothing heavy alone.
   */
  weight?: string;
  /**
   * In how many rows a patch panel has its ports; without it, 24 in a row.
   */
  rows?: number;
  /**
   * How a patch panel of several rows counts its ports.
   */
  order?: 'by-row' | 'by-column';
}
/**
 * A port, or each port of a range.
 */
export interface Port {
  /**
   * The highest speed of the port. A link runs at the lower speed of its two ends.
   */
  speed?: string;
  /**
   * What is plugged into the port. It must be what the cable is, and the port at the other end.
   */
  medium?: 'copper' | 'multimode' | 'single-mode' | 'direct-attach';
  /**
   * The module in the cage of the port, by the kind of Ethernet it is (IEEE 802.3). Both ends need ones that meet: of one speed and kind of fibre; over a single fibre a -d at one end and a -u at the other. Look into no module and no fibre end: the light cannot be seen and can harm the eye.
   */
  module?:
    | '100base-fx'
    | '100base-lx10'
    | '100base-bx10-d'
    | '100base-bx10-u'
    | '1000base-t'
    | '1000base-sx'
    | '1000base-lx'
    | '1000base-lx10'
    | '1000base-bx10-d'
    | '1000base-bx10-u'
    | '2.5gbase-t'
    | '10gbase-t'
    | '10gbase-sr'
    | '10gbase-lrm'
    | '10gbase-lr'
    | '10gbase-er'
    | '10gbase-br10-d'
    | '10gbase-br10-u'
    | '25gbase-sr'
    | '25gbase-lr'
    | '40gbase-sr4'
    | '40gbase-lr4';
  /**
   * Makes it an access port: what is cabled to it is in this VLAN, and its frames carry no tag. Ports of a router in one VLAN are sockets that are switched with each other, and share the address of one of them.
   */
  vlan?: string;
  /**
   * Makes it a trunk: it carries these VLANs, each frame tagged with its VLAN's id. Both ends of a cable should carry the same.
   *
   * Items: The name of a VLAN, not its number.
   */
  trunk?: string[];
  /**
   * The one VLAN of a trunk whose frames carry no tag. Without it, all are tagged.
   */
  native?: string;
  /**
   * The IPv4 address of the port. At a range, that of its first port; the others follow. The ports of a range of a router are sockets that share it.
   */
  address?: string;
  /**
   * The IPv4 address in each VLAN, where the port carries several: the legs of a router.
   */
  addresses?: {
    /**
     * The port's IPv4 address in that VLAN.
     */
    [k: string]: string;
  };
  /**
   * At a port of a switch what it can feed: af, at, bt or bt-type-4. At a port of a powered device what it draws: its class, and where known the watts.
   */
  poe?:
    | ('af' | 'at' | 'bt' | 'bt-type-4')
    | {
        /**
         * The power class that the device asks for, 0 to 8 (IEEE 802.3). For class 3 the switch sets aside 15.4 W, for class 4 30 W; class 0 says nothing and gets 15.4 W.
         */
        class?: number;
        /**
         * The watts that the device draws at most, measured at the device, heater and infrared lamps included. No more than its class allows.
         */
        power?: string;
      };
  /**
   * The hardware address of the port, as on the label.
   */
  mac?: string;
  /**
   * The DHCP server of the VLAN keeps the address for this `mac`, so that nobody else gets it, also where it lies in the pool.
   */
  reserved?: boolean;
  /**
   * What the operating system of the host calls the port, where that is not its name here.
   */
  interface?: string;
  /**
   * The name of the group of ports that make one link with their cables (IEEE 802.1AX); of a server, also of the interface that bonds them. All of them have one speed and the same VLANs, and lead to one group of the device at the other end. The address stands at any one of them. Their speeds add up, but each stream takes one cable.
   */
  lag?: string;
  /**
   * How the port agrees with the other end about its group.
   */
  lacp?: 'active' | 'passive' | 'off';
  /**
   * Treats the port as if a multicast router were behind it: it gets every group that its switch knows or receives, and every membership report.
   */
  'router-port'?: boolean;
  /**
   * Sends membership reports out here although no querier is behind. The switch there then never learns that somebody has left.
   */
  'forward-reports'?: boolean;
  /**
   * What the port is for. Without effect on what is computed.
   */
  description?: string;
}
/**
 * The codecs and the picture size that a screen can show. Of what it leaves out nothing is checked.
 */
export interface Decodes {
  /**
   * All codecs of video that it decodes.
   *
   * Items: How video is encoded.
   */
  video?: ('h264' | 'h265' | 'mpeg2' | 'mjpeg' | 'av1' | 'vp9')[];
  /**
   * All codecs of audio that it decodes.
   *
   * Items: How audio is encoded.
   */
  audio?: ('pcma' | 'pcmu' | 'g722' | 'aac' | 'opus' | 'mp2' | 'ac3' | 'l16')[];
  /**
   * Width and height in pixels of the largest picture that it decodes.
   */
  picture?: string;
}
/**
 * The port, and where there is one the gateway, for a block of destinations.
 */
export interface Route {
  /**
   * The subnet that the route is for, or `default` for all that no other route is for. All multicast is 224.0.0.0/4.
   */
  to: string;
  /**
   * The port of this device that it sends out of.
   */
  port: string | number;
  /**
   * The VLAN that it is sent into, where the port carries several. Without it, the one of the gateway, else the untagged one, else the first.
   */
  vlan?: string;
  /**
   * The address of the router that the packets are handed to. Without it, the destination is on the link itself.
   */
  via?: string;
}
/**
 * One tuner takes one multiplex at a time.
 */
export interface TunerUnit {
  /**
   * The systems that it receives.
   *
   * Items: The system of digital television.
   */
  systems?: ('dvb-t' | 'dvb-t2' | 'dvb-c' | 'j83b' | 'dvb-s' | 'dvb-s2' | 'atsc' | 'isdb-t')[];
  /**
   * The connector that it listens at; needed where there are several.
   */
  input?: string;
}
/**
 * Where the device is fed from and what it draws, without what it feeds to others by PoE. Without `from` it is fed by PoE where a cable of it brings that, else from the mains.
 */
export interface OwnPower {
  /**
   * The watts that it draws with little to do: a camera by day, with its lamps off.
   */
  idle?: string;
  /**
   * The watts that it draws at most, disks, lamps and heaters included. Runtime and the load of a UPS are planned for this. The figure of a label is a maximum; measure where you can.
   */
  'at-most'?: string;
  /**
   * The UPS or the circuit that its plug is in.
   */
  from?: string;
  /**
   * Watts over volt-amperes, from 0 to 1; 0.95 is assumed where nothing is said.
   */
  'power-factor'?: number;
  /**
   * How much of what it takes from its supply for PoE leaves by its ports; 88 % is assumed where nothing is said.
   */
  'poe-efficiency'?: string;
}
/**
 * A rack or a cabinet of 19 inches.
 */
export interface Rack {
  /**
   * How many units it has, each of 44.45 mm (IEC 60297-3-100).
   */
  units: number;
  /**
   * How far a device may reach in, from its front posts to what is behind.
   */
  depth?: string;
  /**
   * Where its units count from.
   */
  'numbered-from'?: 'bottom' | 'top';
  /**
   * The weight that may be in it, as its papers say. On a wall, the wall and its fixings must bear that and the cabinet itself.
   */
  bears?: string;
  /**
   * Where to find it. Without effect on what is computed.
   */
  location?: string;
  /**
   * What it is for. Without effect on what is computed.
   */
  description?: string;
}
/**
 * A cable between two ports, or a coax between two connectors. An end is `device/port`, or the device alone where it has one port.
 */
export interface Cable {
  /**
   * The port at one end.
   */
  from: string;
  /**
   * The port at the other end.
   */
  to: string;
  /**
   * The category of the copper, the fibre, or the series of the coax; it bounds the speed and the length, or says what the coax takes off.
   */
  type?:
    | 'cat5'
    | 'cat5e'
    | 'cat6'
    | 'cat6a'
    | 'cat7'
    | 'cat8'
    | 'om1'
    | 'om2'
    | 'om3'
    | 'om4'
    | 'om5'
    | 'os2'
    | 'dac'
    | 'coax-59'
    | 'coax-6'
    | 'coax-11';
  /**
   * How many fibres of the cable this link has: two, one for each way, or one for both where the modules send at different wavelengths.
   */
  fibres?: number;
  /**
   * The metres from port to port, patch cords included.
   */
  length?: string;
  /**
   * The patch panel ports that it passes on its way, in order; of a coax also inserters, isolators and earth blocks.
   *
   * Items: A port as `device/port`, or the device alone where it has one port.
   */
  through?: string[];
  /**
   * The duct, trench or tray that it lies in, by any name: cables with the same one are cut together.
   */
  duct?: string;
  /**
   * What is written on both ends of the cable.
   */
  label?: string;
  /**
   * How it is laid. Without effect on what is computed.
   */
  description?: string;
  /**
   * What the core of a coax is made of. Clad steel has five times the resistance to direct current.
   */
  core?: 'copper' | 'clad-steel';
  /**
   * What 100 m of a coax take off, by frequency, as its data sheet has it; without it, that of its series.
   */
  attenuation?: {
    /**
     * A number, a space and dB.
     */
    [k: string]: string;
  };
}
/**
 * One transport stream on one frequency, with several programmes in it.
 */
export interface Multiplex {
  /**
   * The system that it is sent in.
   */
  system: 'dvb-t' | 'dvb-t2' | 'dvb-c' | 'j83b' | 'dvb-s' | 'dvb-s2' | 'atsc' | 'isdb-t';
  /**
   * The channel of the site's `channel-plan`; says the frequency.
   */
  channel?: number | string;
  /**
   * The centre of the channel; of a satellite the frequency in the sky.
   */
  frequency?: string;
  /**
   * Of the channel; without it, that of the channel plan.
   */
  bandwidth?: string;
  /**
   * How the bits are put onto carriers.
   */
  modulation?:
    'qpsk' | 'dqpsk' | '8psk' | '16qam' | '16apsk' | '32qam' | '32apsk' | '64qam' | '128qam' | '256qam' | '8vsb';
  /**
   * The share of the bits that is not for the correction of errors.
   */
  'code-rate'?: string;
  /**
   * The share of a symbol that bridges echoes.
   */
  'guard-interval'?: string;
  /**
   * Of DVB-T2: whether the channel is filled with more carriers.
   */
  extended?: boolean;
  /**
   * By satellite and cable: symbols per second.
   */
  'symbol-rate'?: string;
  /**
   * By satellite.
   */
  polarisation?: 'vertical' | 'horizontal' | 'left' | 'right';
  /**
   * Of DVB-S2: whether pilots are sent, which take some of the rate.
   */
  pilots?: boolean;
  /**
   * Of ISDB-T: how many of the 13 segments carry it.
   */
  segments?: number;
  /**
   * Of DVB-T2: what of its frame decides the rate.
   */
  frame?: {
    /**
     * Thousands of carriers.
     */
    size: 1 | 2 | 4 | 8 | 16 | 32;
    /**
     * Symbols of a frame, with those of P2.
     */
    symbols: number;
    /**
     * FEC blocks in a frame.
     */
    blocks: number;
  };
  /**
   * The rate of its transport stream, as a meter or an analyser has it; without it, that of the formula.
   */
  'net-rate'?: string;
  /**
   * Without effect on what is computed.
   */
  description?: string;
}
/**
 * A programme, as it is chosen at a screen.
 */
export interface Service {
  /**
   * The multiplex that carries it, or several of which any will do.
   */
  multiplex: string | {};
  /**
   * What it takes on average.
   */
  rate?: string;
  /**
   * What it takes at most.
   */
  'peak-rate'?: string;
  /**
   * Without effect on what is computed.
   */
  description?: string;
}
/**
 * What must be had at the same time. What is recorded counts in each.
 */
export interface Occasion {
  /**
   * Services that are watched or recorded at once.
   *
   * Items: The name of a service.
   */
  services?: string[];
  /**
   * Whole multiplexes that are wanted at once.
   *
   * Items: The name of a multiplex.
   */
  multiplexes?: string[];
  /**
   * Without effect on what is computed.
   */
  description?: string;
}
/**
 * Video and audio on its way from one device to others.
 */
export interface Stream {
  /**
   * The device that sends it.
   */
  source: string;
  /**
   * The stream whose video and audio the source passes on. What is not declared here stays as it is there. A bitrate declared here is that of another encoder, so the peak of the carried stream does not apply to it.
   */
  carries?: string;
  /**
   * How it is packed; decides which headers are added to the media.
   */
  transport?: 'rtsp' | 'rtsp-udp' | 'rtp' | 'ts-udp' | 'ts-rtp';
  /**
   * The port that it is sent to, or for rtsp asked for at the source, 554 where nothing is said. RTP takes an even port and RTCP the odd one above; audio beside video takes the next pair. `auto` until a free one is filled in.
   */
  port?: number | string;
  /**
   * What follows the port in the RTSP address of the source; the source's papers name it.
   */
  path?: string;
  /**
   * The name of the file of user and password on the host that asks for the stream: letters, digits, - and _, at most 63. Never the password itself: a site is read by many.
   */
  credentials?: string;
  /**
   * The multicast address that it is sent to; makes it multicast. Within one house take 239.255.0.0/16, within an organization 239.192.0.0/14 (RFC 2365). `auto` until a free one is filled in.
   */
  group?: string;
  /**
   * How far multicast goes: each router on the way takes one off and passes on nothing that has only one left. With 1 it stays in its VLAN.
   */
  ttl?: number;
  video?: Video;
  audio?: Audio;
  /**
   * The devices that take it: with a group they join it, without one each gets a copy of its own.
   *
   * Items: The name of a device.
   */
  receivers?: string[];
  /**
   * The bytes of media in one packet, headers not counted. By default 1400 B for rtsp and rtp, and 1316 B, seven transport stream packets, for ts-udp and ts-rtp.
   */
  'packet-size'?: string;
  /**
   * The constant rate of the whole transport stream, padding included; only for ts-udp and ts-rtp. Without it nothing is padded.
   */
  'mux-rate'?: string;
  /**
   * The port of the source by which it is meant to leave. Changes nothing; if the routes send it out of another, that is reported.
   */
  egress?: string | number;
  /**
   * What it shows or is for. Without effect on what is computed.
   */
  description?: string;
  /**
   * The programme that a tuner sends; its rate follows.
   */
  service?: string;
  /**
   * The whole multiplex that a tuner sends; its rate follows.
   */
  multiplex?: string;
}
/**
 * Encoded video and its rate.
 */
export interface Video {
  /**
   * How the video is encoded.
   */
  codec?: 'h264' | 'h265' | 'mpeg2' | 'mjpeg' | 'av1' | 'vp9';
  /**
   * Width and height in pixels.
   */
  size?: string;
  /**
   * Pictures per second.
   */
  'frame-rate'?: number;
  /**
   * The rate of the encoded video on average, without headers.
   */
  bitrate?: string;
  /**
   * The most that the encoder sends, as when rain or wind moves the whole picture. Without it the peak is taken as the bitrate.
   */
  'peak-bitrate'?: string;
  /**
   * The time from one keyframe to the next. Recordings are cut only at keyframes, and a screen shows nothing before it has one.
   */
  'keyframe-interval'?: string;
}
/**
 * Encoded audio and its rate.
 */
export interface Audio {
  /**
   * How the audio is encoded.
   */
  codec?: 'pcma' | 'pcmu' | 'g722' | 'aac' | 'opus' | 'mp2' | 'ac3' | 'l16';
  /**
   * The rate of the encoded audio on average, without headers.
   */
  bitrate?: string;
  /**
   * The most that the encoder sends. Without it the peak is taken as the bitrate.
   */
  'peak-bitrate'?: string;
  /**
   * Samples per second of each channel.
   */
  'sample-rate'?: string;
  /**
   * 1 for mono, 2 for stereo.
   */
  channels?: number;
}
/**
 * What a host sends another one, other than streams.
 */
export interface Traffic {
  /**
   * The host that sends it.
   */
  from: string;
  /**
   * The host that it goes to.
   */
  to: string;
  /**
   * The most data that is sent in a second, as a program shows it. Headers, and the acknowledgements on the way back, are added.
   */
  rate: string;
  /**
   * The most data that comes back in a second, besides acknowledgements.
   */
  back?: string;
  /**
   * What it is. Without effect on what is computed.
   */
  description?: string;
}
/**
 * A disk, or several under one name.
 */
export interface Volume {
  /**
   * The device that it is in. Only what this device receives can be recorded here.
   */
  host: string;
  /**
   * The size as sold, in powers of 1000 (TB) or 1024 (TiB); of each disk where `disks` is given.
   */
  capacity: string;
  /**
   * Where its host has it mounted; the files of recordings are below it. Without it, /srv and its name.
   */
  path?: string;
  /**
   * How many disks of that capacity it consists of.
   */
  disks?: number;
  /**
   * How many disks may fail without loss of footage; what is kept for that is not there for footage. None of them is a backup.
   */
  redundancy?: 'none' | 'mirror' | 'raid5' | 'raid6' | 'raid10';
  /**
   * The part that stays free for the file system and its housekeeping.
   */
  reserve?: string;
  /**
   * What it can write for hours on end, full and warm; less than what it does for a minute.
   */
  'sustained-write'?: string;
  /**
   * What it is. Without effect on what is computed.
   */
  description?: string;
}
/**
 * A stream that is written to a volume.
 */
export interface Recording {
  /**
   * The stream that is written as it comes. The volume's host sends or receives it.
   */
  stream: string;
  /**
   * The volume that it is written to.
   */
  volume: string;
  /**
   * The length of each file. A file ends only at a keyframe, so take a multiple of the keyframe interval.
   */
  segment?: string;
  /**
   * How long a file is kept before it is deleted.
   */
  keep?: string;
  /**
   * The name of each file below the volume, with conversions of strftime that stand for the time it was opened. With the date, %H, %M and %S two files never share a name, but in the hour that comes twice when clocks go back; with %z not even there.
   */
  file?: string;
  /**
   * What it is kept for. Without effect on what is computed.
   */
  description?: string;
}
/**
 * What the site is held to.
 */
export interface Policies {
  /**
   * How much of a link's speed may be taken at peak, in either direction. What is left absorbs bursts and whatever else uses the link.
   */
  'link-load'?: {
    /**
     * From here on a warning.
     */
    warn?: string;
    /**
     * From here on an error.
     */
    limit?: string;
  };
  /**
   * How much of the time groups may take of the air of an access point at peak. All else in the cell shares what is left.
   */
  airtime?: {
    /**
     * From here on a warning; 50 % where nothing is said.
     */
    warn?: string;
    /**
     * From here on an error; 70 % where nothing is said.
     */
    limit?: string;
  };
  /**
   * How much of a volume's usable capacity may be taken by what is to be kept.
   */
  'volume-fill'?: {
    /**
     * From here on a warning.
     */
    warn?: string;
    /**
     * From here on an error.
     */
    limit?: string;
  };
  /**
   * How long recordings must and may be kept. Footage of people may fall under privacy law, which can bound both; ask before you set it.
   */
  retention?: Retention[];
  /**
   * How long things are to go on when the mains fails.
   */
  runtime?: {
    /**
     * How long each camera is to be recorded, or seen where it is not recorded.
     */
    cameras?: string;
  };
  /**
   * What reception is held to; where it says nothing, common practice.
   */
  'aerial-system'?: {
    /**
     * How much more than needed the carrier-to-noise ratio is to be; 6 dB where nothing is said.
     */
    margin?: string;
    /**
     * How far inside its window a level at an outlet is to be; 0 dB where nothing is said.
     */
    'level-reserve'?: string;
    /**
     * How far levels of television at one outlet may differ; 12 dB where nothing is said.
     */
    slope?: string;
    /**
     * The window of levels at outlets, by system, where the country has its own.
     */
    'outlet-level'?: {
      /**
       * Both ends are optional.
       */
      [k: string]: {
        /**
         * The lowest level.
         */
        min?: string;
        /**
         * The highest level.
         */
        max?: string;
      };
    };
  };
}
/**
 * How long the recordings that it names must and may be kept.
 */
export interface Retention {
  /**
   * The recordings that it is for.
   */
  recordings: string[];
  /**
   * No footage is deleted before.
   */
  'at-least'?: string;
  /**
   * All footage is deleted by then.
   */
  'at-most'?: string;
  /**
   * What the bounds rest on. Without effect on what is computed.
   */
  because?: string;
}
/**
 * How findings are treated in this site.
 */
export interface Lint {
  /**
   * How severe the findings of a rule are here, by the rule's name. A rule that is not named keeps its own severity.
   */
  rules?: {
    /**
     * How severe the rule's findings are, or off.
     */
    [k: string]: 'off' | 'hint' | 'information' | 'warning' | 'error';
  };
  /**
   * Findings that are known and stay, each with the reason. One that accepts nothing is reported.
   */
  accept?: Acceptance[];
}
/**
 * A finding that is known and stays.
 */
export interface Acceptance {
  /**
   * The rule whose finding it is.
   */
  rule: string;
  /**
   * What the finding is about: the name of a device, a port (`core/16`), a stream, a volume, a recording.
   */
  at: string;
  /**
   * Why it may stay.
   */
  because: string;
}
