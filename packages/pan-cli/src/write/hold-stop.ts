/**
 * Writes without being stopped halfway: a Ctrl-C that comes meanwhile counts once the writing is over, and the
 * program then ends as stopped.
 */
export const holdStop = async (write: () => void): Promise<void> => {
  let stopped = false;
  const note = (): void => {
    stopped = true;
  };
  process.on('SIGINT', note);
  try {
    write();
    // A signal is only told of when the program next waits.
    await new Promise((done) => setImmediate(done));
  } finally {
    process.off('SIGINT', note);
  }
  if (stopped) process.kill(process.pid, 'SIGINT');
};
