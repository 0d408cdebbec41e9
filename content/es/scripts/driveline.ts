import type { Line, Report } from "../../driveline/description";

export const words = {
  exampleIn: "Los datos del ejemplo están en los campos.",
  startedOver: "Empezado de nuevo.",
  spoken: (report: Report): string => {
    const wrong = report.refusals[0];
    if (wrong) return `${wrong.label}: ${wrong.says}`;
    const leads = report.lines.filter((line) => line.lead);
    const heads = report.lines.filter((line, n) => report.lines.findIndex((l) => l.part === line.part) === n);
    return (leads.length > 0 ? leads : heads)
      .slice(0, 2)
      .map((line) => `${line.label}: ${figure(line)}`)
      .join("; ");
  },
};

// A value with its unit, and the rows it names.
function figure({ value, unit, rows }: Line): string {
  const whole = `${value}${unit === "°" ? "" : " "}${unit}`.trim();
  return [whole, ...(rows ?? [])].filter((part) => part !== "").join("; ");
}
