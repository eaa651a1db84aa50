"""An RTSP camera: serves a Matroska file with H.264 or H.265, with or without A-law, at rtsp://…:PORT/camera.

Each client has it from its start.
"""

import argparse

import gi

gi.require_version('Gst', '1.0')
gi.require_version('GstRtspServer', '1.0')
from gi.repository import GLib, Gst, GstRtspServer  # noqa: E402

arguments = argparse.ArgumentParser()
arguments.add_argument('file')
arguments.add_argument('port')
arguments.add_argument('codec', choices=['h264', 'h265'])
arguments.add_argument('--sound', action='store_true')
given = arguments.parse_args()

Gst.init(None)
server = GstRtspServer.RTSPServer()
server.set_service(given.port)
factory = GstRtspServer.RTSPMediaFactory()
# 1412 bytes of RTP packet are 1400 of media. A-law goes in packets of 20 ms.
video = (f'film.video_0 ! queue ! {given.codec}parse ! '
         f'rtp{given.codec}pay name=pay0 pt=96 config-interval=-1 mtu=1412 ')
sound = 'film.audio_0 ! queue ! rtppcmapay name=pay1 pt=8 min-ptime=20000000 max-ptime=20000000 '
factory.set_launch(f'( filesrc location={given.file} ! matroskademux name=film {video}{sound if given.sound else ""})')
server.get_mount_points().add_factory('/camera', factory)
server.attach(None)
print('ready', flush=True)
GLib.MainLoop().run()
