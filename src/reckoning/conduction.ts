/**
 * Transient conduction in layered walls: vertex-centred finite volumes in depth, an L-stable second-order Runge-Kutta method in time.
 *
 * Storage and conduction are linear and factorised once per step length. Whatever is not linear (radiation, convection, a gas)
 * enters through ports: nodes that receive a heat flow. A step asks for the flows as a function of the temperatures the ports
 * would have without them, so energy is conserved to rounding whatever the flows are.
 */

/** One homogeneous layer. Layers are listed from the inside out. */
export interface Layer {
  readonly thickness_m: number;
  readonly conductivity_W_per_mK: number;
  readonly density_kg_per_m3: number;
  readonly heat_capacity_J_per_kgK: number;
  /** intervals between nodes, at least 1 */
  readonly cells: number;
  /** each interval is this many times the one before it; 1 is even */
  readonly growth?: number;
  /** area at the inner and the outer side; between them it changes linearly, as round a hollow cylinder */
  readonly area_m2: readonly [inner: number, outer: number];
  /** thermal resistance of the joint or gap to the next layer out, m2K/W; 0 is a perfect bond */
  readonly joint_m2K_per_W?: number;
}

/** A chain of nodes that store heat and conduct it to their neighbours; a link of 0 W/K ends one wall and starts the next. */
export interface Mesh {
  readonly capacity_J_per_K: Float64Array;
  /** between node i and i + 1 */
  readonly link_W_per_K: Float64Array;
  /** to surroundings of a given temperature, per node */
  readonly loss_W_per_K: Float64Array;
}

export interface Wall extends Mesh {
  /** node at the inner side of each layer */
  readonly first: readonly number[];
  /** node at the outer side of each layer */
  readonly last: readonly number[];
}

/**
 * Nodes and links of a layered wall: C_i = sum rho c V over the two half intervals at the node, G = k A / dx at mid interval.
 * @throws RangeError for a layer without thickness, cells or area
 */
export function wallOf(layers: readonly Layer[]): Wall {
  const capacity: number[] = [];
  const link: number[] = [];
  const first: number[] = [];
  const last: number[] = [];
  let joint = 0;
  for (const layer of layers) {
    const {
      thickness_m,
      cells,
      growth = 1,
      area_m2: [inner, outer],
    } = layer;
    if (!(thickness_m > 0 && cells >= 1 && inner > 0 && outer > 0))
      throw new RangeError("a layer needs a thickness, a cell and an area above 0");
    if (capacity.length === 0 || joint > 0) {
      if (capacity.length > 0) link.push(inner / joint);
      capacity.push(0);
    }
    first.push(capacity.length - 1);
    const start_m = growth === 1 ? thickness_m / cells : (thickness_m * (growth - 1)) / (growth ** cells - 1);
    for (let cell = 0, depth_m = 0; cell < cells; cell++) {
      const dx_m = start_m * growth ** cell;
      const area = (share: number): number => inner + ((outer - inner) * (depth_m + share * dx_m)) / thickness_m;
      const half_J_per_K = (share: number): number => layer.density_kg_per_m3 * layer.heat_capacity_J_per_kgK * (dx_m / 2) * area(share);
      capacity[capacity.length - 1]! += half_J_per_K(0.25);
      capacity.push(half_J_per_K(0.75));
      link.push((layer.conductivity_W_per_mK * area(0.5)) / dx_m);
      depth_m += dx_m;
    }
    last.push(capacity.length - 1);
    joint = layer.joint_m2K_per_W ?? 0;
  }
  return {
    capacity_J_per_K: Float64Array.from(capacity),
    link_W_per_K: Float64Array.from(link),
    loss_W_per_K: new Float64Array(capacity.length),
    first,
    last,
  };
}

/** Put chains one after another without a link between them. @returns the whole and the offset of each part */
export function joined(meshes: readonly Mesh[]): { mesh: Mesh; offsets: number[] } {
  const size = meshes.reduce((sum, mesh) => sum + mesh.capacity_J_per_K.length, 0);
  const mesh = { capacity_J_per_K: new Float64Array(size), link_W_per_K: new Float64Array(size - 1), loss_W_per_K: new Float64Array(size) };
  let offset = 0;
  const offsets = meshes.map((part) => {
    const at = offset;
    mesh.capacity_J_per_K.set(part.capacity_J_per_K, at);
    mesh.link_W_per_K.set(part.link_W_per_K, at);
    mesh.loss_W_per_K.set(part.loss_W_per_K, at);
    offset += part.capacity_J_per_K.length;
    return at;
  });
  return { mesh, offsets };
}

/**
 * Singly diagonal implicit Runge-Kutta, two stages, L-stable, order 2: gamma = 1 - 1/sqrt(2). Alexander, SIAM J. Numer.
 * Anal. 14 (1977) 1006.
 */
export const GAMMA = 1 - Math.SQRT1_2;

