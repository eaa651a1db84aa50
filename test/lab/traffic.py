"""Senders, receivers, queriers and multicast routers of a lab, each in the network namespace of its host.

A socket stays in the namespace in which it was opened, so one process serves all of them. It reads commands from its
standard input, a JSON object to a line, and answers each with one: {"do": "set-up" | "join" | "meet" | "run", ...}.
"""

import ctypes
import errno
import fcntl
import heapq
import json
import os
import selectors
import socket
import struct
import sys
import time

CLONE_NEWNET = 0x40000000
IP_MULTICAST_ALL = 49
libc = ctypes.CDLL(None, use_errno=True)
home = os.open('/proc/self/ns/net', os.O_RDONLY)
watched = selectors.DefaultSelector()


class Inside:
    """with Inside(namespace): what is opened there stays there."""

    def __init__(self, namespace):
        self.path = f'/run/netns/{namespace}'

    def __enter__(self):
        namespace = os.open(self.path, os.O_RDONLY)
        try:
            enter(namespace)
        finally:
            os.close(namespace)

    def __exit__(self, *_):
        enter(home)


def enter(namespace):
    if libc.setns(namespace, CLONE_NEWNET) != 0:
        raise OSError(ctypes.get_errno(), 'setns')


# --- Queriers -------------------------------------------------------------------------------------------------------

def checksum(data):
    total = sum(struct.unpack(f'!{len(data) // 2}H', data))
    total = (total & 0xffff) + (total >> 16)
    return ~(total + (total >> 16)) & 0xffff


def general_query(mac, source):
    """An IGMPv2 general query to 224.0.0.1 (RFC 2236 sections 2 and 8): TTL 1, router alert, answers within a second."""
    igmp = struct.pack('!BBHI', 0x11, 10, 0, 0)
    igmp = struct.pack('!BBHI', 0x11, 10, checksum(igmp), 0)
    fields = [0x46, 0xc0, 24 + len(igmp), 0, 0, 1, socket.IPPROTO_IGMP, 0,
              socket.inet_aton(source), socket.inet_aton('224.0.0.1'), b'\x94\x04\x00\x00']
    layout = '!BBHHHBBH4s4s4s'
    fields[7] = checksum(struct.pack(layout, *fields))
    return bytes.fromhex('01005e000001') + mac + b'\x08\x00' + struct.pack(layout, *fields) + igmp


class Querier:
    EVERY = 2.0

    def __init__(self, namespace, interface, source):
        with Inside(namespace):
            self.socket = socket.socket(socket.AF_PACKET, socket.SOCK_RAW)
            # It sends alone: protocol 0 takes nothing in.
            self.socket.bind((interface, 0))
        self.query = general_query(self.socket.getsockname()[4], source)
        self.due = time.monotonic()

    def tick(self, now):
        if now >= self.due:
            self.socket.send(self.query)
            self.due = now + self.EVERY


# --- Multicast routers ----------------------------------------------------------------------------------------------

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
        limits = bytes(1 if vif < len(self.members) and vif != came and group in self.members[vif] else 0 for vif in range(32))
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


# --- Receivers ------------------------------------------------------------------------------------------------------

class Receiver:
    """Takes datagrams, and counts those of a run; says hello back before."""

    def __init__(self, namespace, address, port, interface):
        self.group = address if 224 <= int(address.split('.')[0]) < 240 else None
        self.got = 0
        self.answers = True
        with Inside(namespace):
            self.socket = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
            self.index = 0 if interface is None else socket.if_nametoindex(interface)
        self.socket.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 1 << 20)
        self.socket.setsockopt(socket.IPPROTO_IP, IP_MULTICAST_ALL, 0)
        self.socket.bind((address, port))
        self.socket.setblocking(False)
        watched.register(self.socket, selectors.EVENT_READ, self.read)

    def begin(self):
        self.got = 0

    def join(self):
        if self.group is not None:
            request = socket.inet_aton(self.group) + struct.pack('=Ii', 0, self.index)
            self.socket.setsockopt(socket.IPPROTO_IP, socket.IP_ADD_MEMBERSHIP, request)

    def read(self):
        _, sender = self.socket.recvfrom(1)
        self.got += 1
        if self.answers and self.group is None:
            self.socket.sendto(b'', sender)


