"""Who receives: by datagram or by connection."""

import errno
import selectors
import socket
import struct

from namespaces import Inside, watched

IP_MULTICAST_ALL = 49


class Receiver:
    """Takes datagrams, and counts those of a run; says hello back before. A group it joins as its routes say."""

    def __init__(self, namespace, address, port):
        self.group = address if 224 <= int(address.split('.')[0]) < 240 else None
        self.got = 0
        self.answers = True
        # Why the kernel does not let it join.
        self.refused = None
        with Inside(namespace):
            self.socket = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        self.socket.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 1 << 20)
        self.socket.setsockopt(socket.IPPROTO_IP, IP_MULTICAST_ALL, 0)
        self.socket.bind((address, port))
        self.socket.setblocking(False)
        watched.register(self.socket, selectors.EVENT_READ, self.read)

    def begin(self):
        self.got = 0

    def join(self):
        if self.group is not None:
            request = socket.inet_aton(self.group) + struct.pack('=Ii', 0, 0)
            try:
                self.socket.setsockopt(socket.IPPROTO_IP, socket.IP_ADD_MEMBERSHIP, request)
            except OSError as error:
                self.refused = error.strerror

    def read(self):
        _, sender = self.socket.recvfrom(1)
        self.got += 1
        if self.answers and self.group is None:
            try:
                self.socket.sendto(b'', sender)
            except OSError as error:
                # No route leads back.
                if error.errno not in (errno.ENETUNREACH, errno.EHOSTUNREACH):
                    raise


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
