"""Asks a DNS server for the address of each name, and prints what it answers: ask.py SERVER NAME..."""
import socket
import struct
import sys

server, names = sys.argv[1], sys.argv[2:]
with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as question:
    question.settimeout(5)
    question.connect((server, 53))
    for number, name in enumerate(names):
        labels = b''.join(bytes([len(part)]) + part.encode() for part in name.split('.')) + b'\0'
        question.send(struct.pack('>6H', number, 0x0100, 1, 0, 0, 0) + labels + struct.pack('>2H', 1, 1))
        answer = question.recv(512)
        count, = struct.unpack('>H', answer[6:8])
        print(name, socket.inet_ntoa(answer[-4:]) if count else '-')
