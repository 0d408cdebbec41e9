// Lo que se dice de la longitud de un cardán.
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const long = "Un cardán tiene de 50 mm a 12 m de longitud.";
const yoke = "Una horquilla tiene menos de un metro.";
const slide = "Un tramo deslizante tiene menos de 2 m.";
const high = "Las alturas quedan dentro de 3 m; por debajo de la junta conductora es positivo.";

export const length: CalculationWords = {
  title: "Longitud del cardán",
  inputs: {
    between: { label: "Entre las dos caras donde va atornillado", why: long },
    drivingface: { label: "Extremo conductor: de la cara al centro de la junta", why: yoke },
    drivenface: { label: "Extremo conducido: de la cara al centro de la junta", why: yoke },
    drivingyoke: { label: "Extremo conductor: del centro de la junta a la punta del tubo", why: yoke },
    drivenyoke: {
      label: "Extremo conducido: del centro de la junta a la punta del tubo, deslizante a fondo",
      why: yoke,
    },
    slip: { label: "Recorrido entero del tramo deslizante", why: slide },
    out: { label: "Deslizante salido, como está", why: slide },
    root: { label: "Separación para soldar, en cada punta", why: "Una separación de más de 20 mm no es para soldar." },
    run: { label: "Distancia a nivel entre centros de juntas", why: "Entre 10 mm y 20 m." },
    offset: { label: "Hacia un lado entre ellos", why: "Dentro de 20 m." },
    stands: { label: "Junta conducida por debajo de la conductora, parado", why: high },
    bump: { label: "Lo mismo, con la suspensión comprimida del todo", why: high },
    droop: { label: "Lo mismo, colgando libre", why: high },
    bumpahead: { label: "Comprimida, la junta conducida se aleja", why: high },
    droopahead: { label: "Colgando, la junta conducida se aleja", why: high },
    tube: { label: "Mitades deslizantes: mayor traslape posible", why: long },
    working: { label: "Traslape en el trabajo normal", why: slide },
    least: { label: "Traslape en la posición más larga", why: slide },
    left: { label: "Lo que queda antes del tope, en la más corta", why: slide },
  },
  parts: {
    cut: "Longitud, deslizante y corte del tubo",
    travel: "A lo largo del recorrido de la suspensión",
    overlap: "Traslape de mitades deslizantes",
  },
  cautions: turning,
  unchecked: [
    "Si el cardán pasa libre de bastidor, escape y piso en todo su recorrido.",
    "El motor y la caja que se mecen en sus soportes, lo que también gasta deslizante.",
    "La velocidad crítica del tubo con esta longitud: hay una página para eso.",
  ],
  grounds: {
    "preferred: a third of the travel out": "preferido: un tercio del recorrido salido",
    "pushed home, then 3/4 to 1 in back, at ride height":
      "a fondo, y después de 3/4 a 1 in hacia atrás, a la altura de marcha",
    "at least half in normal work": "por lo menos la mitad en el trabajo normal",
    "at least a third in every position": "por lo menos un tercio en toda posición",
    "at least 40 mm from bottoming": "por lo menos 40 mm antes del tope",
    "at least 6 in": "por lo menos 6 in",
    "at least 2 in from bottoming": "por lo menos 2 in antes del tope",
    "at most 15 degrees": "a lo más 15 grados",
    "110 to 120 mm": "110 a 120 mm",
    "at least 250 mm": "por lo menos 250 mm",
    "centres = between faces - face to centre - face to centre; cut = centres - yoke - yoke - slip drawn out - gaps":
      "centros = entre caras - cara a centro - cara a centro; corte = centros - horquilla - horquilla - deslizante salido - separaciones",
    "Measured with the vehicle at ride height, on its wheels. Wear of the spline is not in it.":
      "Medido con el vehículo a su altura de marcha, sobre sus ruedas. El desgaste del estriado no entra.",
    "L = sqrt(run^2 + offset^2 + height^2)": "L = sqrt(distancia^2 + lado^2 + altura^2)",
    "The path of the axle must be given: how far it moves ahead or back as it rises depends on its links.":
      "Hay que dar el camino del eje: cuánto se adelanta o retrasa al subir depende de sus brazos.",
    "overlap and what is left before bottoming, beside each rule":
      "traslape y lo que queda antes del tope, al lado de cada regla",
    "Each rule is of one maker and holds for its machine.": "Cada regla es de un fabricante y vale para su máquina.",
  },
};

export const say = {
  centres: "De centro a centro de junta, como está",
  cut: "Corte el tubo a",
  closed: "Cerrado, deslizante a fondo",
  open: "Salido del todo",
  inward: "Recorrido que queda hacia dentro",
  outward: "Recorrido que queda hacia fuera",
  slipOut: "Deslizante salido, como está",
  lengthAt: { stands: "Longitud, parado", bump: "Longitud, comprimido", droop: "Longitud, colgando" },
  slopeAt: {
    stands: "Inclinación del cardán, parado",
    bump: "Inclinación, comprimido",
    droop: "Inclinación, colgando",
  },
  change: "El más largo menos el más corto",
  shorter: "Más corto que parado, a lo más en",
  longer: "Más largo que parado, a lo más en",
  ends: "El eje también gira al moverse, y con él los ángulos de las juntas: mídalos en los dos finales del recorrido.",
  share: "Traslape en el trabajo normal, parte del tubo",
  shareLeast: "Traslape en lo más largo, parte del tubo",
  overlapOf: {
    overlapWorking: "Traslape en el trabajo normal",
    overlapLeast: "Traslape en la posición más larga",
    leftLeast: "Lo que queda antes del tope",
  },
  angleRule: (says: string, ground: string): string => `Ángulo de las juntas de un cardán así: ${says} (${ground}).`,
};
