"""An RTSP camera: serves a Matroska file with H.264 or H.265, and A-law unless it is silent, at rtsp://…:PORT/camera.

Each client has it from its start.

With access it asks for the user that stands in the first line of that file and the password in the second: digest
(RFC 7616) or basic (RFC 7617).
"""

import argparse

import gi

gi.require_version('Gst', '1.0')
gi.require_version('GstRtsp', '1.0')
gi.require_version('GstRtspServer', '1.0')
from gi.repository import GLib, Gst, GstRtsp, GstRtspServer  # noqa: E402

arguments = argparse.ArgumentParser()
arguments.add_argument('file')
arguments.add_argument('port')
arguments.add_argument('--codec', choices=['h264', 'h265'], default='h264')
arguments.add_argument('--silent', action='store_true')
arguments.add_argument('--access', type=argparse.FileType(encoding='utf-8'))
arguments.add_argument('--scheme', choices=['digest', 'basic'], default='digest')
arguments.add_argument('--described-only', action='store_true', help='parameter sets in the description, not in the stream')
given = arguments.parse_args()

Gst.init(None)
server = GstRtspServer.RTSPServer()
server.set_service(given.port)
factory = GstRtspServer.RTSPMediaFactory()
# 1412 bytes of RTP packet are 1400 of media. A-law goes in packets of 20 ms.
video = (f'film.video_0 ! queue ! {given.codec}parse ! rtp{given.codec}pay name=pay0 pt=96 '
         f'config-interval={0 if given.described_only else -1} mtu=1412 ')
sound = 'film.audio_0 ! queue ! rtppcmapay name=pay1 pt=8 min-ptime=20000000 max-ptime=20000000 '
factory.set_launch(f'( filesrc location={given.file} ! matroskademux name=film {video}{"" if given.silent else sound})')
if given.access:
    auth = GstRtspServer.RTSPAuth.new()
    user, password = given.access.read().splitlines()
    token = GstRtspServer.RTSPToken.new()
    token.set_string('media.factory.role', 'viewer')
    if given.scheme == 'digest':
        auth.set_supported_methods(GstRtsp.RTSPAuthMethod.DIGEST)
        auth.add_digest(user, password, token)
    else:
        auth.set_supported_methods(GstRtsp.RTSPAuthMethod.BASIC)
        auth.add_basic(GstRtspServer.RTSPAuth.make_basic(user, password), token)
    server.set_auth(auth)
    permissions = GstRtspServer.RTSPPermissions.new()
    permissions.add_permission_for_role('viewer', 'media.factory.access', True)
    permissions.add_permission_for_role('viewer', 'media.factory.construct', True)
    factory.set_permissions(permissions)
server.get_mount_points().add_factory('/camera', factory)
server.attach(None)
print('ready', flush=True)
GLib.MainLoop().run()
