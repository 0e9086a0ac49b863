/** The weights are kept as text, a digit or a weight to the sign, in the signs of ASCII from nought on, short of the backslash. */
export const FIRST_SIGN = 48;
export const SIGNS = 44;