/** C/(gamma dt) + K for one step length, factorised as L D L', with the answer of every port to one watt at another. */
export interface Stepper {
  readonly step_s: number;
  readonly ports: readonly number[];
  /** rise of port p per watt into port q within one stage, K/W, at [p * ports + q] */
  readonly response_K_per_W: Float64Array;
  readonly rate_W_per_K: Float64Array;
  readonly loss_W_per_K: Float64Array;
  readonly multiplier: Float64Array;
  readonly inversePivot: Float64Array;
  /** rise of each node per watt into a port, with the stretch of nodes it reaches */
  readonly influence: readonly { readonly from: number; readonly to: number; readonly K_per_W: Float64Array }[];
}

/** Factorise one step length. `ports` are node numbers. */
export function stepper(mesh: Mesh, step_s: number, ports: readonly number[]): Stepper {
  const size = mesh.capacity_J_per_K.length;
  const rate_W_per_K = mesh.capacity_J_per_K.map((capacity) => capacity / (GAMMA * step_s));
  const multiplier = new Float64Array(size);
  const inversePivot = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const inward = i > 0 ? mesh.link_W_per_K[i - 1]! : 0;
    const outward = i < size - 1 ? mesh.link_W_per_K[i]! : 0;
    multiplier[i] = i > 0 ? inward * inversePivot[i - 1]! : 0;
    inversePivot[i] = 1 / (rate_W_per_K[i]! + mesh.loss_W_per_K[i]! + inward + outward - multiplier[i]! * inward);
  }
  const influence = ports.map((port) => {
    const K_per_W = new Float64Array(size);
    K_per_W[port] = 1;
    substitute(multiplier, inversePivot, K_per_W);
    let from = port;
    let to = port;
    while (from > 0 && mesh.link_W_per_K[from - 1]! > 0) from--;
    while (to < size - 1 && mesh.link_W_per_K[to]! > 0) to++;
    return { from, to: to + 1, K_per_W };
  });
  const response_K_per_W = Float64Array.from(ports.flatMap((port) => influence.map((one) => one.K_per_W[port]!)));
  return { step_s, ports, response_K_per_W, rate_W_per_K, loss_W_per_K: mesh.loss_W_per_K, multiplier, inversePivot, influence };
}

function substitute(multiplier: Float64Array, inversePivot: Float64Array, x: Float64Array): void {
  let carried = x[0]!;
  for (let i = 1; i < x.length; i++) x[i] = carried = x[i]! + multiplier[i]! * carried;
  x[x.length - 1] = carried *= inversePivot[x.length - 1]!;
  for (let i = x.length - 2; i >= 0; i--) x[i] = carried = x[i]! * inversePivot[i]! + multiplier[i + 1]! * carried;
}

/**
 * The flows into the ports, W, written into `watts`, from the temperatures the ports would have without them.
 * `weight_s` is how long the stage counts in the step, for whoever sums up energy; the stage ends `reach` of the way through it.
 */
export type Flows = (portsWithoutFlow_C: Float64Array, watts: Float64Array, weight_s: number, reach: number) => void;

/**
 * One step in place: Y1 = y + g dt f(Y1), Y2 = y + (1 - g) dt f(Y1) + g dt f(Y2), y' = Y2.
 * @param surroundings_C temperature the losses go to, at the end of the first stage and at the end of the step
 */
export function step(one: Stepper, temperature_C: Float64Array, surroundings_C: readonly [number, number], flows: Flows, work: Work): void {
  stage(one, temperature_C, surroundings_C[0], flows, work, (1 - GAMMA) * one.step_s, GAMMA);
  const ratio = (1 - GAMMA) / GAMMA;
  const { next } = work;
  for (let i = 0; i < next.length; i++) temperature_C[i] = temperature_C[i]! + ratio * (next[i]! - temperature_C[i]!);
  stage(one, temperature_C, surroundings_C[1], flows, work, GAMMA * one.step_s, 1);
  temperature_C.set(next);
}

/** Arrays a run of steps writes into, so that no step allocates. */
export interface Work {
  readonly next: Float64Array;
  readonly bare: Float64Array;
  readonly watts: Float64Array;
}
export const workFor = (nodes: number, ports: number): Work => ({
  next: new Float64Array(nodes),
  bare: new Float64Array(ports),
  watts: new Float64Array(ports),
});

function stage(
  one: Stepper,
  from_C: Float64Array,
  surroundings_C: number,
  flows: Flows,
  work: Work,
  weight_s: number,
  reach: number,
): void {
  const { next, bare, watts } = work;
  const { rate_W_per_K, loss_W_per_K } = one;
  for (let i = 0; i < next.length; i++) next[i] = rate_W_per_K[i]! * from_C[i]! + loss_W_per_K[i]! * surroundings_C;
  substitute(one.multiplier, one.inversePivot, next);
  for (let p = 0; p < bare.length; p++) bare[p] = next[one.ports[p]!]!;
  flows(bare, watts, weight_s, reach);
  for (let p = 0; p < bare.length; p++) {
    const { from, to, K_per_W } = one.influence[p]!;
    const flow_W = watts[p]!;
    if (flow_W !== 0) for (let i = from; i < to; i++) next[i] = next[i]! + flow_W * K_per_W[i]!;
  }
}

/** Heat held above 0 °C, J. */
export function heat_J(mesh: Mesh, temperature_C: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < temperature_C.length; i++) sum += mesh.capacity_J_per_K[i]! * temperature_C[i]!;
  return sum;
}
