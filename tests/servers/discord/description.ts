/** Each request against Discord's own public API description (OpenAPI 3.1), where its data file lies beside the project. */
import { existsSync, readFileSync } from "node:fs";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";

const FILE = new URL("../../../../shared/protocols/discord-openapi-subset.json", import.meta.url);

/** @returns what is wrong with a request's body, empty when nothing is; every check is empty where the description is absent */
export type Check = (method: string, path: string, body: unknown) => string[];

interface Operation {
  readonly requestBody?: { readonly content: Readonly<Record<string, unknown>> };
}

export const isDescribed = (): boolean => existsSync(FILE);

export function description(): Check {
  if (!isDescribed()) return () => [];
  const spec = JSON.parse(readFileSync(FILE, "utf8"), (key, value) => {
    // the description says integer where the platform and its documentation take a string of digits
    if (key === "default_member_permissions" && value && typeof value === "object") return { type: ["string", "null"], pattern: "^\\d+$" };
    return value;
  });
  const ajv = new Ajv2020({ strict: false });
  for (const format of ["snowflake", "nonce", "int32", "int64", "double", "uri", "date-time"]) ajv.addFormat(format, true);
  ajv.addSchema(spec, "spec");
  const routes = Object.entries(spec.paths as Record<string, Record<string, Operation>>).map(([template, operations]) => ({
    template, operations, pattern: new RegExp(`^${template.replace(/\{[^}]+\}/g, "[^/]+")}$`),
  }));
  // what is fixed comes before what fits anything: `@original` before `{message_id}`
  routes.sort((a, b) => a.template.split("{").length - b.template.split("{").length);
  const compiled = new Map<string, ValidateFunction | null>();
  return (method, path, body) => {
    const found = routes.find(({ pattern, operations }) => pattern.test(path) && operations[method.toLowerCase()]);
    if (!found) return [`${method} ${path} is not described`];
    const key = `${method} ${found.template}`;
    if (!compiled.has(key)) {
      const content = found.operations[method.toLowerCase()]?.requestBody?.content ?? {};
      const pointer = found.template.replaceAll("~", "~0").replaceAll("/", "~1");
      const where = `spec#/paths/${encodeURIComponent(pointer)}/${method.toLowerCase()}/requestBody/content/application~1json/schema`;
      compiled.set(key, content["application/json"] ? ajv.compile({ $ref: where }) : null);
    }
    const validate = compiled.get(key);
    if (!validate || body === undefined || validate(body)) return [];
    return [`${key}: ${ajv.errorsText(validate.errors).slice(0, 400)}`];
  };
}
