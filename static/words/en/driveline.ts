import type { Report } from "../../driveline/description";

export const words = {
  exampleIn: "The figures of the example are in the fields.",
  startedOver: "Started over.",
  spoken: (report: Report): string => {
    const wrong = report.refusals[0];
    if (wrong) return `${wrong.label}: ${wrong.says}`;
    return report.lines
      .slice(0, 3)
      .map((line) => `${line.label}: ${line.value}${line.unit === "°" ? "" : " "}${line.unit}`.trim())
      .join("; ");
  },
};
