"""Who sends, what, and when."""

import selectors
import socket

from namespaces import Inside, watched


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
    """Packets of one make, each due at its time: bytes of media on average, and of what stands before it."""

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
