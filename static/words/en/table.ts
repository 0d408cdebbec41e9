// What the filter of a table says.
export const words = {
  all: (all: number) => `${all} rows.`,
  some: (shown: number, all: number) => `${shown} of ${all} rows.`,
  none: (sized: boolean) =>
    `No row fits.${sized ? " A size is cap and across, such as 27 x 82 or 1.062 x 3.219." : ""}`,
  sortBy: (column: string) => `sort by ${column}`,
} as const;
