// Lo que se dice de los ángulos de un cardán.
import { list } from "../matcher/speech-words";
import type { Change } from "./correct";
import type { CalculationWords, Kit } from "./description";
import { turning } from "./speech-cautions";

const member: Record<string, string> = {
  gearbox: "extremo conductor",
  shaft: "cardán",
  rear: "segundo cardán",
  axle: "extremo conducido",
};

const steep = "Más de 80° no es ninguna transmisión: mire si altura y distancia están cambiadas.";
const whole = "Una vuelta entera son 360°, así que de −180 a 180 se dice todo.";

export const angles: CalculationWords = {
  title: "Ángulos del cardán",
  inputs: {
    joints: {
      label: "Juntas",
      options: { "1": "una", "2": "dos", "3": "tres" },
    },
    gearbox: { label: "Extremo conductor, de lado", why: steep },
    shaft: { label: "Cardán, de lado", why: steep },
    rear: { label: "Segundo cardán, de lado", why: steep },
    axle: { label: "Extremo conducido, de lado", why: steep },
    speed: {
      label: "Velocidad del cardán",
      why: "Por debajo de 1 rev/min no hay nada que calcular; por encima de 20 000 no gira ningún cardán así.",
    },
    read: {
      label: "Cómo se leyeron los ángulos",
      options: { level: "inclinómetro sobre la pieza", projected: "vista de lado y de planta, o desplazamientos" },
    },
    gearboxplan: { label: "Extremo conductor, en planta", why: steep },
    shaftplan: { label: "Cardán, en planta", why: steep },
    rearplan: { label: "Segundo cardán, en planta", why: steep },
    axleplan: { label: "Extremo conducido, en planta", why: steep },
    turn: { label: "Horquillas del cardán giradas", why: whole },
    turn2: { label: "Horquillas del segundo cardán giradas", why: whole },
    inertia: {
      label: "Inercia de lo que se mueve",
    },
    aim: {
      label: "Ángulo residual al que se quiere bajar",
    },
    gearboxbase: { label: "Entre los soportes del extremo conductor" },
    axlebase: { label: "Largo del asiento de la ballesta en el eje" },
    shaftlength: {
      label: "Longitud del cardán",
    },
    rearlength: { label: "Longitud del segundo cardán" },
  },
  parts: {
    angles: "Ángulos",
    turn: "A lo largo de una vuelta",
    acceleration: "Aceleración",
    speed: "Ángulo a esta velocidad, según los cuadros publicados",
    change: "Qué cambiar",
  },
  cautions: turning,
  unchecked: [
    "Los ángulos se tomaron como están. No se vio qué hacen de ellos el recorrido de la suspensión, la carga y el giro por el par.",
    "No se comprobó si la junta misma llega a su ángulo sin tocar: lo dice su fabricante.",
    "No se miraron el juego, las crucetas gastadas ni el tubo doblado.",
  ],
};

export const say = {
  member,
  joint: (n: number, of: number): string => (of === 1 ? "Ángulo de la junta" : `Ángulo de la junta ${n}`),
  jointAngle: "Ángulo de una junta",
  short: (n: number): string => `junta ${n}`,
  shaft: (n: number): string => `cardán ${n}`,
  phase: "Horquillas fuera de donde se compensan",
  equality: "Diferencia de los ángulos de las juntas",
  residual: "Ángulo residual",
  residualShop: "Ángulo residual, fórmula de taller",
  fluctuation: "Extremo conducido, del más rápido al más lento",
  ratio: "Lado de salida de la primera junta en su punto más rápido, frente al extremo conductor",
  shopForms: (n: number, forms: readonly string[]): string =>
    `Junta ${n} por las fórmulas en uso, de lado S y en planta T: ${list(forms)}. El ángulo exacto es el de arriba.`,
  plane: (n: number, turn: string): string =>
    `Los planos de las dos juntas del cardán ${n} están a ${turn} uno de otro: sus horquillas se compensan mejor giradas en eso, si los ángulos de las juntas son iguales.`,
  torsional: "Aceleración torsional, extremo conducido",
  small: "Lo mismo por la fórmula de ángulos pequeños",
  drive: (n: number, of: number): string => `Aceleración de inercia${of > 1 ? ` del cardán ${n}` : ""}, tirando`,
  coast: (n: number, of: number): string => `Aceleración de inercia${of > 1 ? ` del cardán ${n}` : ""}, reteniendo`,
  inertiaTorque: "Par que sacude lo que se mueve",
  inertiaFormula: "T = I × aceleración",
  beyond: "fuera del cuadro",
  greatest: "Mayor ángulo de una junta a esta velocidad",
  atMost: (text: string): string => `a lo más ${text}`,
  series: (list_: readonly (readonly [string, string | null])[], ground: string): string =>
    `Series de un fabricante para un cardán de cerca de 1,5 m a esta velocidad: ${list_.map(([id, angle]) => `${id} ${angle ?? "no tan rápido"}`).join(", ")} (${ground}).`,
  chartRule:
    "Entre dos velocidades impresas se toma el ángulo menor. Los cuadros no coinciden; cuál vale lo dice el fabricante de la junta.",
  nothingToChange: (residual: string): string =>
    `El ángulo residual de ${residual} no pasa de lo que se pidió: no hay nada que cambiar.`,
  oneOf: "Una de estas cosas lo logra, o se acerca tanto como puede un solo cambio:",
  afterwards:
    "Se toma que los centros de las juntas quedan donde están. Haga el cambio, y mida después todos los ángulos otra vez.",
  noChange: "Ningún cambio solo de hasta 20° lo baja. Tienen que cambiar dos extremos, o las horquillas.",
  drawing: {
    title: "El cardán con los ángulos escritos, de lado y desde arriba. Las longitudes no están a escala.",
    side: "de lado",
    above: "desde arriba",
  },
  turn: {
    title: (names: readonly string[]): string =>
      `Velocidad a lo largo de una vuelta del extremo conductor, en tanto por ciento por encima y por debajo de la suya: ${list(names)}. La línea llena es el extremo conducido.`,
    x: "Giro del extremo conductor, °",
    y: "Velocidad, % de más o de menos",
  },
  change: (change: Change, ids: readonly string[], words: Kit["words"]): string => {
    const left = `Ángulo residual entonces: ${words("angle", change.residual)}, con ${list(change.angles.map((a) => words("angle", a)))} en las juntas.`;
    const who = member[ids[change.at] ?? ""] ?? "";
    if (change.kind === "yokes")
      return `Gire las horquillas del cardán ${change.at + 1} una contra otra ${words("angle", change.change)}, hasta ${words("angle", change.to)}. ${left}`;
    if (change.kind === "bearing")
      return `${change.change > 0 ? "Baje" : "Suba"} el soporte central ${words("length", Math.abs(change.change), 1)}. ${left}`;
    const way =
      change.kind === "side"
        ? `de lado de ${words("angle", change.from)}`
        : `en planta de ${words("angle", change.from)}`;
    const shim =
      change.shim === null
        ? ""
        : ` Eso lo hace un suplemento de ${words("length", Math.abs(change.shim), 1)} en su base.`;
    return `Incline el ${who} ${way} a ${words("angle", change.to)}, en ${words("angle", change.change)}.${shim} ${left}`;
  },
};
