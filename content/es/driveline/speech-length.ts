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
