"""Queriers, and routers that forward groups."""

import ctypes
import errno
import selectors
import socket
import struct
import time

from namespaces import Inside, watched


def checksum(data):
    total = sum(struct.unpack(f'!{len(data) // 2}H', data))
    total = (total & 0xffff) + (total >> 16)
    return ~(total + (total >> 16)) & 0xffff


def general_query(mac, source):
    """An IGMPv2 general query to 224.0.0.1 (RFC 2236 sections 2 and 8): TTL 1, answers within a second."""
    igmp = struct.pack('!BBHI', 0x11, 10, 0, 0)
    igmp = struct.pack('!BBHI', 0x11, 10, checksum(igmp), 0)
    fields = [0x46, 0xc0, 24 + len(igmp), 0, 0, 1, socket.IPPROTO_IGMP, 0,
              socket.inet_aton(source), socket.inet_aton('224.0.0.1'), b'\x94\x04\x00\x00']
    layout = '!BBHHHBBH4s4s4s'
    fields[7] = checksum(struct.pack(layout, *fields))
    return bytes.fromhex('01005e000001') + mac + b'\x08\x00' + struct.pack(layout, *fields) + igmp


SO_ATTACH_FILTER = 26
# Of a frame without a tag: IGMP alone (classic BPF: the byte at 23 is the protocol of IPv4).
ONLY_IGMP = b''.join(struct.pack('=HBBI', *step) for step in ((0x30, 0, 0, 23), (0x15, 0, 1, 2), (6, 0, 0, 2048), (6, 0, 0, 0)))
ETH_P_IP = 0x0800


class Querier:
    """Asks until it hears one with a lower address (RFC 3376 section 6.6.2). `delay`: the lowest is there first."""

    EVERY = 2.0

    def __init__(self, namespace, interface, source, delay):
        program = ctypes.create_string_buffer(ONLY_IGMP)
        with Inside(namespace):
            self.socket = socket.socket(socket.AF_PACKET, socket.SOCK_RAW)
            fprog = struct.pack('HL', len(ONLY_IGMP) // 8, ctypes.addressof(program))
            self.socket.setsockopt(socket.SOL_SOCKET, SO_ATTACH_FILTER, fprog)
            self.socket.bind((interface, ETH_P_IP))
        self.socket.setblocking(False)
        self.source = socket.inet_aton(source)
        self.query = general_query(self.socket.getsockname()[4], source)
        self.due = time.monotonic() + delay
        watched.register(self.socket, selectors.EVENT_READ, self.read)

    def read(self):
        packet = self.socket.recv(2048)[14:]
        igmp = packet[(packet[0] & 15) * 4:]
        if igmp[0] == 0x11 and packet[12:16] < self.source and packet[12:16] != bytes(4):
            self.due = float('inf')

    def tick(self, now):
        if now >= self.due:
            self.socket.send(self.query)
            self.due = now + self.EVERY


MRT_INIT, MRT_ADD_VIF, MRT_ADD_MFC = 200, 202, 204
VIFF_USE_IFINDEX = 8
IP_PKTINFO = 8


class MulticastRouter:
    """Forwards as an IGMP proxy does (RFC 4605): groups go where they were reported, and are asked for elsewhere.

    The kernel forwards and counts down the TTL; it asks here by which interfaces.
    """

    def __init__(self, namespace, interfaces):
        self.members = [set() for _ in interfaces]
        self.flows = {}
        with Inside(namespace):
            self.joining = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
            self.socket = socket.socket(socket.AF_INET, socket.SOCK_RAW, socket.IPPROTO_IGMP)
            self.socket.setsockopt(socket.IPPROTO_IP, MRT_INIT, struct.pack('i', 1))
            self.socket.setsockopt(socket.IPPROTO_IP, IP_PKTINFO, 1)
            self.indices = [socket.if_nametoindex(one['name']) for one in interfaces]
            self.own = {socket.inet_aton(one['address']) for one in interfaces}
            for vif, index in enumerate(self.indices):
                entry = struct.pack('=HBBIII', vif, VIFF_USE_IFINDEX, 1, 0, index, 0)
                self.socket.setsockopt(socket.IPPROTO_IP, MRT_ADD_VIF, entry)
        self.socket.setblocking(False)
        watched.register(self.socket, selectors.EVENT_READ, self.read)

    def read(self):
        packet, ancillary, _, _ = self.socket.recvmsg(2048, 64)
        if packet[9] == 0:
            # The kernel does not know where to: an IP header with protocol 0 whose addresses are the packet's.
            if packet[8] == 1:
                self.flows[packet[12:16], packet[16:20]] = packet[10]
                self.forward(packet[12:16], packet[16:20])
            return
        index = next(struct.unpack_from('i', data)[0] for _, kind, data in ancillary if kind == IP_PKTINFO)
        # What it asks for itself comes back to it.
        if index in self.indices and packet[12:16] not in self.own:
            for group in reported(packet[(packet[0] & 15) * 4:]):
                self.join(self.indices.index(index), group)

    def join(self, vif, group):
        if group in self.members[vif] or group[:3] == b'\xe0\0\0':
            return
        self.members[vif].add(group)
        for other, index in enumerate(self.indices):
            if other != vif:
                request = group + struct.pack('=Ii', 0, index)
                try:
                    self.joining.setsockopt(socket.IPPROTO_IP, socket.IP_ADD_MEMBERSHIP, request)
                except OSError as error:
                    if error.errno != errno.EADDRINUSE:
                        raise
        for source, flowing in self.flows:
            if flowing == group:
                self.forward(source, group)

    def forward(self, source, group):
        came = self.flows[source, group]
        limits = bytes(vif != came and group in members for vif, members in enumerate(self.members)).ljust(32, b'\0')
        entry = struct.pack('=4s4sH32s', source, group, came, limits)
        self.socket.setsockopt(socket.IPPROTO_IP, MRT_ADD_MFC, entry.ljust(60, b'\0'))


def reported(igmp):
    """The groups that a membership report joins (RFC 2236, RFC 3376)."""
    if igmp[0] in (0x12, 0x16):
        yield igmp[4:8]
    if igmp[0] == 0x22:
        at = 8
        for _ in range(struct.unpack_from('!H', igmp, 6)[0]):
            kind, extra, sources = struct.unpack_from('!BBH', igmp, at)
            if kind in (2, 4):
                yield igmp[at + 4:at + 8]
            at += 8 + 4 * (sources + extra)
