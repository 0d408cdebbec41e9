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
  grounds: {
    "net, or 0.95 of gross; gearbox 0.80 automatic, 0.85 manual; transfer case 0.95":
      "neto, o 0,95 del bruto; caja de cambios 0,80 automática, 0,85 manual; caja de transferencia 0,95",
    "0.95 of net, or 0.85 of gross; gearbox 0.95; nothing said of a transfer case":
      "0,95 del neto, o 0,85 del bruto; caja de cambios 0,95; no dice nada de una caja de transferencia",
    "tyre on road": "neumático en el camino",
    "of the axle; 11.4 in the printed form is 12 x 0.95": "del eje; 11,4 en la fórmula impresa es 12 x 0,95",
    "steel on steel, greased": "acero sobre acero, engrasado",
    "plastic-coated": "con recubrimiento plástico",
    "T = T_engine x rating x gear x gearbox x stall x transfer ratio x transfer":
      "T = T_motor x neto o bruto x marcha x caja x convertidor x relación de transferencia x transferencia",
    "Steady pull at the engine's greatest torque. Shock, as when a clutch is dropped, is not in it.":
      "Tiro constante con el par máximo del motor. Los golpes, como al soltar de golpe un embrague, no entran.",
    "T = friction x W x r / (axle ratio x axle efficiency)":
      "T = rozamiento x W x r / (relación del eje x rendimiento del eje)",
    "Level road. Weight that shifts to the axle when pulling away must be in its load.":
      "Camino nivelado. El peso que pasa al eje al arrancar tiene que estar en su carga.",
    "road use: the smaller of both, but no more than one series below the one for the low-gear torque; off the road: the low-gear torque":
      "uso en camino: el menor de los dos, pero no más de una serie por debajo de la que pide el par en marcha baja; fuera del camino: el par en marcha baja",
    "A rule for choosing a series of that maker.": "Una regla para elegir una serie de ese fabricante.",
    "Steady running, no losses.": "Marcha constante, sin pérdidas.",
    "tau = 16 T D / (pi (D^4 - d^4)); twist = 32 T L / (G pi (D^4 - d^4))":
      "tau = 16 T D / (pi (D^4 - d^4)); giro = 32 T L / (G pi (D^4 - d^4))",
    "Even round tube or bar, elastic. Welds, seams, dents, splines and fatigue are left out.":
      "Tubo o barra redondos y parejos, elásticos. Soldaduras, costuras, abolladuras, estriados y fatiga quedan fuera.",
    "Thin walls; r to the middle of the wall.": "Paredes delgadas; r hasta el medio de la pared.",
    "tau at yield = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)":
      "tau en la fluencia = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)",
    "First yield of sound metal under steady torque; nothing is taken off for shock or fatigue.":
      "Comienzo de la fluencia de metal sano bajo par constante; no se descuenta nada por golpes ni fatiga.",
    "driving shaft 0 ... T tan b, driven shaft T sin b ... 0, a quarter turn apart":
      "árbol conductor 0 ... T tan b, árbol conducido T sen b ... 0, a un cuarto de vuelta",
    "No friction. Twice a turn; which shaft has which is derived from the couple standing square to the cross, and so is the driven shaft's greatest past 45 degrees, T / (2 cos b).":
      "Sin rozamiento. Dos veces por vuelta; cuál árbol tiene cuál se deduce de que el par es perpendicular a la cruz, y lo mismo el máximo del árbol conducido más allá de 45 grados, T / (2 cos b).",
    "Load shared evenly by two trunnions; R to the middle of the needles.":
      "Carga repartida por igual entre dos muñones; R hasta el medio de las agujas.",
    "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = with (a + b), E, F alike with e, f; a quarter turn later T tan b1 / a, T sin b2 / (f cos b1)":
      "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = con (a + b), E, F igual con e, f; un cuarto de vuelta después T tan b1 / a, T sen b2 / (f cos b1)",
    "Z takes the difference, W the sum. One plane, yokes in line; the two positions only, weight and unbalance not in it.":
      "Z toma la diferencia, W la suma. Un plano, horquillas alineadas; solo las dos posiciones, sin peso ni desequilibrio.",
    "Sliding under full torque.": "Deslizando con todo el par.",
    "T rated = k T": "T nominal = k T",
    "Three points are printed. Between them the next higher is taken; up to 10 degrees k = 1.":
      "Hay tres puntos impresos. Entre ellos se toma el siguiente mayor; hasta 10 grados k = 1.",
  },
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
  noRow: (row: string): string => `«${row}» no es una fila del cuadro. Búsquela allí, o déjela fuera.`,
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
