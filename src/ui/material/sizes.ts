/** The best connections are drawn on the neck; more would hide it. */
export const CONNECTIONS_DRAWN = 6;
