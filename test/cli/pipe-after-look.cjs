// Replaces a site file by a pipe once it has been looked at, before it is opened.
const { execFileSync } = require('node:child_process');
const fs = require('node:fs');
const { statSync } = fs;
fs.statSync = (path, ...rest) => {
  const found = statSync(path, ...rest);
  if (String(path).endsWith('.site.yaml') && found.isFile()) {
    fs.rmSync(path);
    execFileSync('mkfifo', [path]);
  }
  return found;
};
