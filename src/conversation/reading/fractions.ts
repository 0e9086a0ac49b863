/** Fractions written with a slash or one sign. */
import { isSign, type Token } from "./tokens.ts";

const FRACTION_PARTS = new Set([2, 3, 4, 8, 16]);

/** "1/2", "1 1/2", "12 ½" become one number; "25/11" and "3/4/2026" do not. */
export function joinFractions(tokens: readonly Token[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i] as Token;
    if (token.kind !== "number") {
      out.push(token);
      continue;
    }
    const slash = tokens[i + 1];
    const below = tokens[i + 2];
    const after = tokens[i + 3];
    let share: number | null = null;
    let end = token;
    if (
      slash?.kind === "sign" && slash.sign === "/" && below?.kind === "number" && !slash.gap && !below.gap
        && FRACTION_PARTS.has(below.value) &&
      token.value > 0 && token.value < below.value && Number.isInteger(token.value)
        && !(after?.kind === "sign" && after.sign === "/" && !after.gap) &&
      !isSign(tokens[i - 1], "/")
    ) {
      share = token.value / below.value;
      end = below;
      i += 2;
    } else if (token.value < 1 && token.decimals === 2 && token.at[1] - token.at[0] === 1) share = token.value;
    // "1-1/2 inches"
    const joint = out.at(-1);
    const whole = out.at(-2);
    if (share !== null && !token.gap && joint?.kind === "sign" && joint.sign === "-" && !joint.gap && whole?.kind === "number"
      && Number.isInteger(whole.value) && whole.value > 0 && whole.decimals === 0) out.pop();
    const before = out.at(-1);
    if (share !== null && before?.kind === "number" && (token.gap || joint !== before) && Number.isInteger(before.value) && before.value > 0
      && before.decimals === 0) {
      out[out.length - 1] = { ...before, value: before.value + share, decimals: 2, at: [before.at[0], end.at[1]] };
    } else {
      out.push(share === null ? token : { ...token, value: share, decimals: 2, at: [token.at[0], end.at[1]] });
    }
  }
  return out;
}
