// Lo que se dice del par que lleva un cardán.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const ratio = "Las relaciones están entre 0,2 y 30.";
const unit = "Mire si la unidad de al lado es en la que se leyó.";

export const torque: CalculationWords = {
  title: "Par en el cardán",
  inputs: {
    by: {
      label: "El cardán lleva",
      options: {
        "low-gear": "lo que da el motor en la marcha más baja",
        slip: "lo que aguantan las ruedas antes de patinar",
        smaller: "lo menor de las dos cosas",
        given: "un par que se sabe",
      },
    },
    torque: { label: "Par en el cardán", why: unit },
    row: { label: "Fila del cuadro" },
    rating: { label: "Capacidad según el fabricante de la cruceta", why: unit },
    engine: { label: "Par máximo del motor", why: unit },
    rated: { label: "Ese par es", options: { net: "neto, como va montado", gross: "bruto, sin accesorios" } },
    gearbox: { label: "Caja de cambios", options: { manual: "manual", automatic: "automática, con convertidor" } },
    gear: { label: "Relación de la marcha más baja", why: ratio },
    stall: {
      label: "Multiplicación del convertidor parado",
      why: "Un convertidor multiplica por 1 a 5.",
    },
    transfer: { label: "Relación de la caja de transferencia, en baja", why: ratio },
    load: { label: "Carga sobre el eje motriz", why: unit },
    tyre: { label: "Radio de rodadura de la rueda", why: "Un radio, no un diámetro." },
    axle: { label: "Relación del eje", why: ratio },
    friction: {
      label: "Rozamiento de la rueda en el camino",
      why: "El hielo tiene cerca de 0,1, un neumático de carreras 1,5.",
    },
    efficiency: { label: "Rendimiento del eje", why: "Es menor que 1." },
    outside: { label: "Tubo, diámetro exterior", why: unit },
    wall: { label: "Tubo, grueso de la pared", why: unit },
    yield: {
      label: "Límite elástico del tubo",
      why: "De su certificado; el acero de construcción tiene 235 MPa (34 ksi) y más.",
    },
    shear: {
      label: "Módulo de cizalladura",
      why: "El acero tiene cerca de 80 GPa, el aluminio 26.",
    },
    length: { label: "Longitud del tubo", why: unit },
    angle: { label: "Ángulo de la junta", why: "Ninguna junta de cruz trabaja a más de 60°." },
    radius: { label: "Del centro de la cruz al medio de las agujas de un dado", why: unit },
    spline: { label: "Radio primitivo del estriado deslizante", why: unit },
    machine: {
      label: "Junta de máquina (DIN 808)",
      options: { no: "no", needle: "sí, de agujas", plain: "sí, de casquillos lisos" },
    },
  },
  parts: {
    "low-gear": "Lo que da el motor en la marcha más baja",
    slip: "Lo que aguantan las ruedas",
    rating: "Al lado de una capacidad",
    tube: "El tubo a torsión",
    couple: "Lo que hace el ángulo de la junta",
    machine: "Factor de una junta de máquina",
  },
  cautions: turning,
  unchecked: [
    "Los golpes: un embrague soltado de golpe, una rueda que agarra después de patinar, un choque. Pueden ser varias veces el par constante.",
    "Fatiga, soldaduras, costuras, abolladuras y estriados. El comienzo de la fluencia del metal sano no es un límite al que trabajar.",
    "La cruceta misma: su capacidad la da su fabricante.",
  ],
};

const bySource: Record<string, string> = {
  "dana-j3311": "factores de Dana",
  "cat-rehs2891": "factores de Caterpillar",
};

export const say = {
  lowGear: (id: string): string => `Marcha más baja, ${bySource[id] ?? id}`,
  factors: (id: string, says: string): string => `Los ${bySource[id] ?? id}: ${says}.`,
  differ:
    "Las dos fuentes difieren en lo que toman para la caja de cambios. Donde una parte de abajo sigue con este par, toma el mayor.",
  slip: "Las ruedas patinan con",
  slipPublished: "Lo mismo con el rozamiento y el rendimiento impresos, 0,71 y 0,95",
  choose:
    "Para uso en camino la regla impresa toma el menor de los dos, pero no más de una serie de ese fabricante por debajo de la que pide la marcha más baja; fuera del camino toma el de la marcha más baja.",
  carried: "Par con el que siguen las partes de abajo",
  share: "Parte de la capacidad que usted dio",
  shareFormula: "par / capacidad",
  ownRating:
    "La capacidad es la que usted escribió. Si es duradera o de poco tiempo, y a qué ángulo, lo dice su fabricante.",
  published: (row: string, torque_: string): string =>
    `El cuadro tiene una capacidad publicada para ${row}: ${torque_}.`,
  noRating: (row: string): string =>
    row === ""
      ? "En el cuadro no hay capacidad publicada: ninguna de sus filas la tiene. Pregunte al fabricante de la cruceta."
      : `En el cuadro no hay capacidad publicada para ${row}. Pregunte al fabricante de la cruceta.`,
  noRow: (row: string): string => `“${row}” no es una fila del cuadro. Búsquela allí, o déjela fuera.`,
  stress: "Tensión cortante en la pared exterior",
  stressThin: "Lo mismo por la fórmula de pared delgada",
  torqueMises: "Par al comienzo de la fluencia, von Mises",
  torqueTresca: "Par al comienzo de la fluencia, Tresca",
  shareMises: "Parte de la fluencia, von Mises",
  shareTresca: "Parte de la fluencia, Tresca",
  twist: "Giro a lo largo del tubo",
  steady:
    "Tresca es el más estricto de los dos. Los dos dicen dónde empieza a ceder un metal sano bajo un par constante, y nada más.",
  onDriving: "Par de flexión en el cardán conductor, a lo más",
  onDriven: "Par de flexión en el cardán conducido, a lo más",
  torqueMost: "Par en el cardán conducido, a lo más",
  trunnion: "Carga sobre un muñón, a lo más",
  thrust: (id: string): string =>
    id === "greased"
      ? "Empuje del estriado deslizante, acero engrasado"
      : "Empuje del estriado deslizante, con recubrimiento plástico",
  factor: (at: string): string => `Factor, como está impreso para ${at}`,
  rated: "La junta tiene que admitir",
  beyond: "Los factores impresos no llegan a este ángulo.",
};
