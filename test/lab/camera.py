"""An RTSP camera: serves a Matroska file with H.264 and A-law at rtsp://…:PORT/camera, from its start to each client.

Usage: camera.py FILE PORT [USER PASSWORD]

With a user it asks for the password (RFC 2617, digest).
"""

import sys

import gi

gi.require_version('Gst', '1.0')
gi.require_version('GstRtsp', '1.0')
gi.require_version('GstRtspServer', '1.0')
from gi.repository import GLib, Gst, GstRtsp, GstRtspServer  # noqa: E402

file, port, *access = sys.argv[1:]
Gst.init(None)
server = GstRtspServer.RTSPServer()
server.set_service(port)
factory = GstRtspServer.RTSPMediaFactory()
# 1412 bytes of RTP packet are 1400 of media. A-law goes in packets of 20 ms.
factory.set_launch(
    f'( filesrc location={file} ! matroskademux name=film '
    'film.video_0 ! queue ! h264parse ! rtph264pay name=pay0 pt=96 config-interval=-1 mtu=1412 '
    'film.audio_0 ! queue ! rtppcmapay name=pay1 pt=8 min-ptime=20000000 max-ptime=20000000 )')
if access:
    auth = GstRtspServer.RTSPAuth.new()
    auth.set_supported_methods(GstRtsp.RTSPAuthMethod.DIGEST)
    token = GstRtspServer.RTSPToken.new()
    token.set_string('media.factory.role', 'viewer')
    auth.add_digest(*access, token)
    server.set_auth(auth)
    permissions = GstRtspServer.RTSPPermissions.new()
    permissions.add_permission_for_role('viewer', 'media.factory.access', True)
    permissions.add_permission_for_role('viewer', 'media.factory.construct', True)
    factory.set_permissions(permissions)
server.get_mount_points().add_factory('/camera', factory)
server.attach(None)
print('ready', flush=True)
GLib.MainLoop().run()
