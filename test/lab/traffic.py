"""Senders, receivers, queriers and multicast routers of a lab, each in the network namespace of its host.

A socket stays in the namespace in which it was opened, so one process serves all of them. It reads commands from its
standard input, a JSON object to a line, and answers each with one: {"do": "set-up" | "join" | "meet" | "run", ...}.
"""

import fcntl
import heapq
import json
import os
import selectors
import sys
import time

from igmp import MulticastRouter, Querier
from namespaces import watched
from receivers import Client, Receiver
from senders import Connection, Datagrams, Run

queriers = []
routers = []
receivers = []
early = set()
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
    for one in command['routers']:
        routers.append(MulticastRouter(one['namespace'], one['interfaces']))
    for one in command['receivers']:
        if one['connects']:
            receivers.append(Client(one['namespace'], one['address'], one['port']))
        else:
            receivers.append(Receiver(one['namespace'], one['address'], one['port']))
    for one in command['senders']:
        if one['serves']:
            sender = Connection(one['namespace'], one['address'], one['port'])
        else:
            sender = Datagrams(one['namespace'], one['address'], one['port'], one['ttl'])
        senders.append(sender)
        for run in one['runs']:
            pair = 2 if one['serves'] and run['full'] else 1
            runs.append(Run(sender, run['media'] * pair, run['around'] * pair, run['perSecond'] / pair))
    # Some join before anybody asks, as after a power cut, and the others when switches know where to send reports. Not
    # those that ask themselves: Open vSwitch sends them each packet twice until such a membership is forgotten (300 s).
    asking = {one['namespace'] for one in command['queriers']}
    for receiver, one in list(zip(receivers, command['receivers']))[::2]:
        if one['namespace'] not in asking:
            early.add(receiver)
            receiver.join()
    wait(time.monotonic() + command['settle'] / 2)
    for one in command['queriers']:
        queriers.append(Querier(one['namespace'], one['interface'], one['source'], one['delay']))
    wait(time.monotonic() + command['settle'])
    return {}


def join(command):
    for receiver in receivers:
        if receiver not in early:
            receiver.join()
    wait(time.monotonic() + command['settle'])
    return {'refused': [getattr(receiver, 'refused', None) for receiver in receivers]}


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