class Client:
    """Asks for a stream by TCP, and counts the bytes of it."""

    def __init__(self, namespace, address, port):
        self.got = 0
        self.connected = False
        with Inside(namespace):
            self.socket = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        self.socket.setblocking(False)
        self.to = (address, port)

    def join(self):
        pass

    def begin(self):
        self.got = 0
        # As in the middle of a long flow: after a pause each segment would be acknowledged for a while.
        self.socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_QUICKACK, 0)

    def connect(self):
        result = self.socket.connect_ex(self.to)
        if result == errno.EINPROGRESS:
            watched.register(self.socket, selectors.EVENT_WRITE, self.established)

    def established(self):
        watched.unregister(self.socket)
        if self.socket.getsockopt(socket.SOL_SOCKET, socket.SO_ERROR) == 0:
            self.connected = True
            watched.register(self.socket, selectors.EVENT_READ, self.read)

    def read(self):
        data = self.socket.recv(1 << 20)
        self.got += len(data)
        if not data:
            watched.unregister(self.socket)


# --- Senders --------------------------------------------------------------------------------------------------------

class Datagrams:
    """One sender of datagrams to one address."""

    def __init__(self, namespace, address, port, ttl):
        with Inside(namespace):
            self.socket = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        self.socket.setsockopt(socket.IPPROTO_IP, socket.IP_MULTICAST_TTL, ttl)
        self.socket.setblocking(False)
        self.to = (address, port)
        self.unicast = not 224 <= int(address.split('.')[0]) < 240
        self.met = False
        self.failed = 0
        self.sent = 0
        watched.register(self.socket, selectors.EVENT_READ, self.read)

    def read(self):
        try:
            self.socket.recv(1)
            self.met = True
        except OSError:
            pass

    def greet(self):
        if self.unicast and not self.met:
            self.send(1)
            self.sent = 0

    def send(self, size):
        self.sent += 1
        try:
            self.socket.sendto(bytes(size), self.to)
        except OSError:
            self.failed += 1


class Connection:
    """One server of a stream by TCP to one client. Segments go out by twos, as each picture's go out together."""

    def __init__(self, namespace, address, port):
        with Inside(namespace):
            self.listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        self.listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        self.listening.bind((address, port))
        self.listening.listen()
        self.socket = None
        self.waiting = b''
        self.failed = 0
        self.sent = 0
        watched.register(self.listening, selectors.EVENT_READ, self.accept)

    def accept(self):
        self.socket, _ = self.listening.accept()
        self.socket.setblocking(False)
        self.socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        # Enough for the receiver to leave off acknowledging each segment, as it does at first.
        for _ in range(32):
            self.send(2 * 1448)
        self.sent = 0

    def greet(self):
        self.flush()

    def send(self, size):
        self.sent += size
        if self.socket is not None:
            self.waiting += bytes(size)
            self.flush()

    def flush(self):
        if self.waiting:
            try:
                self.waiting = self.waiting[self.socket.send(self.waiting):]
            except BlockingIOError:
                pass
            except OSError:
                self.failed += 1


class Run:
    """Packets of one make, each due at its time. `size` is media in bytes on average, `around` what stands before it."""

    def __init__(self, sender, media, around, per_second):
        self.sender, self.media, self.around, self.per_second = sender, media, around, per_second

    def due(self, seconds, scale):
        """Yields (time, size); the last packet is shorter, so that the bytes of media are exact."""
        rate = self.per_second * scale
        total = rate * seconds * self.media
        done = 0
        number = 0
        while number * self.media < total - 0.5:
            upto = round((number + 1) * self.around + min(total, (number + 1) * self.media))
            yield number / rate, upto - done
            done = upto
            number += 1


# --- Commands -------------------------------------------------------------------------------------------------------

queriers = []
routers = []
receivers = []
senders = []
runs = []


