"""An RTSP camera: serves a Matroska file with H.264 and A-law at rtsp://…:PORT/camera, from its start to each client.

Usage: camera.py FILE PORT
"""

import sys

import gi

gi.require_version('Gst', '1.0')
gi.require_version('GstRtspServer', '1.0')
from gi.repository import GLib, Gst, GstRtspServer  # noqa: E402

file, port = sys.argv[1:]
Gst.init(None)
server = GstRtspServer.RTSPServer()
server.set_service(port)
factory = GstRtspServer.RTSPMediaFactory()
# 1412 bytes of RTP packet are 1400 of media. A-law goes in packets of 20 ms.
factory.set_launch(
    f'( filesrc location={file} ! matroskademux name=film '
    'film.video_0 ! queue ! h264parse ! rtph264pay name=pay0 pt=96 config-interval=-1 mtu=1412 '
    'film.audio_0 ! queue ! rtppcmapay name=pay1 pt=8 min-ptime=20000000 max-ptime=20000000 )')
server.get_mount_points().add_factory('/camera', factory)
server.attach(None)
print('ready', flush=True)
GLib.MainLoop().run()
