/** Derivatives of the first `size` entries of y at t, into `out`. */
export type Slope = (t: number, y: Float64Array, out: Float64Array) => void;

/** One pair of formulas with its work space; a step allocates nothing. */
export interface DormandPrince {
  /** Unknowns in use, at most the room it was made with; set it between steps. */
  size: number;
  /** Slope at the start of the step to come; the last stage of an accepted step becomes it by `accept`. */
  readonly first: Float64Array;
  /** The end of the last tried step. */
  readonly end: Float64Array;
  /** Slope at the end of the last tried step. */
  readonly last: Float64Array;
  /** Difference of the fifth- and fourth-order ends of the last tried step. */
  readonly error: Float64Array;
  /** Tries a step of length h from (t, y), with `first` holding the slope there. */
  readonly attempt: (slope: Slope, t: number, y: Float64Array, h: number) => void;
  /** The tried step at a share 0–1 of its length, fourth order, into `out`; valid until the next attempt. */
  readonly between: (share: number, out: Float64Array) => void;
  /** Makes the slope at the end the slope at the start of the next step. */
  readonly accept: () => void;
}

/**
 * Explicit Runge–Kutta pair of orders 5 and 4 with seven stages, the last one the first of the next step.
 * J. R. Dormand, P. J. Prince: A family of embedded Runge–Kutta formulae, J. Comput. Appl. Math. 6 (1980), p. 23;
 * fourth-order dense output by Shampine, as in Hairer, Nørsett, Wanner: Solving Ordinary Differential
 * Equations I, 2nd ed., II.6 (coefficients from memory; the tests check their order).
 *
 * @param room the most unknowns it will be used for
 */
export const createDormandPrince = (room: number): DormandPrince => {
  const array = (): Float64Array => new Float64Array(room);
  const [k1, k2, k3, k4, k5, k6, k7] = [array(), array(), array(), array(), array(), array(), array()];
  const [start, stage, end, error] = [array(), array(), array(), array()];
  let length = 0;
  const method: DormandPrince = {
    size: room,
    first: k1,
    end,
    last: k7,
    error,
    attempt: (slope, t, y, h) => {
      const n = method.size;
      length = h;
      for (let i = 0; i < n; i++) {
        start[i] = y[i] as number;
        stage[i] = (y[i] as number) + h * (1 / 5) * (k1[i] as number);
      }
      slope(t + h / 5, stage, k2);
      for (let i = 0; i < n; i++)
        stage[i] = (y[i] as number) + h * ((3 / 40) * (k1[i] as number) + (9 / 40) * (k2[i] as number));
      slope(t + (3 / 10) * h, stage, k3);
      for (let i = 0; i < n; i++)
        stage[i] =
          (y[i] as number) +
          h * ((44 / 45) * (k1[i] as number) - (56 / 15) * (k2[i] as number) + (32 / 9) * (k3[i] as number));
      slope(t + (4 / 5) * h, stage, k4);
      for (let i = 0; i < n; i++)
        stage[i] =
          (y[i] as number) +
          h *
            ((19372 / 6561) * (k1[i] as number) -
              (25360 / 2187) * (k2[i] as number) +
              (64448 / 6561) * (k3[i] as number) -
              (212 / 729) * (k4[i] as number));
      slope(t + (8 / 9) * h, stage, k5);
      for (let i = 0; i < n; i++)
        stage[i] =
          (y[i] as number) +
          h *
            ((9017 / 3168) * (k1[i] as number) -
              (355 / 33) * (k2[i] as number) +
              (46732 / 5247) * (k3[i] as number) +
              (49 / 176) * (k4[i] as number) -
              (5103 / 18656) * (k5[i] as number));
      slope(t + h, stage, k6);
      for (let i = 0; i < n; i++)
        end[i] =
          (y[i] as number) +
          h *
            ((35 / 384) * (k1[i] as number) +
              (500 / 1113) * (k3[i] as number) +
              (125 / 192) * (k4[i] as number) -
              (2187 / 6784) * (k5[i] as number) +
              (11 / 84) * (k6[i] as number));
      slope(t + h, end, k7);
      for (let i = 0; i < n; i++)
        error[i] =
          h *
          ((71 / 57600) * (k1[i] as number) -
            (71 / 16695) * (k3[i] as number) +
            (71 / 1920) * (k4[i] as number) -
            (17253 / 339200) * (k5[i] as number) +
            (22 / 525) * (k6[i] as number) -
            (1 / 40) * (k7[i] as number));
    },
    between: (share, out) => {
      const [s, r] = [share, 1 - share];
      for (let i = 0; i < method.size; i++) {
        const [y0, y1] = [start[i] as number, end[i] as number];
        const rise = y1 - y0;
        const bend = length * (k1[i] as number) - rise;
        const turn = rise - length * (k7[i] as number) - bend;
        const rest =
          length *
          ((-12715105075 / 11282082432) * (k1[i] as number) +
            (87487479700 / 32700410799) * (k3[i] as number) -
            (10690763975 / 1880347072) * (k4[i] as number) +
            (701980252875 / 199316789632) * (k5[i] as number) -
            (1453857185 / 822651844) * (k6[i] as number) +
            (69997945 / 29380423) * (k7[i] as number));
        out[i] = y0 + s * (rise + r * (bend + s * (turn + r * rest)));
      }
    },
    accept: () => {
      for (let i = 0; i < method.size; i++) k1[i] = k7[i] as number;
    },
  };
  return method;
};
