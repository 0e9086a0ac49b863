/**
 * Many looks at once on PostgreSQL. Looks that run side by side ask the same questions about different people; those that come in the same turn
 * of the event loop are asked as one: the differing parameters become the rows of a list, and the question a lateral join beside it.
 */
import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  Kysely,
  PostgresAdapter,
  PostgresIntrospector,
  PostgresQueryCompiler,
  type QueryResult,
} from "kysely";
import type { Tx } from "./engine.ts";
import type { Tables } from "./schema.ts";

type Row = Record<string, unknown>;
interface Asked {
  readonly query: CompiledQuery;
  readonly settle: PromiseWithResolvers<QueryResult<unknown>>;
}

/** @returns the same transaction, to be read by many at the same time */
export function asOne(tx: Tx): Tx {
  let waiting: Asked[] = [];

  function flush(): void {
    const groups = Map.groupBy(waiting, ({ query }) => query.sql);
    waiting = [];
    for (const [text, group] of groups) void answer(tx, text, group);
  }

  const connection: DatabaseConnection = {
    executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
      const settle = Promise.withResolvers<QueryResult<unknown>>();
      if (waiting.length === 0) setImmediate(flush);
      waiting.push({ query, settle });
      return settle.promise as Promise<QueryResult<R>>;
    },
    streamQuery() {
      throw new Error("rows are read whole here");
    },
  };
  return new Kysely<Tables>({
    dialect: {
      createAdapter: () => new PostgresAdapter(),
      createDriver: () => driverOf(connection),
      createIntrospector: (db) => new PostgresIntrospector(db),
      createQueryCompiler: () => new PostgresQueryCompiler(),
    },
  }) as unknown as Tx;
}

const nothing = async (): Promise<void> => {};
function driverOf(connection: DatabaseConnection): Driver {
  const inside = async (): Promise<void> => {
    throw new Error("this is inside a transaction already");
  };
  return {
    init: nothing,
    acquireConnection: async () => connection,
    releaseConnection: nothing,
    destroy: nothing,
    beginTransaction: inside,
    commitTransaction: inside,
    rollbackTransaction: inside,
  };
}

async function answer(tx: Tx, text: string, group: readonly Asked[]): Promise<void> {
  try {
    const [first] = group;
    if (group.length === 1 || !/^\s*select\b/i.test(text) || !first) {
      for (const { query, settle } of group) settle.resolve(await tx.executeQuery(query));
      return;
    }
    const { rows } = await tx.executeQuery<Row>(joined(text, group.map(({ query }) => query.parameters)));
    const found = Map.groupBy(rows, ({ asked_n }) => Number(asked_n));
    for (const [n, { settle }] of group.entries()) settle.resolve({ rows: (found.get(n) ?? []).toSorted(inOrder).map(own) });
  } catch (error) {
    for (const { settle } of group) settle.reject(error);
  }
}

const inOrder = (a: Row, b: Row): number => Number(a.answered_n) - Number(b.answered_n);
const own = ({ asked_n: _, answered_n: __, ...row }: Row): Row => row;

/** @param asked the parameters of each; those that are the same for all stay parameters */
export function joined(text: string, asked: readonly (readonly unknown[])[]): CompiledQuery {
  const [first = []] = asked;
  const values: unknown[] = [];
  const differing = first.flatMap((_, at) => (asked.some((one) => one[at] !== first[at]) ? at : []));
  const list = asked.map((one, n) => `(${[n, ...differing.map((at) => `$${values.push(one[at])}${typed(one[at])}`)].join(", ")})`);
  const names = new Map(first.map((value, at) => [at, differing.includes(at) ? `asked.p${at}` : `$${values.push(value)}`]));
  const question = text.replace(/\$(\d+)/g, (_, number: string) => names.get(Number(number) - 1) ?? "");
  const columns = ["n", ...differing.map((at) => `p${at}`)].join(", ");
  return CompiledQuery.raw(
    `select asked.n as asked_n, answered.* from (values ${list.join(", ")}) as asked(${columns})
     cross join lateral (select row_number() over () as answered_n, question.* from (${question}) as question) as answered`,
    values,
  );
}

/** Ids compare byte by byte, as in the tables. */
function typed(value: unknown): string {
  if (typeof value !== "number") return `::text collate "C"`;
  return Number.isInteger(value) ? "::bigint" : "::double precision";
}