def wait(until):
    """Serves everybody until a time."""
    while True:
        now = time.monotonic()
        for querier in queriers:
            querier.tick(now)
        next_query = min((querier.due for querier in queriers), default=until)
        timeout = max(0.0, min(until, next_query) - now)
        for key, _ in watched.select(timeout if until > now else 0):
            if key.data is not None:
                key.data()
        if time.monotonic() >= until:
            return


def set_up(command):
    for one in command['queriers']:
        queriers.append(Querier(one['namespace'], one['interface'], one['source']))
    for one in command['routers']:
        routers.append(MulticastRouter(one['namespace'], one['interfaces']))
    for one in command['receivers']:
        if one['connects']:
            receivers.append(Client(one['namespace'], one['address'], one['port']))
        else:
            receivers.append(Receiver(one['namespace'], one['address'], one['port'], one['interface']))
    for one in command['senders']:
        if one['serves']:
            sender = Connection(one['namespace'], one['address'], one['port'])
        else:
            sender = Datagrams(one['namespace'], one['address'], one['port'], one['ttl'])
        senders.append(sender)
        for run in one['runs']:
            pair = 2 if one['serves'] and run['full'] else 1
            runs.append(Run(sender, run['media'] * pair, run['around'] * pair, run['perSecond'] / pair))
    # The first queries go out now: the switches know where to send reports before there are any.
    wait(time.monotonic() + command['settle'])
    return {}


def join(command):
    for receiver in receivers:
        receiver.join()
    wait(time.monotonic() + command['settle'])
    return {}


def meet(command):
    """Every pair that talks, so that each switch has heard each address, and each connection is under way."""
    for receiver in receivers:
        if isinstance(receiver, Client):
            receiver.connect()
    for _ in range(4):
        for sender in senders:
            sender.greet()
        wait(time.monotonic() + command['settle'] / 4)
    for receiver in receivers:
        receiver.answers = False
        receiver.got = 0
    for sender in senders:
        sender.failed = 0
        sender.sent = 0
    return {}


def run(command):
    seconds, scale = command['seconds'], command['scale']
    for sender in senders:
        sender.sent = 0
    for receiver in receivers:
        receiver.begin()
    start = time.monotonic() + 0.02
    heap = []
    for number, one in enumerate(runs):
        schedule = one.due(seconds, scale)
        # They do not start as one: each is shifted within its own interval.
        shift = (number * 0.618034 % 1) / (one.per_second * scale)
        first = next(schedule, None)
        if first is not None:
            heapq.heappush(heap, (start + first[0] + shift, number, first[1], one, schedule, shift))
    latest = 0.0
    while heap:
        now = time.monotonic()
        while heap and heap[0][0] <= now:
            due, number, size, one, schedule, shift = heapq.heappop(heap)
            latest = max(latest, now - due)
            one.sender.send(size)
            following = next(schedule, None)
            if following is not None:
                heapq.heappush(heap, (start + following[0] + shift, number, following[1], one, schedule, shift))
        if heap:
            wait(heap[0][0])
    wait(time.monotonic() + command['settle'])
    for sender in senders:
        sender.greet() if isinstance(sender, Connection) else None
    return {
        'sent': [sender.sent for sender in senders],
        'failed': [sender.failed for sender in senders],
        'got': [receiver.got for receiver in receivers],
        'latest': latest,
    }


COMMANDS = {'set-up': set_up, 'join': join, 'meet': meet, 'run': run}


def main():
    with open(os.path.join(sys.argv[1], 'traffic.pid'), 'w', encoding='ascii') as file:
        file.write(str(os.getpid()))
    fcntl.fcntl(0, fcntl.F_SETFL, fcntl.fcntl(0, fcntl.F_GETFL) | os.O_NONBLOCK)
    watched.register(0, selectors.EVENT_READ, None)
    pending = b''
    while True:
        try:
            data = os.read(0, 1 << 20)
            if not data:
                return
            pending += data
        except BlockingIOError:
            wait(time.monotonic() + 0.005)
        while b'\n' in pending:
            line, pending = pending.split(b'\n', 1)
            command = json.loads(line)
            try:
                answer = COMMANDS[command['do']](command)
            except Exception as error:
                answer = {'error': f'{type(error).__name__}: {error}'}
            print(json.dumps(answer), flush=True)


main()
