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
  grounds: {
    "each joint of a shaft": "cada junta de un cardán",
    "last shaft of a set of several": "último cardán de un grupo de varios",
    "each joint": "cada junta",
    "smooth running": "marcha suave",
    "early wear above": "por encima, desgaste temprano",
    "power take-off with a flange": "toma de fuerza con brida",
    "shaft with a single joint": "cardán con una sola junta",
    "each shaft of a set but the last": "cada cardán de un grupo menos el último",
    "odd joint of a two-piece shaft": "junta impar de un cardán de dos tramos",
    "motor homes, and shafts ahead of a transfer case or auxiliary gearbox":
      "casas rodantes, y cardanes delante de una caja de transferencia o auxiliar",
    "two joints of a shaft": "las dos juntas de un cardán",
    "high torque or speed, 1 to 1.5 degrees: the stricter": "par o velocidad altos, 1 a 1,5 grados: lo más estricto",
    "high torque or speed, 1 to 1.5 degrees: the wider": "par o velocidad altos, 1 a 1,5 grados: lo más amplio",
    "low speed, 3 to 5 degrees tolerated: the stricter": "velocidad baja, se toleran 3 a 5 grados: lo más estricto",
    "low speed, 3 to 5 degrees tolerated: the wider": "velocidad baja, se toleran 3 a 5 grados: lo más amplio",
    "phase of the yokes": "fase de las horquillas",
    "yokes parallel": "horquillas paralelas",
    "that of a joint at 3 degrees": "la de una junta a 3 grados",
    "a guide of SAE as recalled": "una guía de SAE, de memoria",
    "about; implied by its table of angles": "aproximado; se deduce de su tabla de ángulos",
    "the same guide, sometimes": "la misma guía, a veces",
    "inertia of the shaft, driving": "inercia del cardán, tirando",
    "inertia of the shaft, coasting": "inercia del cardán, reteniendo",
    "Driving side turns steadily; rigid shafts, no play; rotation counted from the driving yoke in the plane of the shafts.":
      "El lado conductor gira constante; árboles rígidos, sin juego; el giro se cuenta desde la horquilla conductora en el plano de los árboles.",
    "w2/w1 = cos b / (1 - sin^2 b cos^2 t); from cos b to 1/cos b":
      "w2/w1 = cos b / (1 - sen^2 b cos^2 t); de cos b a 1/cos b",
    "U = 1/cos b - cos b = tan b sin b": "U = 1/cos b - cos b = tan b sen b",
    "a2 = -w1^2 cos b sin 2t sin^2 b / (1 - sin^2 b cos^2 t)^2; greatest where s^2 x^2 + (2 - s^2) x = 2 s^2, x = cos 2t, s = sin b":
      "a2 = -w1^2 cos b sen 2t sen^2 b / (1 - sen^2 b cos^2 t)^2; máxima donde s^2 x^2 + (2 - s^2) x = 2 s^2, x = cos 2t, s = sen b",
    "Small angles: 0.5 % low at 10 degrees, 2.5 % at 20.":
      "Ángulos pequeños: da 0,5 % de menos a 10 grados, 2,5 % a 20.",
    "angle between the unit vectors of the two shafts": "ángulo entre los vectores unitarios de los dos árboles",
    "Exact for any two directions, as far as their inclinations were read.":
      "Exacta para dos direcciones cualesquiera, en lo que se leyeron bien sus inclinaciones.",
    "cos r = s2/s1 of the product of joint and phase matrices; coplanar: cos b1 / cos b2 x cos b3 ..., inverted if above 1":
      "cos r = s2/s1 del producto de las matrices de juntas y fases; en un plano: cos b1 / cos b2 x cos b3 ..., invertido si pasa de 1",
    "Exact for rigid shafts without play, in one plane or not. Masses do not bend or twist anything.":
      "Exacta para árboles rígidos sin juego, en un plano o no. Las masas no doblan ni tuercen nada.",
    "r = sqrt(|+-b1^2 +-b2^2 +-b3^2|), each turned by twice the angle of plane and yokes":
      "r = sqrt(|+-b1^2 +-b2^2 +-b3^2|), cada uno girado en el doble del ángulo de plano y horquillas",
    "Small angles: 0.1 % at 5 degrees, 0.3 % at 10. Poor where nearly nothing is left.":
      "Ángulos pequeños: 0,1 % a 5 grados, 0,3 % a 10. Mala donde casi no queda nada.",
    "rounded down to whole degrees": "redondeado hacia abajo a grados enteros",
    "power take-off shafts; its basis is printed as 100 rad/s² and fits 1000; flat at 11° 30' up to 1500 rev/min":
      "cardanes de toma de fuerza; su base está impresa como 100 rad/s² y concuerda con 1000; constante en 11° 30' hasta 1500 rev/min",
    "an older chart as recalled; confirm before use": "un cuadro más antiguo, de memoria; confírmelo antes de usarlo",
    "solid-bar shaft, from time to time": "cardán de barra maciza, de vez en cuando",
    "solid-bar shaft, little torque": "cardán de barra maciza, poco par",
    "a shaft of 18 to 57 in: stay below": "un cardán de 18 a 57 in: quédese por debajo",
    "ends parallel: length in inches over 5": "extremos paralelos: longitud en pulgadas entre 5",
    "ends meeting: length in inches over 10": "extremos que se cruzan: longitud en pulgadas entre 10",
    "arctan sqrt(tan^2 T + tan^2 S); exact from one shaft's axis":
      "arctan sqrt(tan^2 T + tan^2 S); exacta desde el eje de un árbol",
    "arccos(cos T cos S); exact with one shaft level": "arccos(cos T cos S); exacta con un árbol a nivel",
    "height = base x tan(change)": "altura = base x tan(cambio)",
    "The joint centres are taken to stay where they are. Set the change, then measure all angles again.":
      "Se toma que los centros de las juntas quedan donde están. Haga el cambio, y mida después todos los ángulos otra vez.",
    "arctan(rise/run), run level; arcsin(rise/run), run along the shaft":
      "arctan(altura/distancia), distancia a nivel; arcsen(altura/distancia), distancia a lo largo del cardán",
    "Between two points of the shaft's own axis.": "Entre dos puntos del propio eje del cardán.",
  },
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
