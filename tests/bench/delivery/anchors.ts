/** Two well-known job queues on the same server, each in its best documented setting that is equally durable. Installed when first needed. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import pg from "pg";

const FOLDER = fileURLToPath(new URL("../anchors", import.meta.url));
const SCHEMA = { boss: "anchor_boss", worker: "anchor_worker" };

/** What a job does: the same for all. */
export type Job = (n: number) => Promise<void>;
export interface Anchor {
  readonly name: string;
  /** what the next drain finds */
  fill(rows: number): Promise<void>;
  /** @returns milliseconds until all are done, and their completion is kept */
  drain(rows: number, job: Job): Promise<number>;
  close(): Promise<void>;
}

export function installAnchors(): void {
  if (existsSync(join(FOLDER, "node_modules", "pg-boss")) && existsSync(join(FOLDER, "node_modules", "graphile-worker"))) return;
  const { status, stderr } = spawnSync("npm", ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"], { cwd: FOLDER, encoding: "utf8" });
  if (status !== 0) throw new Error(`the queues to compare with could not be installed: ${stderr}`);
}

async function load<T>(name: string): Promise<T> {
  const found = createRequire(join(FOLDER, "package.json")).resolve(name);
  return (await import(pathToFileURL(found).href)) as T;
}

interface Boss {
  on(event: "error", heard: (error: Error) => void): void;
  start(): Promise<unknown>;
  stop(options: { graceful: boolean }): Promise<void>;
  createQueue(name: string): Promise<void>;
  insert(name: string, jobs: { data: { n: number } }[]): Promise<unknown>;
  fetch(name: string, options: { batchSize: number }): Promise<{ id: string; data: { n: number } }[]>;
  complete(name: string, id: string | string[]): Promise<unknown>;
}

/** @param together complete a batch by one statement when all of it is done; else each job by itself as soon as it is */
export async function pgBoss(url: string, batch: number, together: boolean): Promise<Anchor> {
  const { PgBoss } = await load<{ PgBoss: new (options: object) => Boss }>("pg-boss");
  const boss = new PgBoss({ connectionString: url, max: 10, schema: SCHEMA.boss, supervise: false, schedule: false });
  boss.on("error", (error) => {
    throw error;
  });
  await boss.start();
  const queue = together ? "together" : "each";
  await boss.createQueue(queue);
  return {
    name: `pg-boss 12.38.0, ${together ? "a batch completed at once" : "each completed by itself"}`,
    async fill(rows) {
      for (let n = 0; n < rows; n += 500) await boss.insert(queue, Array.from({ length: Math.min(500, rows - n) }, (_, i) => ({ data: { n: n + i } })));
    },
    async drain(rows, job) {
      const started = performance.now();
      for (let done = 0; done < rows; ) {
        const jobs = await boss.fetch(queue, { batchSize: batch });
        await Promise.all(
          jobs.map(async ({ id, data }) => {
            await job(data.n);
            if (!together) await boss.complete(queue, id);
          }),
        );
        if (together) await boss.complete(queue, jobs.map(({ id }) => id));
        done += jobs.length;
        if (jobs.length === 0) throw new Error(`pg-boss gave ${done} of ${rows} jobs`);
      }
      return performance.now() - started;
    },
    close: () => boss.stop({ graceful: false }),
  };
}

interface Worker {
  run(options: object): Promise<{ stop(): Promise<void> }>;
  makeWorkerUtils(options: object): Promise<{ migrate(): Promise<void>; release(): Promise<void> }>;
  Logger: new (make: () => () => void) => object;
  WorkerPreset: object;
}

/** @param together gather completions that come at the same time into one statement; else each job by its own */
export async function graphileWorker(url: string, batch: number, together: boolean): Promise<Anchor> {
  const { run, makeWorkerUtils, Logger, WorkerPreset } = await load<Worker>("graphile-worker");
  const pool = new pg.Pool({ connectionString: url, max: 10 });
  const quiet = () => {};
  pool.on("error", quiet);
  pool.on("connect", (client) => client.on("error", quiet));
  const logger = new Logger(() => quiet);
  const utils = await makeWorkerUtils({ pgPool: pool, schema: SCHEMA.worker, logger });
  await utils.migrate();
  await utils.release();
  const left = async () => Number((await pool.query(`select count(*) from ${SCHEMA.worker}._private_jobs`)).rows[0]?.count);
  const delay = together ? 0 : -1;
  return {
    name: `graphile-worker 0.17.3, ${together ? "completions gathered" : "each completed by itself"}`,
    async fill(rows) {
      await pool.query(`select ${SCHEMA.worker}.add_job('send', json_build_object('n', n)) from generate_series(0, $1::int - 1) n`, [rows]);
    },
    async drain(rows, job) {
      let done = 0;
      const all = Promise.withResolvers<void>();
      const started = performance.now();
      const runner = await run({
        preset: {
          extends: [WorkerPreset],
          worker: { schema: SCHEMA.worker, concurrentJobs: batch, localQueue: { size: batch }, completeJobBatchDelay: delay, failJobBatchDelay: delay },
        },
        pgPool: pool, logger, noHandleSignals: true,
        taskList: {
          async send({ n }: { n: number }) {
            await job(n);
            if (++done === rows) all.resolve();
          },
        },
      });
      await all.promise;
      // stopping waits for the last completions; the time ends when no row is left
      const stopped = runner.stop();
      while ((await left()) > 0 && performance.now() - started < 60_000) await new Promise((wait) => setTimeout(wait, 2));
      const ms = performance.now() - started;
      await stopped;
      return ms;
    },
    async close() {
      await pool.end();
    },
  };
}
