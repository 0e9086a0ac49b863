/** Whoever reads our output may stop reading (`npm run -s lines | head`): then there is nobody left to talk to, and no error. */
export function endWhenNobodyReads(output: NodeJS.WriteStream = process.stdout): void {
  output.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(0);
    throw error;
  });
}
