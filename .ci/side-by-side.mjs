// Runs scripts of package.json beside each other, since each keeps one processor busy: prints what each says once it ends, under its
// name, and fails where one did.

import { spawn } from 'node:child_process';

const results = await Promise.all(process.argv.slice(2).map(run));
process.exit(results.every((isGood) => isGood) ? 0 : 1);

/** @param {string} script */
function run(script) {
  return new Promise((resolve) => {
    /** @type {Buffer[]} */
    const said = [];
    const npm = spawn('npm', ['run', '--silent', script], {
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    });
    npm.stdout.on('data', (part) => said.push(part));
    npm.stderr.on('data', (part) => said.push(part));
    npm.on('error', (error) => end(error.message, false));
    npm.on('close', (status, signal) =>
      end(status === 0 ? 'good' : `failed (${status ?? signal})`, status === 0),
    );

    /**
     * @param {string} result
     * @param {boolean} isGood
     */
    function end(result, isGood) {
      process.stdout.write(`> ${script}: ${result}\n`);
      process.stdout.write(Buffer.concat(said));
      resolve(isGood);
    }
  });
}
