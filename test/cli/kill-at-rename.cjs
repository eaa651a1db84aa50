// Ends the process as a power cut would, when it is about to give a file its name.
require('node:fs').renameSync = () => process.kill(process.pid, 'SIGKILL');
